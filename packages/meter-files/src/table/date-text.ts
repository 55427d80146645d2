import { dayNumber, daysInMonth } from '@unitbook/engine';
import type { TableLayout } from './layout-document.ts';

/** The order of a date. */
export type DateOrder = TableLayout['dateOrder'];

/** A date taken apart: its numbers in the order of the text, and whether the month stands as a name. */
export interface DateParts {
  readonly numbers: readonly [string, string, string];
  /** Which of the three is a month by name; null where none is. */
  readonly named: number | null;
}

/** No meter gave data before, and none does so long ahead. */
const [FIRST_YEAR, LAST_YEAR] = [1980, 2199];

const NUMBERS = /^(\d{1,4})([-/.]|\.? )\s?(\d{1,2})\2\s?(\d{1,4})\.?$/;
const DAY_NAME = /^(\d{1,2})(?:st|nd|rd|th)?[ .-]+([A-Za-z]{3,9})\.?[ ,.-]+(\d{4}|\d{2})$/;
const NAME_DAY = /^([A-Za-z]{3,9})\.?[ -](\d{1,2})(?:st|nd|rd|th)?,?[ -](\d{4})$/;
const YEAR_NAME = /^(\d{4})[ -]([A-Za-z]{3,9})[ -](\d{1,2})$/;

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

/** The month whose name, in full or cut short, this is: 1 to 12, or 0 for none. */
const monthNumber = (name: string): number =>
  MONTHS.findIndex((month) => month.startsWith(name.toLowerCase())) + 1;

/** Where each order has the year, the month and the day. */
const PLACES: Readonly<Record<DateOrder, readonly [number, number, number]>> = {
  'year-month-day': [0, 1, 2],
  'day-month-year': [2, 1, 0],
  'month-day-year': [2, 0, 1],
};

function compactParts(text: string, order: DateOrder): DateParts | null {
  if (!/^\d{8}$/.test(text)) return null;
  const [first, second] = order === 'year-month-day' ? [4, 6] : [2, 4];
  return { numbers: [text.slice(0, first), text.slice(first, second), text.slice(second)], named: null };
}

/**
 * Take a date apart without saying which part is what.
 *
 * @param order  by which a run of eight digits is taken apart
 * @example
 * dateParts('1.5.2025', 'year-month-day') //=> {"numbers":["1","5","2025"],"named":null}
 */
export function dateParts(text: string, order: DateOrder): DateParts | null {
  const [, first, , second, third] = NUMBERS.exec(text) ?? [];
  if (first !== undefined && second !== undefined && third !== undefined)
    return { numbers: [first, second, third], named: null };
  const patterns = [DAY_NAME, NAME_DAY, YEAR_NAME];
  const found = patterns.findIndex((pattern) => pattern.test(text));
  if (found < 0) return compactParts(text, order);
  const [, one = '', two = '', three = ''] = patterns[found]?.exec(text) ?? [];
  return { numbers: [one, two, three], named: found === 1 ? 0 : 1 };
}

const ORDER_OF_NAMED = (parts: DateParts): DateOrder =>
  parts.named === 0 ? 'month-day-year' : parts.numbers[0].length === 4 ? 'year-month-day' : 'day-month-year';

const whole = (digits: string): number => Number.parseInt(digits, 10);

/**
 * The day of a date that was taken apart: days since 1970-01-01.
 *
 * A year has four digits, or two and is of this century. A month by name says itself what the other parts are.
 *
 * @returns null when there is no such day from 1980 to 2199
 * @example
 * dayOfParts({ numbers: ['2', '1', '1980'], named: null }, 'day-month-year') //=> 3653
 */
export function dayOfParts(parts: DateParts, order: DateOrder): number | null {
  const [yearAt, monthAt, dayAt] = PLACES[parts.named === null ? order : ORDER_OF_NAMED(parts)];
  const [yearText = '', monthText = '', dayText = ''] = [yearAt, monthAt, dayAt].map(
    (at) => parts.numbers[at],
  );
  if ((yearText.length !== 4 && yearText.length !== 2) || dayText.length > 2 || dayText === '') return null;
  const year = yearText.length === 2 ? 2000 + whole(yearText) : whole(yearText);
  const month = parts.named === null ? whole(monthText) : monthNumber(monthText);
  const day = whole(dayText);
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12) return null;
  return day < 1 || day > daysInMonth(year, month) ? null : dayNumber({ year, month, day });
}

/**
 * Read a date in a known order.
 *
 * @returns days since 1970-01-01; null when it is no such date
 * @example
 * readDateText('01.05.2025', 'day-month-year') //=> 20209
 * readDateText('2025-05-01', 'day-month-year') //=> null
 */
export function readDateText(text: string, order: DateOrder): number | null {
  const parts = dateParts(text, order);
  return parts === null ? null : dayOfParts(parts, order);
}
