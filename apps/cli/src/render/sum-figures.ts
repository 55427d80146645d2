import { commonMultiple, type Figure } from '@unitbook/engine';

/** A quotient of whole numbers. */
export type Quotient = Pick<Figure, 'numerator' | 'denominator'>;

/**
 * Add figures of one unit exactly.
 *
 * @returns the sum, or null when one of them is not known
 */
export function sumFigures(figures: readonly (Figure | null)[]): Quotient | null {
  const known = figures.filter((figure) => figure !== null);
  if (known.length < figures.length) return null;
  const denominator = known.reduce((common, figure) => commonMultiple(common, figure.denominator), 1);
  const numerator = known.reduce(
    (sum, figure) => sum + BigInt(figure.numerator) * BigInt(denominator / figure.denominator),
    0n,
  );
  return { numerator, denominator };
}

/** A sum of money as a figure, for the notation of a page to write. */
export function moneyFigure(value: Quotient): Figure {
  return {
    ...value,
    id: '',
    label: '',
    unit: 'money',
    operation: 'given',
    inputs: [],
    parameters: [],
    rounding: null,
    clause: '',
  };
}
