import { addDays, type DayNumber } from '@unitbook/engine';
import { monthsBetween } from '@unitbook/meter-files';

/** Which of the days of a file are wanted. */
export type DaysMode = 'all' | 'monthly' | 'picked';

/** A day of the month that every month has. */
export const CYCLE_DAYS: readonly number[] = Array.from({ length: 28 }, (_, index) => index + 1);

/** Readings closer together than this are too many for bills. */
const FEWEST_DAYS = 20;

/** A day of each month between the first and the last of some days. */
function daysOfMonths(days: readonly DayNumber[], cycleDay: number): readonly DayNumber[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const { periods, after } = monthsBetween({ from: first, to: addDays(last, 1) }, cycleDay);
  return [...periods.map(({ from }) => from), ...(after === null ? [] : [after.from])];
}

/** A day of a month without a reading, and the one nearest to it that has one. */
interface LackingDay {
  readonly day: DayNumber;
  readonly nearest: DayNumber;
}

/** The days of months that have a reading, and those that have none. */
export interface MonthlyDays {
  readonly days: readonly DayNumber[];
  readonly lacking: readonly LackingDay[];
}

/**
 * The days of a file on one day of each month.
 *
 * @param days      with a reading, in order
 * @param cycleDay  1 to 28
 */
export function monthlyDays(days: readonly DayNumber[], cycleDay: number): MonthlyDays {
  const read = new Set<number>(days);
  const wanted = daysOfMonths(days, cycleDay);
  const lacking = wanted
    .filter((day) => !read.has(day))
    .map((day) => {
      const far = (one: DayNumber): number => Math.abs(one - day);
      return { day, nearest: days.reduce((best, one) => (far(one) < far(best) ? one : best)) };
    });
  return { days: wanted.filter((day) => read.has(day)), lacking };
}

/** Which days are likely to be wanted: one of each month where a file has more than bills need. */
export function likelyMode(days: readonly DayNumber[]): DaysMode {
  const isClose = days.some((day, at) => at > 0 && day - (days[at - 1] ?? day) < FEWEST_DAYS);
  return isClose ? 'monthly' : 'all';
}
