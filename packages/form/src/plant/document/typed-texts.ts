import { dayText, isDecimalText, parseDay, readNumberText, readTypedDay } from '@unitbook/engine';

/** A plain decimal without zeros in front: "007.5" is 7.5. */
const withoutZeros = (text: string): string => text.replace(/^(-?)0+(?=\d)/, '$1');

/**
 * A number as the document keeps it: plain where it can be read, else as typed, so that nothing is lost.
 *
 * @example
 * keptNumber('1,16,444') //=> "116444"
 * keptNumber('12,892') //=> "12,892"
 */
export function keptNumber(typed: string): string {
  const read = readNumberText(typed);
  const plain = read.kind === 'number' ? withoutZeros(read.text) : '';
  return isDecimalText(plain) ? plain : typed.trim();
}

/**
 * A day as the document keeps it: as yyyy-mm-dd where it can be read, else as typed.
 *
 * @example
 * keptDay('1 May 2025') //=> "2025-05-01"
 * keptDay('May') //=> "May"
 */
export function keptDay(typed: string): string {
  const read = readTypedDay(typed);
  return read === null ? typed.trim() : dayText(read.day);
}

/** Whether a text is a day as documents write it. */
export const isDay = (text: string): boolean => parseDay(text) !== null;
