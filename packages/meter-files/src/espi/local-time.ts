import { calendarDay, type DayNumber } from '@unitbook/engine';
import { ruleDay, ruleMinute, type DstRule } from './dst-rule.ts';

/** How local time goes where the meter is: `LocalTimeParameters` of an ESPI feed. */
export interface LocalTimeParameters {
  /** Minutes east of UTC of the standard time, without daylight saving: -480 is UTC-8. */
  readonly offset: number;
  /** Minutes by which the clock is put forward while daylight saving lasts. */
  readonly dstOffset: number;
  /** When daylight saving begins, on standard time; null where there is none. */
  readonly dstStart: DstRule | null;
  /** When daylight saving ends, on the clock put forward; null where there is none. */
  readonly dstEnd: DstRule | null;
}

const MINUTES_OF_A_DAY = 1440;

/** The day on which a minute since 1970 falls, on the same clock. */
const dayOf = (minute: number): DayNumber => Math.floor(minute / MINUTES_OF_A_DAY) as DayNumber;

/** Whether the clock is put forward at a minute of standard time. */
function isForward({ dstOffset, dstStart, dstEnd }: LocalTimeParameters, standard: number): boolean {
  if (dstStart === null || dstEnd === null || dstOffset === 0) return false;
  const { year } = calendarDay(dayOf(standard));
  const start = ruleMinute(dstStart, year);
  const end = ruleMinute(dstEnd, year) - dstOffset;
  // South of the equator summer lies over the end of the year: it begins later in a year than it ends.
  return start < end ? standard >= start && standard < end : standard >= start || standard < end;
}

/**
 * The minute on the local clock at a minute of UTC, both counted from 1970-01-01 00:00 on their clock.
 *
 * @param utcMinute  a whole number of minutes
 * @example
 * localMinute({ offset: -480, dstOffset: 60, dstStart: null, dstEnd: null }, 480) //=> 0
 */
export function localMinute(parameters: LocalTimeParameters, utcMinute: number): number {
  const standard = utcMinute + parameters.offset;
  return isForward(parameters, standard) ? standard + parameters.dstOffset : standard;
}

/**
 * The local days of some years on which the clock is changed, in order.
 *
 * @param fromYear  the first year
 * @param toYear    the last year, which is counted, too
 * @example
 * clockChangeDays({ offset: 330, dstOffset: 0, dstStart: null, dstEnd: null }, 2024, 2025) //=> []
 */
export function clockChangeDays(
  { dstOffset, dstStart, dstEnd }: LocalTimeParameters,
  fromYear: number,
  toYear: number,
): DayNumber[] {
  if (dstStart === null || dstEnd === null || dstOffset === 0) return [];
  const days: DayNumber[] = [];
  for (let year = fromYear; year <= toYear; year += 1) {
    days.push(ruleDay(dstStart, year), ruleDay(dstEnd, year));
  }
  return days.sort((one, other) => one - other);
}
