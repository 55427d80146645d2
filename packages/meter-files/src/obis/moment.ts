import { dayNumber, daysInMonth, readTypedDay, type DayNumber, type TypedDay } from '@unitbook/engine';

/** When a telegram was made. */
export interface TelegramTime {
  readonly day: DayNumber;
  readonly minute: number;
  /** Seconds on a clock that is never changed, to tell which of two telegrams is the later one. */
  readonly second: number;
}

const HOUR = 3600;
const whole = (text: string | undefined): number => Number.parseInt(text ?? '', 10);

/** The years that a reading can be of; outside, a date is a slip or no date. */
const isYear = (year: number): boolean => year >= 1990 && year <= 2099;

function validDay(year: number, month: number, day: number): DayNumber | null {
  if (!isYear(year) || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayNumber({ year, month, day });
}

/** Two-digit years are of this century: no meter that writes them is older. */
const dayOf = (
  year: string | undefined,
  month: string | undefined,
  day: string | undefined,
): DayNumber | null => validDay(whole(year) + (year?.length === 4 ? 0 : 2000), whole(month), whole(day));

function minuteOf(hour: string | undefined, minute: string | undefined, second = '0'): number | null {
  const [hours, minutes] = [whole(hour), whole(minute)];
  return hours > 23 || minutes > 59 || whole(second) > 59 ? null : hours * 60 + minutes;
}

/**
 * Read the time of a telegram, YYMMDDhhmmssX, where X is S in summer time and W else.
 *
 * @returns day and minute as written, on the local clock; null when there is no such time
 * @example
 * telegramTime('161113205757W').minute //=> 1257
 * telegramTime('161313205757W') //=> null
 */
export function telegramTime(text: string): TelegramTime | null {
  const match = /^(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)([SW])$/.exec(text);
  const day = match === null ? null : dayOf(match[1], match[2], match[3]);
  const minute = match === null ? null : minuteOf(match[4], match[5], match[6]);
  if (match === null || day === null || minute === null) return null;
  // In autumn the hour from 2 to 3 comes twice, first as S, then as W: only the letter tells them apart.
  const summer = match[7] === 'S' ? HOUR : 0;
  return { day, minute, second: day * 24 * HOUR + minute * 60 + whole(match[6]) - summer };
}

/**
 * Read a time of day: hhmm or hhmmss with or without colons, and as meters write it with the season before (0 or 1).
 *
 * @returns the minute of the day, or null
 * @example
 * clockMinute('18:30') //=> 1110
 * clockMinute('0183059') //=> 1110
 */
export function clockMinute(text: string): number | null {
  const match =
    /^[01]?(\d\d)(\d\d)(\d\d)$/.exec(text) ??
    /^(\d\d)(\d\d)$/.exec(text) ??
    /^(\d{1,2}):(\d\d)(?::(\d\d))?$/.exec(text);
  return match === null ? null : minuteOf(match[1], match[2], match[3]);
}

/** A date with points, strokes or hyphens, the same between all three. */
const NUMERIC = /^\d{1,4}([./-])\d{1,2}\1\d{1,4}$/;

const YEAR_FIRST = /^\d{4}[./]/;

/**
 * Read a date that a person wrote: 2025-05-01, 2025/05/01, 1 May 2025, 1.5.2025 or 1/5/25 (day first).
 *
 * @returns the day, and the other day it could be; null when it is none
 * @example
 * writtenDay('1.8 2025') //=> null
 */
export function writtenDay(text: string): TypedDay | null {
  if (text.length > 40 || (!NUMERIC.test(text) && !/[A-Za-z]{3}/.test(text))) return null;
  const typed = readTypedDay(YEAR_FIRST.test(text) ? text.replace(/[./]/g, '-') : text);
  if (typed === null) return null;
  const year = /\d{4}/.exec(text);
  return year === null || isYear(whole(year[0])) ? typed : null;
}

/** Two-digit numbers below this are hardly years: such meters were not made before. */
const FIRST_CLOCK_YEAR = dayNumber({ year: 2010, month: 1, day: 1 });

/** The year stands first, unless only the other order gives a day that such a meter can have seen. */
function eitherDay(yearFirst: DayNumber | null, dayFirst: DayNumber | null): TypedDay | null {
  const both = [yearFirst, dayFirst].filter((day) => day !== null);
  const likely = both.filter((day) => day >= FIRST_CLOCK_YEAR);
  const [day, other = null] = likely.length > 0 ? likely : both;
  if (day === undefined) return null;
  return { day, other: other === day ? null : other };
}

/**
 * Read the date of a meter's clock (0.9.2): YYMMDD, YYYYMMDD, with the season before, or with separators.
 *
 * @returns the day, and the other day it could be where two-digit numbers stand in no known order
 * @example
 * clockDay('250501').other //=> null
 * clockDay('250532') //=> null
 */
export function clockDay(text: string): TypedDay | null {
  const digits = /^[01]?(\d\d)(\d\d)(\d\d)$/.exec(text) ?? /^(\d{4})(\d\d)(\d\d)$/.exec(text);
  if (digits !== null) {
    const day = dayOf(digits[1], digits[2], digits[3]);
    return day === null ? null : { day, other: null };
  }
  const match = /^(\d\d)([./-])(\d\d)\2(\d\d)$/.exec(text);
  if (match === null) return writtenDay(text);
  return eitherDay(dayOf(match[1], match[3], match[4]), dayOf(match[4], match[3], match[1]));
}
