import { calendarDay, dayNumber, type Period } from '../quantity/index.ts';
import type { QuoteInput } from './quote-input.ts';

/**
 * The billing periods of a life: calendar months from its first day on.
 *
 * @param input  its first day, the first of a month, and its years
 * @example
 * lifePeriods({ start: parseDay('2025-04-01'), years: 25 }).length //=> 300
 */
export function lifePeriods({ start, years }: Pick<QuoteInput, 'start' | 'years'>): readonly Period[] {
  const { year, month } = calendarDay(start);
  const first = (at: number) =>
    dayNumber({ year: year + Math.floor((month - 1 + at) / 12), month: ((month - 1 + at) % 12) + 1, day: 1 });
  return Array.from({ length: years * 12 }, (_, at) => ({ from: first(at), to: first(at + 1) }));
}
