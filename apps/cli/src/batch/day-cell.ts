import { dayNumber, daysInMonth } from '@unitbook/engine';
import { MINUS, ZERO } from './bytes.ts';

/** The bytes of yyyy-mm-dd. */
export const DAY_BYTES = 10;

/** Days that were read, by their eight digits; a table has few of them. */
const KNOWN = new Map<number, number>();
const MOST_KNOWN = 20_000;

function numberOf(digits: number): number {
  const [year, month, day] = [Math.floor(digits / 10_000), Math.floor(digits / 100) % 100, digits % 100];
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return NaN;
  return dayNumber({ year, month, day });
}

/**
 * Read a day written yyyy-mm-dd.
 *
 * @param at  where it begins; ten bytes from there are read
 * @returns   its number; NaN: no day of the calendar
 * @example
 * dayCell(new TextEncoder().encode('1970-01-02'), 0) //=> 1
 */
export function dayCell(bytes: Uint8Array, at: number): number {
  let digits = 0;
  for (let index = 0; index < DAY_BYTES; index += 1) {
    const byte = bytes[at + index] as number;
    if (index === 4 || index === 7) {
      if (byte !== MINUS) return NaN;
    } else {
      const digit = byte - ZERO;
      if (!(digit >= 0 && digit <= 9)) return NaN;
      digits = digits * 10 + digit;
    }
  }
  const known = KNOWN.get(digits);
  if (known !== undefined) return known;
  if (KNOWN.size >= MOST_KNOWN) KNOWN.clear();
  const number = numberOf(digits);
  KNOWN.set(digits, number);
  return number;
}
