import { isSameQuotient, subtractQuotients, type Quotient, ZERO } from '../quantity/index.ts';
import { groupOf, type FigureGroup } from './figure-names.ts';

/** Figures of a bill by name: see {@link FIGURE}. */
export type Figures = ReadonlyMap<string, Quotient>;

/** A printed figure beside the computed one. */
export interface ComparedFigure {
  readonly name: string;
  readonly printed: Quotient;
  /** null: a right bill has no such figure, or it cannot be known. */
  readonly computed: Quotient | null;
  /** Printed less computed; null where nothing is computed. */
  readonly difference: Quotient | null;
  /** Whether they differ by no more than the tolerance; true where nothing is computed. */
  readonly agrees: boolean;
}

/** How far a printed figure may be from the computed one to agree with it; 0 unless said. */
export type Tolerance = Quotient;

/** No tolerance. */
export const EXACT: Tolerance = { numerator: 0, denominator: 1 };

const magnitude = ({ numerator, denominator }: Quotient): Quotient =>
  numerator < 0 ? { numerator: -numerator, denominator } : { numerator, denominator };

function isWithin(difference: Quotient, tolerance: Tolerance): boolean {
  const { numerator } = subtractQuotients(tolerance, magnitude(difference));
  return numerator >= 0;
}

/** A line that a right bill does not have is 0 there; any other figure is not known. */
const isMoneyLine = (name: string): boolean => /^(?:line\.|arrears$|late-fee$|adjustment$)/.test(name);

/** The computed figure of a name. */
export function computedOf(figures: Figures, name: string): Quotient | null {
  return figures.get(name) ?? (isMoneyLine(name) ? ZERO : null);
}

/**
 * Whether a computed figure is printed to fewer decimals than it has: cut off, or rounded up or down to the last one
 * that is printed.
 */
function isPrintedRounded({ numerator, denominator }: Quotient, computed: Quotient): boolean {
  const top = BigInt(computed.numerator) * BigInt(denominator);
  const bottom = BigInt(computed.denominator);
  if (top % bottom === 0n) return false;
  const apart = BigInt(numerator) * bottom - top;
  return apart < bottom && apart > -bottom;
}

/**
 * Whether a printed figure is the computed one, as it is or rounded to the decimals that are printed.
 *
 * @param printed  its denominator tells the decimals: 119.20 is 11920/100
 */
export function agrees(printed: Quotient, computed: Quotient | null, tolerance: Tolerance): boolean {
  if (computed === null) return false;
  if (isSameQuotient(printed, computed)) return true;
  if (isPrintedRounded(printed, computed)) return true;
  return tolerance.numerator !== 0 && isWithin(subtractQuotients(printed, computed), tolerance);
}

const MONEY: readonly FigureGroup[] = ['line', 'account', 'total'];

/** How far a figure may be off: a tolerance is of money, and of nothing that was counted. */
export const toleranceOf = (name: string, tolerance: Tolerance): Tolerance =>
  MONEY.includes(groupOf(name)) ? tolerance : EXACT;

/** Printed less right of a figure, 0 where they agree; null where it is not printed, or not known. */
export function differenceIn(compared: readonly ComparedFigure[], name: string): Quotient | null {
  const own = compared.find((one) => one.name === name);
  if (own === undefined || own.computed === null) return null;
  return own.agrees ? ZERO : own.difference;
}

/**
 * Set printed figures beside computed ones.
 *
 * @param printed    in the order of paper
 * @param tolerance  of money; 0 unless said
 */
export function compareFigures(
  printed: Figures,
  computed: Figures,
  tolerance: Tolerance = EXACT,
): readonly ComparedFigure[] {
  return [...printed].map(([name, value]) => {
    const own = computedOf(computed, name);
    return {
      name,
      printed: value,
      computed: own,
      difference: own === null ? null : subtractQuotients(value, own),
      agrees: own === null || agrees(value, own, toleranceOf(name, tolerance)),
    };
  });
}
