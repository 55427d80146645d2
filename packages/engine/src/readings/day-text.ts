import { addDays, calendarDay, dayNumber, daysInMonth, parseDay, type DayNumber } from '../quantity/index.ts';

/** A date as it was typed: the day it is read as, and the other day it could be. */
export interface TypedDay {
  readonly day: DayNumber;
  readonly other: DayNumber | null;
}

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

function validDay(year: number, month: number, day: number): DayNumber | null {
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayNumber({ year, month, day });
}

/** The month whose name, in full or cut short, this is: 1 to 12, or 0 for none. */
function monthNumber(name: string): number {
  return MONTHS.findIndex((month) => name.length >= 3 && month.startsWith(name.toLowerCase())) + 1;
}

const whole = (text: string | undefined): number => Number.parseInt(text ?? '', 10);

/** A year in four digits, or in two as most bills print it: of this century. */
function fullYear(text: string | undefined): number {
  return (text ?? '').length === 2 ? 2000 + whole(text) : whole(text);
}

/**
 * Read a date as people type it: 2025-05-01, 1 May 2025, 1/5/2025 or 1/5/25 (day first).
 *
 * @param text  as typed
 * @returns     the day; `other` is set when day and month could change places; null when it is no day
 * @example
 * readTypedDay('May 2025') //=> null
 */
export function readTypedDay(text: string): TypedDay | null {
  const iso = parseDay(text);
  if (iso !== null) return { day: iso, other: null };
  const trimmed = text.trim();
  const again = parseDay(trimmed);
  if (again !== null) return { day: again, other: null };
  const numbers = /^(\d{1,2})[./ -](\d{1,2})[./ -](\d{4}|\d{2})$/.exec(trimmed);
  if (numbers !== null) {
    const [first, second, year] = [whole(numbers[1]), whole(numbers[2]), fullYear(numbers[3])];
    const dayFirst = validDay(year, second, first);
    const monthFirst = validDay(year, first, second);
    if (dayFirst === null) return monthFirst === null ? null : { day: monthFirst, other: null };
    return { day: dayFirst, other: monthFirst === dayFirst ? null : monthFirst };
  }
  const named = /^(\d{1,2})(?:st|nd|rd|th)?[ .-]+([A-Za-z]{3,9})\.?[ ,.-]+(\d{4}|\d{2})$/.exec(trimmed);
  const month = monthNumber(named?.[2] ?? '');
  const day = named === null ? null : validDay(fullYear(named[3]), month, whole(named[1]));
  return day === null ? null : { day, other: null };
}

/**
 * A day and month typed without the year, as the first such day after the reading before.
 *
 * @param text    as typed: "1 May", "1/5"
 * @param before  the day of the reading before
 * @returns       null when it is no day and month
 * @example
 * readDayWithoutYear('May 2025', parseDay('2025-04-01')) //=> null
 */
export function readDayWithoutYear(text: string, before: DayNumber): DayNumber | null {
  const [, day, word] =
    /^(\d{1,2})(?:st|nd|rd|th)?[ ./-]+([A-Za-z]{3,9}|\d{1,2})[.,]?$/.exec(text.trim()) ?? [];
  if (day === undefined || word === undefined) return null;
  const month = /^\d/.test(word) ? whole(word) : monthNumber(word);
  const { year } = calendarDay(addDays(before, 1));
  const [first, second] = [validDay(year, month, whole(day)), validDay(year + 1, month, whole(day))];
  return first !== null && first > before ? first : second;
}
