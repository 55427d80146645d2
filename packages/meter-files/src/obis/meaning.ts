import type { MeteredQuantity } from '../stream.ts';
import type { ObisCode } from './code.ts';

/** What a code stands for, as far as a household's bill goes. */
export interface ObisMeaning {
  readonly quantity: MeteredQuantity;
  /** The number of the rate; null for the total. Which rate is peak, no code says. */
  readonly rate: string | null;
  /** Whether it counts active energy: what the readers hand on. Power, demand, reactive energy do not. */
  readonly isEnergy: boolean;
  /** Whether it is the value of a past billing period. */
  readonly isPast: boolean;
  /** What it counts, where that is active energy and neither import, export nor net; else null. */
  readonly other: string | null;
}

const ELECTRICITY = 1;
/**
 * Group D, how it is measured. 8 counts from the beginning for both directions: the direction is in C.
 * 9 and 29 (since the last reset, in an interval) are from memory of IEC 62056-6-1.
 */
const COUNTED = 8;
const SINCE_RESET = 9;
const IN_INTERVAL = 29;
/** Group E numbers rates up to here; above it stand angles, harmonics and codes of makers. */
const LAST_RATE = 63;

/** Group C, what is measured, as far as it is active energy of all phases. */
const ACTIVE: Readonly<Record<number, MeteredQuantity>> = {
  1: 'import',
  2: 'export',
  15: 'other',
  16: 'net',
};
/** Group C for one phase: 20, 40 and 60 more than for all. */
const PHASES: readonly number[] = [21, 22, 41, 42, 61, 62];

function otherEnergy({ c, d }: ObisCode): string | null {
  const isKnown = ACTIVE[c] !== undefined || PHASES.includes(c);
  if (d === IN_INTERVAL && isKnown) return 'energy of one interval';
  if (d === SINCE_RESET && isKnown) return 'energy since the last billing reset';
  if (d !== COUNTED) return null;
  if (c === 15) return 'import and export added together';
  return PHASES.includes(c) ? 'energy of one phase' : null;
}

/**
 * What a code stands for (IEC 62056-6-1): C says what (1 import, 2 export, 15 both together, 16 import less
 * export, 3 to 8 reactive), D = 8 that it is counted from the beginning to now, E which rate (0 the total).
 *
 * @example
 * obisMeaning(parseObis('1-0:2.8.1')) //=> {"quantity":"export","rate":"1","isEnergy":true,"isPast":false,"other":null}
 * obisMeaning(parseObis('1-0:1.7.0')).isEnergy //=> false
 * obisMeaning(parseObis('1.8.0*1')).isPast //=> true
 */
export function obisMeaning(code: ObisCode): ObisMeaning {
  const { c, d, e } = code;
  const isElectricity = (code.a ?? ELECTRICITY) === ELECTRICITY;
  const isRate = e === null || e <= LAST_RATE;
  const other = isElectricity && isRate ? otherEnergy(code) : null;
  const isCounted = isElectricity && isRate && d === COUNTED && ACTIVE[c] !== undefined;
  return {
    quantity: isCounted ? (ACTIVE[c] ?? 'other') : 'other',
    rate: e === null || e === 0 || !isRate ? null : String(e),
    isEnergy: isCounted || other !== null,
    isPast: code.f !== null && code.f !== 255,
    other,
  };
}
