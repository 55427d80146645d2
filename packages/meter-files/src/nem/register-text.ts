import { NO_DIGITS, readDigits } from './digits.ts';

/** A decimal number of a file: `whole` of 10^-`places`, and its text. */
export interface FileNumber {
  readonly text: string;
  readonly whole: number;
  readonly places: number;
}

/** Why a text is no number: more digits than are exact, or no number of 0 or more. */
export type NoNumber = 'too-many' | 'no-number';

/**
 * Read a number of a file by its digits.
 *
 * @example
 * readFileNumber('0012.50') //=> {"text":"0012.50","whole":1250,"places":2}
 */
export function readFileNumber(text: string): FileNumber | NoNumber {
  const decimals = new Uint8Array(1);
  const whole = readDigits(text, decimals, 0);
  if (whole === NO_DIGITS.tooMany) return 'too-many';
  return whole < 0 ? 'no-number' : { text, whole, places: decimals[0] ?? 0 };
}

const scaled = ({ whole, places }: FileNumber, to: number): bigint =>
  BigInt(whole) * 10n ** BigInt(to - places);

/** Below, at or above 0, as the first number is less than, equal to or greater than the second. */
export function compareNumbers(one: FileNumber, other: FileNumber): -1 | 0 | 1 {
  const places = Math.max(one.places, other.places);
  const [first, second] = [scaled(one, places), scaled(other, places)];
  return first === second ? 0 : first < second ? -1 : 1;
}

/** What lies between two reads of a register. */
export interface Advance {
  /** Exactly: a whole number of 10^-`places`. */
  readonly whole: bigint;
  readonly places: number;
  /** What the register showed at most, where the second read is below the first; null where it is not. */
  readonly full: string | null;
}

const wholeDigits = ({ text }: FileNumber): number => text.split('.')[0]?.length ?? 0;

/**
 * By how much a register went on; where the later read is lower, from 0 again after all nines.
 *
 * How many digits the register has is told by the longer of the two texts, as they are written with zeros in
 * front.
 *
 * @example
 * advance({ text: '0990', whole: 990, places: 0 }, { text: '0015', whole: 15, places: 0 }).full //=> "9999"
 */
export function advance(previous: FileNumber, current: FileNumber): Advance {
  const places = Math.max(previous.places, current.places);
  const whole = scaled(current, places) - scaled(previous, places);
  if (whole >= 0n) return { whole, places, full: null };
  const digits = Math.max(wholeDigits(previous), wholeDigits(current));
  return { whole: whole + 10n ** BigInt(digits + places), places, full: '9'.repeat(digits) };
}

/** Whether a printed number says the same as two reads. */
export function isAdvance(number: FileNumber, { whole, places }: Advance): boolean {
  const most = Math.max(number.places, places);
  return scaled(number, most) === whole * 10n ** BigInt(most - places);
}

/**
 * A read in kWh: its digits as they stand, with the point moved. The forms ".5" and "1." become "0.5" and "1".
 *
 * @param text   digits with one point at the most
 * @param shift  decimal places by which a kWh is finer than the unit of the text
 * @example
 * kilowattHours('006342', 3) //=> "006.342"
 * kilowattHours('01.5', -3) //=> "01500"
 */
export function kilowattHours(text: string, shift: number): string {
  const [whole = '', decimals = ''] = text.split('.');
  const digits = whole.padStart(Math.max(0, shift) + 1, '0') + decimals.padEnd(Math.max(0, -shift), '0');
  const places = Math.max(0, decimals.length + shift);
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}
