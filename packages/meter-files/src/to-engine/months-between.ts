import { calendarDay, dayNumber, type DayNumber, type Period } from '@unitbook/engine';

/** Billing periods inside a span of days, and the days at its ends that fill none. */
export interface BillingMonths {
  /** From each cycle day to the next, in order of time. */
  readonly periods: readonly Period[];
  /** The days before the first cycle day; null where there are none. */
  readonly before: Period | null;
  /** The days from the last cycle day on; null where there are none. */
  readonly after: Period | null;
}

/** Every month has a day of these numbers. */
const LAST_CYCLE_DAY = 28;

/** The same day of the next month. */
function nextMonth(day: DayNumber): DayNumber {
  const { year, month, day: inMonth } = calendarDay(day);
  return month === 12
    ? dayNumber({ year: year + 1, month: 1, day: inMonth })
    : dayNumber({ year, month: month + 1, day: inMonth });
}

/** The first day with a number, on or after a day. */
function cycleDayFrom(from: DayNumber, cycleDay: number): DayNumber {
  const { year, month } = calendarDay(from);
  const own = dayNumber({ year, month, day: cycleDay });
  return own < from ? nextMonth(own) : own;
}

const spanOrNone = (from: DayNumber, to: DayNumber): Period | null => (from < to ? { from, to } : null);

/**
 * Whole billing periods inside a span of days, each from a day of the month to the same day of the next.
 *
 * What is left over at both ends is no whole period, and nobody may bill it as one. Without any cycle day
 * inside, all of the span is left over `before`.
 *
 * @param span      half-open, in local days
 * @param cycleDay  1 to 28
 * @throws RangeError  for another day, and for a span that ends before it begins
 * @example
 * monthsBetween({ from: parseDay('2025-04-10'), to: parseDay('2025-06-08') }, 5).periods.map(({ from, to }) => [dayText(from), dayText(to)]) //=> [["2025-05-05","2025-06-05"]]
 */
export function monthsBetween(span: Period, cycleDay: number): BillingMonths {
  if (!Number.isInteger(cycleDay) || cycleDay < 1 || cycleDay > LAST_CYCLE_DAY)
    throw new RangeError(`${cycleDay} is no day from 1 to ${LAST_CYCLE_DAY}`);
  const { from, to } = span;
  if (to < from) throw new RangeError('a span ends after it begins');
  const first = cycleDayFrom(from, cycleDay);
  if (first >= to) return { periods: [], before: spanOrNone(from, to), after: null };
  const periods: Period[] = [];
  let start = first;
  for (let next = nextMonth(start); next <= to; next = nextMonth(next)) {
    periods.push({ from: start, to: next });
    start = next;
  }
  return { periods, before: spanOrNone(from, first), after: spanOrNone(start, to) };
}
