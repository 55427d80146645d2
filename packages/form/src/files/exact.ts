import { wholeToDecimal } from '@unitbook/engine';

/** A decimal number: a whole number of 10^-places. */
export interface Exact {
  readonly whole: bigint;
  readonly places: number;
}

const DECIMAL = /^(-?)(\d*)\.?(\d*)$/;

/**
 * A decimal text, digit for digit.
 *
 * @param text  as meter files are read: digits, a point, no grouping
 * @throws RangeError  for another text
 * @example
 * exactOf('0042.50').places //=> 2
 */
export function exactOf(text: string): Exact {
  const [, sign = '', digits = '', decimals = ''] = DECIMAL.exec(text) ?? [];
  if (digits + decimals === '') throw new RangeError(`"${text}" is no decimal number`);
  return { whole: BigInt(`${sign}${digits}${decimals}`), places: decimals.length };
}

/** The same number in more places. */
function inPlaces({ whole, places }: Exact, wanted: number): bigint {
  if (wanted < places) throw new RangeError(`${places} places do not go into ${wanted}`);
  return whole * 10n ** BigInt(wanted - places);
}

/** The sum of two numbers. */
export function plus(a: Exact, b: Exact): Exact {
  const places = Math.max(a.places, b.places);
  return { whole: inPlaces(a, places) + inPlaces(b, places), places };
}

/** One number less another. */
export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { whole: -b.whole, places: b.places });
}

/**
 * A number of 0 or more as text, rounded half-up to some places.
 *
 * @example
 * roundedText(exactOf('1.2345'), 3) //=> "1.235"
 */
export function roundedText(number: Exact, places: number): string {
  if (number.places <= places) return wholeToDecimal(inPlaces(number, places), places);
  const step = 10n ** BigInt(number.places - places);
  return wholeToDecimal((number.whole + step / 2n) / step, places);
}

/**
 * A decimal text without zeros that say nothing: what two texts have in common when they are the same number.
 *
 * @example
 * plainDecimal('004342.10') //=> "4342.1"
 */
export function plainDecimal(text: string): string {
  const { whole, places } = exactOf(text);
  const plain = wholeToDecimal(whole, places);
  return plain.includes('.') ? plain.replace(/\.?0+$/, '') : plain;
}

/** How many digits a number has before the point and after it, zeros that say nothing left out. */
export function widthOf(text: string): { readonly digits: number; readonly decimals: number } {
  const [digits = '', decimals = ''] = plainDecimal(text).replace('-', '').split('.');
  return { digits: digits.length, decimals: decimals.length };
}
