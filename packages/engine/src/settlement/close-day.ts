import { calendarDay, dayNumber, daysInMonth, type CalendarDay, type Period } from '../quantity/index.ts';

/**
 * Whether a period holds a day of the year; 29 February counts as the 28th in a common year. A period that
 * reaches beyond the year after its first holds the day of one of the two.
 *
 * @param monthDay  mm-dd
 * @example
 * holdsDayOfYear({ from: parseDay('2025-03-01'), to: parseDay('2025-04-01') }, '03-31') //=> true
 */
export function holdsDayOfYear(period: Period, monthDay: string): boolean {
  const month = twoDigits(monthDay, 0);
  const day = twoDigits(monthDay, 3);
  const { year } = calendarDay(period.from);
  return holds(period, { year, month, day }) || holds(period, { year: year + 1, month, day });
}

/** Two digits of a text as a number. */
function twoDigits(text: string, at: number): number {
  return (text.charCodeAt(at) - 48) * 10 + (text.charCodeAt(at + 1) - 48);
}

/** Whether a period holds a day, or the last of a month that is too short for it. */
function holds(period: Period, { year, month, day }: CalendarDay): boolean {
  const last = daysInMonth(year, month);
  const at = dayNumber({ year, month, day: day > last ? last : day });
  return at >= period.from && at < period.to;
}
