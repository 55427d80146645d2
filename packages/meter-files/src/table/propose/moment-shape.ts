import { DATE_ORDERS } from '../layout-document.ts';
import { readDateText } from '../date-text.ts';
import { splitMoment } from '../moment-cell.ts';
import { readClockTime } from '../time-text.ts';

/** What a cell looks like: a date, with a time behind it or without, a time alone, or neither. */
export type MomentShape = 'date-time' | 'date' | 'time' | null;

/**
 * What a cell looks like, in any order of day and month.
 *
 * @example
 * momentShape('1/5/2025 0:15') //=> "date-time"
 * momentShape('0.250') //=> null
 */
export function momentShape(cell: string): MomentShape {
  const text = cell.trim();
  // Quick way out for most cells: numbers.
  if (text.length < 4) return null;
  const [date, time] = splitMoment(text);
  const isDate = DATE_ORDERS.some((order) => readDateText(date, order) !== null);
  if (isDate && time === '') return 'date';
  if (isDate && readClockTime(time) !== null) return 'date-time';
  return text.includes(':') && readClockTime(text) !== null ? 'time' : null;
}

/**
 * Whether a cell holds a date, with a time or without.
 *
 * @example
 * holdsDate('01.05.2025') //=> true
 */
export function holdsDate(cell: string): boolean {
  const shape = momentShape(cell);
  return shape === 'date' || shape === 'date-time';
}
