/** Why a text is no whole number that can be used. */
export type NumberFault = 'empty' | 'not-whole' | 'too-many-digits';

/** Numbers of so many digits are exact in a double, and the standard's own limit (48 bits) has as many. */
const MOST_DIGITS = 15;

/** Blanks as XML has them: a number with another blank in it is a fault, not a number. */
const WHOLE = /^[ \t\r\n]*([+-]?)([0-9]+)[ \t\r\n]*$/;

/**
 * Read a whole number digit by digit, as `xs:integer` is written; leading zeros do not count as digits.
 *
 * @returns the number, exact, or why there is none
 * @example
 * wholeNumber(' -0703 ') //=> -703
 * wholeNumber('70.3') //=> "not-whole"
 */
export function wholeNumber(text: string): number | NumberFault {
  const parts = WHOLE.exec(text);
  if (parts === null) return /^[ \t\r\n]*$/.test(text) ? 'empty' : 'not-whole';
  const digits = (parts[2] ?? '').replace(/^0+/, '');
  if (digits.length > MOST_DIGITS) return 'too-many-digits';
  let value = 0;
  for (let at = 0; at < digits.length; at += 1) value = value * 10 + digits.charCodeAt(at) - 48;
  return parts[1] === '-' && value > 0 ? -value : value;
}

/**
 * A whole number times a power of ten, as decimal text: exact, and no digit is dropped.
 *
 * @param value  whole, of at most 15 digits
 * @example
 * shiftedText(12340, -3) //=> "12.340"
 * shiftedText(-7, 2) //=> "-700"
 */
export function shiftedText(value: number, power: number): string {
  if (value === 0 && power > 0) return '0';
  const sign = value < 0 ? '-' : '';
  const digits = Math.abs(value).toString();
  if (power >= 0) return `${sign}${digits}${'0'.repeat(power)}`;
  const padded = digits.padStart(1 - power, '0');
  return `${sign}${padded.slice(0, power)}.${padded.slice(power)}`;
}
