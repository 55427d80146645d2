import { addDays, calendarDay, dayNumber, daysInMonth, type DayNumber } from './day.ts';

/**
 * A billing period, half-open: the reading day `from` belongs to it, the reading day `to` to the next.
 * Its days are `to` minus `from`.
 */
export interface Period {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/**
 * How many days a period has: current minus previous reading date.
 *
 * @example
 * periodDays({ from: parseDay('2025-01-15'), to: parseDay('2025-02-14') }) //=> 30
 */
export function periodDays(period: Period): number {
  return period.to - period.from;
}

/** The part of a calendar month that lies in a period. */
export interface MonthPart {
  readonly year: number;
  readonly month: number;
  /** Days of the period in this month. */
  readonly days: number;
  /** Days the month has. */
  readonly length: number;
}

/**
 * The calendar months a period touches, with the days in each.
 *
 * @param period  half-open
 * @returns       in calendar order; the days sum to the period's days
 * @example
 * monthParts({ from: parseDay('2025-01-21'), to: parseDay('2025-02-11') }).map((part) => part.days) //=> [11,10]
 */
export function monthParts(period: Period): readonly MonthPart[] {
  const parts: MonthPart[] = [];
  let from = period.from;
  while (from < period.to) {
    const { year, month } = calendarDay(from);
    const length = daysInMonth(year, month);
    const next = addDays(dayNumber({ year, month, day: 1 }), length);
    const to = next < period.to ? next : period.to;
    parts.push({ year, month, days: to - from, length });
    from = to;
  }
  return parts;
}
