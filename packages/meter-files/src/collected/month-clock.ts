import { addDays, calendarDay, dayNumber, daysInMonth } from '@unitbook/engine';
import { DAY_MINUTES, dayOfMinute } from './texts.ts';

/** A calendar month on the clock of a file: its minutes are those from `from` on and before `to`. */
export interface ClockMonth {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The calendar month in which a minute falls.
 *
 * @example
 * monthOfMinute(31 * 1440).month //=> 2
 */
export function monthOfMinute(minute: number): ClockMonth {
  const { year, month } = calendarDay(dayOfMinute(minute));
  const first = dayNumber({ year, month, day: 1 });
  const next = addDays(first, daysInMonth(year, month));
  return { year, month, from: first * DAY_MINUTES, to: next * DAY_MINUTES };
}
