import { calendarDay, type DayNumber, type Period } from '@unitbook/engine';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const YEAR = 365;

function words(number: DayNumber, withYear: boolean): string {
  const { year, month, day } = calendarDay(number);
  return `${String(day)} ${MONTHS[month - 1] ?? ''}${withYear ? ` ${String(year)}` : ''}`;
}

/**
 * A day as an account book writes it.
 *
 * @example
 * dayWords(parseDay('2025-05-01')) //=> "1 May 2025"
 */
export function dayWords(day: DayNumber): string {
  return words(day, true);
}

/**
 * A billing period by its two reading days; the first has its year where the second leaves it unclear.
 *
 * @example
 * periodWords({ from: parseDay('2025-12-01'), to: parseDay('2026-01-01') }) //=> "1 Dec – 1 Jan 2026"
 */
export function periodWords({ from, to }: Period): string {
  return `${words(from, to - from >= YEAR)} – ${words(to, true)}`;
}

/**
 * A calendar month in short, January is 1.
 *
 * @example
 * monthWords(4) //=> "Apr"
 */
export function monthWords(month: number): string {
  return MONTHS[month - 1] ?? '';
}
