import { roundLargeQuotient } from './rounding.ts';

/** Whole numbers up to here are exact in a double. */
export const LARGEST_WHOLE: number = Number.MAX_SAFE_INTEGER;

const DECIMAL_TEXT = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;
const LONGEST_TEXT = 40;

/**
 * Whether a text is a decimal number as documents write it: digits, a point, no exponent, no grouping.
 *
 * @example
 * isDecimalText('3.10') //=> true
 * isDecimalText('1,000') //=> false
 */
export function isDecimalText(text: string): boolean {
  return DECIMAL_TEXT.test(text) && text.length <= LONGEST_TEXT;
}

/** Whole part and decimals of a decimal text, trailing zeros left out. */
function partsOf(text: string): { readonly whole: string; readonly decimals: string } {
  if (!isDecimalText(text)) throw new RangeError(`"${text}" is not a decimal number`);
  const [whole = '', decimals = ''] = text.split('.');
  return { whole, decimals: decimals.replace(/0+$/, '') };
}

/**
 * How many decimal places a decimal text needs, trailing zeros left out.
 *
 * @throws RangeError when the text is no decimal: a caller's bug, documents are checked before
 * @example
 * decimalPlaces('3.10') //=> 1
 */
export function decimalPlaces(text: string): number {
  return partsOf(text).decimals.length;
}

/**
 * Read a decimal text as a whole number of 10^-places, exactly.
 *
 * @param text    decimal text
 * @param places  0 or more
 * @returns       whole number
 * @throws        RangeError when the text is finer than that or larger than 2^53 − 1
 * @example
 * decimalToWhole('3.10', 2) //=> 310
 */
export function decimalToWhole(text: string, places: number): number {
  const { whole, decimals } = partsOf(text);
  if (decimals.length > places) throw new RangeError(`"${text}" has more than ${String(places)} decimals`);
  // The digits of a safe whole number are read back exactly, and 0 added turns −0 into 0.
  const value = Number.parseInt(whole + decimals.padEnd(places, '0'), 10) + 0;
  if (Math.abs(value) > LARGEST_WHOLE) throw new RangeError(`"${text}" is too large`);
  return value;
}

/**
 * Print a whole number of 10^-places as a decimal text with exactly that many places.
 *
 * @example
 * wholeToDecimal(-5, 2) //=> "-0.05"
 */
export function wholeToDecimal(whole: number | bigint, places: number): string {
  const negative = whole < 0;
  const digits = (negative ? -whole : whole).toString().padStart(places + 1, '0');
  const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return negative ? `-${text}` : text;
}

/**
 * Print a quotient of whole numbers rounded half-up to some places: for people to read, never to
 * calculate on.
 *
 * @example
 * quotientText(2, 3, 2) //=> "0.67"
 */
export function quotientText(numerator: number | bigint, denominator: number, places: number): string {
  const scaled = BigInt(numerator) * 10n ** BigInt(places);
  return wholeToDecimal(roundLargeQuotient(scaled, BigInt(denominator), 'half-up'), places);
}

/** The greatest common divisor of two whole numbers, at least 1. */
export function commonDivisor(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  // An endless denominator leaves NaN, which ends the search too.
  while (y > 0) [x, y] = [y, x % y];
  return x === 0 ? 1 : x;
}

/** The least whole number that both divide. */
export function commonMultiple(a: number, b: number): number {
  return (a / commonDivisor(a, b)) * b;
}

/** The greatest common divisor of large whole numbers, at least 1. */
export function largeDivisor(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b;
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}

/** How often a prime divides a number, and what is left of it. */
function factorsOut(number: bigint, prime: bigint): { readonly times: number; readonly rest: bigint } {
  let rest = number;
  let times = 0;
  while (rest % prime === 0n) {
    rest /= prime;
    times += 1;
  }
  return { times, rest };
}

/**
 * Print a quotient of whole numbers exactly: as a decimal where it ends, else as a fraction in lowest
 * terms. It ends where the reduced denominator has no prime factor but 2 and 5.
 *
 * @example
 * exactText(95, 2) //=> "47.5"
 * exactText(190, 3) //=> "190/3"
 */
export function exactText(numerator: number | bigint, denominator: number): string {
  if (denominator === 0) throw new RangeError('a fraction over 0');
  const divisor = largeDivisor(BigInt(numerator), BigInt(denominator));
  const top = BigInt(numerator) / divisor;
  const bottom = BigInt(denominator) / divisor;
  const twos = factorsOut(bottom, 2n);
  const fives = factorsOut(twos.rest, 5n);
  if (fives.rest !== 1n) return `${top.toString()}/${bottom.toString()}`;
  const places = Math.max(twos.times, fives.times);
  return wholeToDecimal((top * 10n ** BigInt(places)) / bottom, places);
}

/**
 * A product of whole numbers without loss: large where a double cannot hold it.
 *
 * @example
 * wholeProduct(3, -4) //=> -12
 */
export function wholeProduct(a: number, b: number): number | bigint {
  // Adding 0 turns −0 into 0.
  const product = a * b + 0;
  return Math.abs(product) <= LARGEST_WHOLE ? product : BigInt(a) * BigInt(b);
}
