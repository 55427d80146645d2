import type { Quotient } from '../quantity/index.ts';
import type { TariffDocument } from '../tariff/index.ts';
import type { Figures } from './figures.ts';

/** A line of a bill that its tariff does not have. */
export interface UnknownLine {
  readonly charge: string;
  readonly amount: Quotient;
}

const PREFIX = 'line.';
/** What surplus is paid is a line of every tariff that pays it. */
const SURPLUS = 'surplus';

/** Printed lines that are no charge of the tariff, in any of its versions, in the order of paper; none that is 0. */
export function unknownLines({ versions }: TariffDocument, printed: Figures): readonly UnknownLine[] {
  const known = new Set(versions.flatMap(({ charges }) => charges.map(({ id }) => id)));
  return [...printed]
    .filter(([name]) => name.startsWith(PREFIX))
    .map(([name, amount]) => ({ charge: name.slice(PREFIX.length), amount }))
    .filter(
      ({ charge, amount }) =>
        !known.has(charge) && charge !== SURPLUS && amount.numerator !== 0 && amount.numerator !== 0n,
    );
}
