import { decimalToWhole, wholeToDecimal, type Quotient } from '../../quantity/index.ts';

/** A decimal of any size, exact: `whole` parts of 10 to the power of −`places`. Paper can hold any number. */
export interface Exact {
  readonly whole: bigint;
  readonly places: number;
}

/**
 * A decimal text as an exact value.
 *
 * @example
 * textOf(exactOf('-1.50')) //=> "-1.5"
 */
export function exactOf(text: string): Exact {
  const [whole = '', decimals = ''] = text.split('.');
  return { whole: BigInt(whole + decimals), places: decimals.length };
}

/** A figure as an exact value; undefined where it is none, or no decimal. */
export function exactFigure(value: Quotient | undefined): Exact | undefined {
  if (value === undefined) return undefined;
  const digits = value.denominator.toString();
  if (!/^10*$/.test(digits)) return undefined;
  return { whole: BigInt(value.numerator), places: digits.length - 1 };
}

const scaled = ({ whole, places }: Exact, to: number): bigint => whole * 10n ** BigInt(to - places);

/** The sum of exact values; of none, 0. */
export function sumOf(values: readonly Exact[]): Exact {
  const places = values.reduce((most, one) => (one.places > most ? one.places : most), 0);
  return { whole: values.reduce((sum, one) => sum + scaled(one, places), 0n), places };
}

/** One exact value less another. */
export function minus(one: Exact, other: Exact): Exact {
  return sumOf([one, { whole: -other.whole, places: other.places }]);
}

/** The product of two exact values. */
export function times(one: Exact, other: Exact): Exact {
  return { whole: one.whole * other.whole, places: one.places + other.places };
}

/** −1 where one value is below the other, 0 where they are the same, 1 where it is above. */
export function compare(one: Exact, other: Exact): -1 | 0 | 1 {
  const { whole } = minus(one, other);
  return whole < 0n ? -1 : whole === 0n ? 0 : 1;
}

/** A value without its sign. */
export function sizeOf({ whole, places }: Exact): Exact {
  return { whole: whole < 0n ? -whole : whole, places };
}

/** An exact value as a decimal text without zeros at the end. */
export function textOf({ whole, places }: Exact): string {
  const text = wholeToDecimal(whole, places);
  return places === 0 ? text : text.replace(/\.?0+$/, '');
}

/** Whether a value is a whole number. */
export function isWhole({ whole, places }: Exact): boolean {
  return whole % 10n ** BigInt(places) === 0n;
}

/** A whole number as an exact value. */
export function wholeNumber(value: number): Exact {
  return { whole: BigInt(decimalToWhole(value.toString(), 0)), places: 0 };
}

/** The value 1. */
export const ONE: Exact = { whole: 1n, places: 0 };

/** The value 0. */
export const NONE: Exact = { whole: 0n, places: 0 };
