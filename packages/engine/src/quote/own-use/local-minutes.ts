import { dayText, type DayNumber } from '../../quantity/index.ts';
import { clockText } from '../../tariff/index.ts';

/** Minutes of a day on the local clock. */
export const DAY_MINUTES = 1440;

/** The day of a local minute. */
export const dayOf = (minute: number): DayNumber => Math.floor(minute / DAY_MINUTES) as DayNumber;

/**
 * A local minute in words.
 *
 * @param minute  since 1970-01-01 00:00
 * @example
 * minuteWords(375) //=> "1970-01-01 06:15"
 */
export function minuteWords(minute: number): string {
  const day = dayOf(minute);
  return `${dayText(day)} ${clockText(minute - day * DAY_MINUTES)}`;
}
