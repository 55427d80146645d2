import type { Finding } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import {
  advanceOf,
  atBill,
  factorOf,
  figureOf,
  type ConsistencyCheck,
  type ConsistencyTerms,
} from './check.ts';
import { compare, isWhole, minus, NONE, ONE, sizeOf, textOf, times, type Exact } from './exact.ts';

const CHANNELS = ['import', 'export', 'generation'] as const;

/** Less than this is rounding: none where all is whole, else a unit of the register or of energy, the larger. */
function isRounding(gap: Exact, factor: Exact, product: Exact): boolean {
  if (isWhole(product)) return compare(gap, NONE) === 0;
  return compare(gap, compare(factor, ONE) > 0 ? factor : ONE) < 0;
}

function off(terms: ConsistencyTerms, name: string): readonly Finding[] {
  const units = figureOf(terms.bill, FIGURE.units(name));
  const advance = advanceOf(terms, name);
  // A register that stands lower than before has passed its full scale, or is asked about itself.
  if (units === undefined || advance === undefined || compare(advance, NONE) < 0) return [];
  const factor = factorOf(terms, name);
  const product = times(advance, factor);
  if (isRounding(sizeOf(minus(units, product)), factor, product)) return [];
  const values = {
    units: textOf(units),
    advance: textOf(advance),
    factor: textOf(factor),
    product: textOf(product),
  };
  return [atBill(terms.bill, ['units', name], 'check/units-off-readings', { what: name, ...values })];
}

/** (6) Printed units are the difference of the readings times the factor; how they are rounded is not known. */
export const UNITS_FOLLOW_READINGS: ConsistencyCheck = {
  id: 'units-follow-readings',
  holds: 'units are the difference of the readings times the factor',
  find: (terms) => CHANNELS.flatMap((name) => off(terms, name)),
};
