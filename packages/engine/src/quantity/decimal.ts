import { Decimal } from 'decimal.js';

/** Enough digits for any quotient of two safe integers that ends, and for every product of two of them. */
const Exact = Decimal.clone({ precision: 80, toExpNeg: -80, toExpPos: 80 });

/** Whole numbers up to here are exact in a double. */
export const LARGEST_WHOLE: number = Number.MAX_SAFE_INTEGER;

const DECIMAL_TEXT = /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/;

/**
 * Whether a text is a decimal number as documents write it: digits, a point, no exponent, no grouping.
 *
 * @example
 * isDecimalText('3.10') //=> true
 * isDecimalText('1,000') //=> false
 */
export function isDecimalText(text: string): boolean {
  return DECIMAL_TEXT.test(text) && text.length <= 40;
}

/**
 * How many decimal places a decimal text needs, trailing zeros left out.
 *
 * @throws RangeError when the text is no decimal: a caller's bug, documents are checked before
 * @example
 * decimalPlaces('3.10') //=> 1
 */
export function decimalPlaces(text: string): number {
  return exactDecimal(text).decimalPlaces();
}

/** Read a decimal text exactly. */
function exactDecimal(text: string): Decimal {
  if (!isDecimalText(text)) throw new RangeError(`"${text}" is not a decimal number`);
  return new Exact(text);
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
  const scaled = exactDecimal(text).times(new Exact(10).pow(places));
  if (!scaled.isInteger()) throw new RangeError(`"${text}" has more than ${String(places)} decimals`);
  if (scaled.abs().greaterThan(LARGEST_WHOLE)) throw new RangeError(`"${text}" is too large`);
  return scaled.toNumber();
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
 * Print a quotient of whole numbers rounded to some places: for people to read, never to calculate on.
 *
 * @example
 * quotientText(2, 3, 2) //=> "0.67"
 */
export function quotientText(numerator: number | bigint, denominator: number, places: number): string {
  const value = new Exact(numerator.toString()).div(denominator);
  return value.toDecimalPlaces(places, Decimal.ROUND_HALF_UP).toFixed(places);
}

/** The greatest common divisor of two whole numbers, at least 1. */
export function commonDivisor(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  while (y !== 0) [x, y] = [y, x % y];
  return x === 0 ? 1 : x;
}

/** The least whole number that both divide. */
export function commonMultiple(a: number, b: number): number {
  return (a / commonDivisor(a, b)) * b;
}

/** The greatest common divisor of large whole numbers, at least 1. */
function largeDivisor(a: bigint, b: bigint): bigint {
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
  const divisor = largeDivisor(BigInt(numerator), BigInt(denominator));
  const top = BigInt(numerator) / divisor;
  const bottom = BigInt(denominator) / divisor;
  const twos = factorsOut(bottom, 2n);
  const fives = factorsOut(twos.rest, 5n);
  if (fives.rest !== 1n) return `${top.toString()}/${bottom.toString()}`;
  const places = Math.max(twos.times, fives.times);
  return wholeToDecimal((top * 10n ** BigInt(places)) / bottom, places);
}
