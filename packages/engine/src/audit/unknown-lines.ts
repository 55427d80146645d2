import { signOf, type Quotient } from '../quantity/index.ts';
import { versionsDuring } from './charge-basis.ts';
import type { BillFacts } from './facts.ts';
import type { Figures } from './figures.ts';

/** A line of a bill that its tariff does not have. */
export interface UnknownLine {
  readonly charge: string;
  readonly amount: Quotient;
}

const PREFIX = 'line.';
/** What surplus is paid is a line of every tariff that pays it. */
const SURPLUS = 'surplus';

/** The lines that a bill of these days may have, by name: charges in force, and what surplus is paid. */
export function linesInForce(terms: Pick<BillFacts, 'tariff' | 'period'>): readonly string[] {
  const charges = versionsDuring(terms).flatMap((version) => version.charges.map(({ id }) => id));
  return [...new Set(charges)];
}

/** Whether a line is one of those in force. */
export const isLineOf = (charge: string, inForce: readonly string[]): boolean =>
  charge === SURPLUS || inForce.includes(charge);

/** Printed lines that are no charge in force on the days of a bill, in the order of paper; none that is 0. */
export function unknownLines(
  terms: Pick<BillFacts, 'tariff' | 'period'>,
  printed: Figures,
): readonly UnknownLine[] {
  const inForce = linesInForce(terms);
  return [...printed]
    .filter(([name]) => name.startsWith(PREFIX))
    .map(([name, amount]) => ({ charge: name.slice(PREFIX.length), amount }))
    .filter(({ charge, amount }) => !isLineOf(charge, inForce) && signOf(amount) !== 0);
}
