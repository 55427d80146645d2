/**
 * A plain calendar day as a count of days since 1 January 1970: no clock, no zone.
 * Two days subtract to the days between them.
 */
export type DayNumber = number & { readonly unit: 'day' };

/** Year, month (1 to 12) and day of month of a plain day. */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/**
 * Whether a year of the Gregorian calendar has 29 February.
 *
 * @example
 * isLeapYear(1900) //=> false
 */
export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/**
 * How many days a month has.
 *
 * @param month  1 to 12
 * @example
 * daysInMonth(2024, 2) //=> 29
 */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (MONTH_LENGTHS[month - 1] ?? 0);
}

/** Days from 1 January of year 0 to 1 March of `year`, where years are counted from March on. */
function daysBeforeMarch(year: number): number {
  return 365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

/** Days from 1 March, year 0 to 1 January 1970. */
const MARCH_EPOCH = 719468;

/**
 * The day number of a calendar day.
 *
 * Counting years from March puts the leap day last, so that month lengths follow one line:
 * (153 m + 2) / 5 days before month m of the March year.
 *
 * @example
 * dayNumber({ year: 1970, month: 1, day: 2 }) //=> 1
 */
export function dayNumber(date: CalendarDay): DayNumber {
  const fromMarch = (date.month + 9) % 12;
  const year = date.month > 2 ? date.year : date.year - 1;
  const days = daysBeforeMarch(year) + Math.floor((153 * fromMarch + 2) / 5) + date.day - 1;
  return (days - MARCH_EPOCH) as DayNumber;
}

/**
 * The calendar day of a day number.
 *
 * @example
 * calendarDay(parseDay('2024-02-29') ?? 0).month //=> 2
 */
export function calendarDay(number: DayNumber): CalendarDay {
  const days = number + MARCH_EPOCH;
  const era = Math.floor(days / 146097);
  const inEra = days - era * 146097;
  const yearOfEra = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36524) - Math.floor(inEra / 146096)) / 365,
  );
  const inYear = inEra - daysBeforeMarch(yearOfEra);
  const fromMarch = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

const digit = (text: string, at: number): number => text.charCodeAt(at) - 48;

/**
 * Read an ISO 8601 calendar date, `yyyy-mm-dd`.
 *
 * @returns the day, or null when the text is no such date or the day does not exist
 * @example
 * parseDay('2025-02-29') //=> null
 */
export function parseDay(text: string): DayNumber | null {
  if (text.length !== 10 || text.charCodeAt(4) !== 45 || text.charCodeAt(7) !== 45) return null;
  for (let at = 0; at < 10; at += at === 3 || at === 6 ? 2 : 1) {
    const value = digit(text, at);
    if (!(value >= 0 && value <= 9)) return null;
  }
  const year = digit(text, 0) * 1000 + digit(text, 1) * 100 + digit(text, 2) * 10 + digit(text, 3);
  const month = digit(text, 5) * 10 + digit(text, 6);
  const day = digit(text, 8) * 10 + digit(text, 9);
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayNumber({ year, month, day });
}

/**
 * Print a day as `yyyy-mm-dd`.
 *
 * @example
 * dayText(dayNumber({ year: 2025, month: 4, day: 1 })) //=> "2025-04-01"
 */
export function dayText(number: DayNumber): string {
  const { year, month, day } = calendarDay(number);
  const two = (value: number): string => value.toString().padStart(2, '0');
  return `${year.toString().padStart(4, '0')}-${two(month)}-${two(day)}`;
}

/**
 * The day some days later (or earlier).
 *
 * @example
 * dayText(addDays(dayNumber({ year: 2024, month: 2, day: 28 }), 2)) //=> "2024-03-01"
 */
export function addDays(number: DayNumber, days: number): DayNumber {
  return (number + days) as DayNumber;
}
