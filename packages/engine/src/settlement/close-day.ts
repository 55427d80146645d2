import { calendarDay, dayNumber, daysInMonth, type Period } from '../quantity/index.ts';

/**
 * Whether a period holds a day of the year; 29 February counts as the 28th in a common year.
 *
 * @param monthDay  mm-dd
 * @example
 * holdsDayOfYear({ from: parseDay('2025-03-01'), to: parseDay('2025-04-01') }, '03-31') //=> true
 */
export function holdsDayOfYear(period: Period, monthDay: string): boolean {
  const month = Number.parseInt(monthDay.slice(0, 2), 10);
  const day = Number.parseInt(monthDay.slice(3), 10);
  const first = calendarDay(period.from).year;
  const last = calendarDay(period.to).year;
  for (let year = first; year <= last; year += 1) {
    const at = dayNumber({ year, month, day: Math.min(day, daysInMonth(year, month)) });
    if (at >= period.from && at < period.to) return true;
  }
  return false;
}
