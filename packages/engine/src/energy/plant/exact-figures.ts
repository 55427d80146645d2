import {
  LARGEST_WHOLE,
  type Figure,
  type FigureUnit,
  type Operation,
  type Quotient,
  largeDivisor,
} from '../../quantity/index.ts';

const NONE: readonly never[] = [];

/** A figure of plain arithmetic. */
export interface PlainFigure {
  readonly id: string;
  readonly label: string;
  readonly unit: FigureUnit;
  readonly numerator: number | bigint;
  readonly denominator: number;
  readonly operation: Operation;
  readonly inputs: readonly Figure[];
  readonly clause?: string;
}

/** Fill in what plain arithmetic leaves empty. */
export function arithmetic({ clause = '', ...figure }: PlainFigure): Figure {
  return { ...figure, parameters: NONE, rounding: null, clause };
}

/** A quotient of a first figure over others, exact; null where it cannot be held. */
export function over(
  words: Pick<Figure, 'id' | 'label' | 'unit'>,
  made: Figure,
  below: readonly Figure[],
): Figure | null {
  let numerator = BigInt(made.numerator);
  let denominator = BigInt(made.denominator);
  for (const one of below) {
    numerator *= BigInt(one.denominator);
    denominator *= BigInt(one.numerator);
  }
  const value = lowestTerms(numerator, denominator);
  return value === null
    ? null
    : arithmetic({ ...words, ...value, operation: 'quotient', inputs: [made, ...below] });
}

const LARGEST = BigInt(LARGEST_WHOLE);

/**
 * A quotient of large whole numbers in lowest terms; null where the denominator is beyond 2^53, which no
 * plant and no period of a household comes to.
 *
 * @param denominator  above 0
 * @example
 * lowestTerms(6n, 4n) //=> {"numerator":3,"denominator":2}
 */
export function lowestTerms(numerator: bigint, denominator: bigint): Quotient | null {
  const divisor = largeDivisor(numerator, denominator);
  const top = numerator / divisor;
  const bottom = denominator / divisor;
  if (bottom > LARGEST) return null;
  const plain = (value: bigint): number => Number.parseInt(value.toString(), 10);
  const isLarge = top > LARGEST || top < -LARGEST;
  return { numerator: isLarge ? top : plain(top), denominator: plain(bottom) };
}

/** A product of figures, exact; null where it cannot be held. */
export function productFigure(
  words: Pick<Figure, 'id' | 'label' | 'unit'>,
  inputs: readonly Figure[],
): Figure | null {
  const top = inputs.reduce((product, one) => product * BigInt(one.numerator), 1n);
  const bottom = inputs.reduce((product, one) => product * BigInt(one.denominator), 1n);
  const value = lowestTerms(top, bottom);
  return value === null ? null : arithmetic({ ...words, ...value, operation: 'product', inputs });
}

/** A sum of figures, exact; null where it cannot be held. */
export function sumFigure(
  words: Pick<Figure, 'id' | 'label' | 'unit'>,
  inputs: readonly Figure[],
): Figure | null {
  let [top, bottom] = [0n, 1n];
  for (const { numerator, denominator } of inputs) {
    top = top * BigInt(denominator) + BigInt(numerator) * bottom;
    bottom *= BigInt(denominator);
  }
  const value = lowestTerms(top, bottom);
  return value === null ? null : arithmetic({ ...words, ...value, operation: 'sum', inputs });
}
