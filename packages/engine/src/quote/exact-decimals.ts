import { isDecimalText, roundLargeQuotient, wholeToDecimal } from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';

/**
 * A decimal text as an exact value, of any length.
 *
 * @throws RangeError when the text is no decimal: a caller's bug, documents are checked before
 * @example
 * exactDecimal('-0.25').numerator //=> -25n
 */
export function exactDecimal(text: string): ExactFactor {
  if (!isDecimalText(text)) throw new RangeError(`"${text}" is not a decimal number`);
  const [whole = '', decimals = ''] = text.split('.');
  return { numerator: BigInt(whole + decimals), denominator: 10n ** BigInt(decimals.length) };
}

/**
 * A whole number of parts as an exact value.
 *
 * @param parts  how many of them make one, above 0
 * @example
 * exactParts(5, 100).denominator //=> 100n
 */
export function exactParts(whole: number, parts: number): ExactFactor {
  return { numerator: BigInt(whole), denominator: BigInt(parts) };
}

/**
 * Below 0 where the first value is the smaller one, 0 where they are the same, above 0 where it is the larger.
 *
 * @example
 * compared(exactDecimal('3.0'), exactDecimal('3')) //=> 0
 */
export function compared(one: ExactFactor, other: ExactFactor): number {
  const [left, right] = [one.numerator * other.denominator, other.numerator * one.denominator];
  return left < right ? -1 : left > right ? 1 : 0;
}

/**
 * Whether a decimal text is 0, however it is written.
 *
 * @example
 * isZero('0.00') //=> true
 */
export function isZero(text: string): boolean {
  return exactDecimal(text).numerator === 0n;
}

/**
 * One exact value over another; null where the other is 0.
 *
 * @example
 * dividedBy(exactDecimal('1'), exactDecimal('0')) //=> null
 */
export function dividedBy(one: ExactFactor, other: ExactFactor): ExactFactor | null {
  if (other.numerator === 0n) return null;
  const [top, bottom] = [one.numerator * other.denominator, one.denominator * other.numerator];
  return bottom < 0n ? { numerator: -top, denominator: -bottom } : { numerator: top, denominator: bottom };
}

/**
 * One exact value less another.
 *
 * @example
 * lessExact(exactDecimal('1'), exactDecimal('0.5')).numerator //=> 5n
 */
export function lessExact(one: ExactFactor, other: ExactFactor): ExactFactor {
  return {
    numerator: one.numerator * other.denominator - other.numerator * one.denominator,
    denominator: one.denominator * other.denominator,
  };
}

/**
 * An exact value rounded half-up to some places.
 *
 * @example
 * roundedText({ numerator: 2n, denominator: 3n }, 2) //=> "0.67"
 */
export function roundedText({ numerator, denominator }: ExactFactor, places: number): string {
  const scaled = numerator * 10n ** BigInt(places);
  return wholeToDecimal(roundLargeQuotient(scaled, denominator, 'half-up'), places);
}

/** More places than this are not looked for: no amount of a quote ends later. */
const MOST_PLACES = 12;

/**
 * How many places a value needs to be written without loss; null where it does not end within twelve.
 *
 * @example
 * exactPlaces({ numerator: 1n, denominator: 8n }) //=> 3
 */
export function exactPlaces({ numerator, denominator }: ExactFactor): number | null {
  for (let places = 0; places <= MOST_PLACES; places += 1)
    if ((numerator * 10n ** BigInt(places)) % denominator === 0n) return places;
  return null;
}

/**
 * An exact value rounded half-up to as few places as tell it from a limit that it is not, at least so many.
 *
 * @param least  places
 * @example
 * toldApart(exactDecimal('1400.004'), exactDecimal('1400'), 1) //=> "1400.004"
 */
export function toldApart(value: ExactFactor, limit: ExactFactor, least: number): string {
  let places = least;
  while (places < MOST_PLACES && compared(exactDecimal(roundedText(value, places)), limit) === 0) places += 1;
  return roundedText(value, places);
}

/**
 * How many decimals a text is printed with, zeros at the end among them.
 *
 * @example
 * printedPlaces('3.70') //=> 2
 */
export function printedPlaces(text: string): number {
  return text.split('.')[1]?.length ?? 0;
}
