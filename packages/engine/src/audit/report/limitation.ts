import { calendarDay, dayNumber, daysInMonth, decimalToWhole, type DayNumber } from '../../quantity/index.ts';
import type { ClaimLimit } from './dispute-schema.ts';

/** Days of a bill from which a time limit can run; null where one is not known. */
export interface LimitDays {
  readonly 'period-end': DayNumber;
  readonly issued: DayNumber | null;
  readonly due: DayNumber | null;
  readonly paid: DayNumber | null;
}

/** Whether something can still be claimed on a day. */
export interface LimitCheck {
  readonly clause: string;
  /** Whole months. */
  readonly months: string;
  /** What the time was counted from, and that day: the last reading where the day of the rule is not known. */
  readonly from: keyof LimitDays;
  readonly since: DayNumber;
  /** Whether the day of the rule is not known, so that the end of the period stands for it. */
  readonly isAssumed: boolean;
  /** The last day on which it can be claimed. */
  readonly last: DayNumber;
  readonly isInTime: boolean;
}

/**
 * The same day of the month some months later; of a shorter month, its last day.
 *
 * @example
 * dayText(monthsLater(parseDay('2023-08-31'), 6)) //=> "2024-02-29"
 */
export function monthsLater(from: DayNumber, months: number): DayNumber {
  const { year, month, day } = calendarDay(from);
  const all = year * 12 + (month - 1) + months;
  const [inYear, inMonth] = [Math.floor(all / 12), (all % 12) + 1];
  return dayNumber({ year: inYear, month: inMonth, day: Math.min(day, daysInMonth(inYear, inMonth)) });
}

/**
 * Whether a claim about a bill is in time on a day.
 *
 * @param limit  whole months, and what they run from
 * @param on     the day on which it is claimed
 */
export function checkLimit(limit: ClaimLimit, days: LimitDays, on: DayNumber): LimitCheck {
  const own = days[limit.from];
  const since = own ?? days['period-end'];
  const last = monthsLater(since, decimalToWhole(limit.months, 0));
  return {
    clause: limit.clause,
    months: limit.months,
    from: own === null ? 'period-end' : limit.from,
    since,
    isAssumed: own === null,
    last,
    isInTime: on <= last,
  };
}
