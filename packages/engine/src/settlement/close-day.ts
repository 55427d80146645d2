import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  daysInMonth,
  type CalendarDay,
  type DayNumber,
  type Period,
} from '../quantity/index.ts';

/**
 * Whether a period holds a day of the year; 29 February counts as the 28th in a common year. A period that
 * reaches beyond the year after its first holds the day of one of the two.
 *
 * @param monthDay  mm-dd
 * @example
 * holdsDayOfYear({ from: parseDay('2025-03-01'), to: parseDay('2025-04-01') }, '03-31') //=> true
 */
export function holdsDayOfYear(period: Period, monthDay: string): boolean {
  return dayOfYearIn(period, monthDay) !== null;
}

/** Every day of the year of a name in a period, in order of time. */
export function daysOfYearIn(period: Period, monthDay: string): readonly DayNumber[] {
  const month = twoDigits(monthDay, 0);
  const day = twoDigits(monthDay, 3);
  const { year } = calendarDay(period.from);
  const years = calendarDay(period.to).year - year + 1;
  return Array.from({ length: years }, (_, at) => heldDay(period, { year: year + at, month, day })).filter(
    (held) => held !== null,
  );
}

/** The first day of the year of a name in a period; null where it holds none. */
function dayOfYearIn(period: Period, monthDay: string): DayNumber | null {
  const month = twoDigits(monthDay, 0);
  const day = twoDigits(monthDay, 3);
  const { year } = calendarDay(period.from);
  return heldDay(period, { year, month, day }) ?? heldDay(period, { year: year + 1, month, day });
}

/** Two digits of a text as a number. */
function twoDigits(text: string, at: number): number {
  return (text.charCodeAt(at) - 48) * 10 + (text.charCodeAt(at + 1) - 48);
}

/** A day, or the last of a month that is too short for it, where a period holds it. */
function heldDay(period: Period, { year, month, day }: CalendarDay): DayNumber | null {
  const last = daysInMonth(year, month);
  const at = dayNumber({ year, month, day: day > last ? last : day });
  return at >= period.from && at < period.to ? at : null;
}

/** A day of the calendar as a day of every year, mm-dd. */
export function monthDayOf(day: DayNumber): string {
  return dayText(day).slice(5);
}

/** The last day of an account's own year, as mm-dd: the day before it began; the last of February, whichever. */
export function lastDayOfYear(since: DayNumber): string {
  const monthDay = monthDayOf(addDays(since, -1));
  return monthDay === '02-28' && monthDayOf(since) === '03-01' ? '02-29' : monthDay;
}
