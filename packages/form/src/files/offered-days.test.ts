import { dayText, parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { likelyMode, monthlyDays } from './offered-days.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;
const from = (first: string, count: number): DayNumber[] =>
  Array.from({ length: count }, (_, index) => (day(first) + index) as DayNumber);

it('finds one day of each month, the first and the last of the file counted', () => {
  const { days, lacking } = monthlyDays(from('2025-04-01', 31), 1);
  expect(days.map(dayText)).toEqual(['2025-04-01', '2025-05-01']);
  expect(lacking).toEqual([]);
  expect(monthlyDays(from('2025-04-02', 30), 1).days.map(dayText)).toEqual(['2025-05-01']);
  expect(monthlyDays(from('2025-04-02', 29), 1).days).toEqual([]);
  expect(monthlyDays([], 1)).toEqual({ days: [], lacking: [] });
});

it('names the day nearest to one without a reading, the earlier of two', () => {
  const days = [day('2025-04-30'), day('2025-05-02'), day('2025-06-01')];
  const { lacking, days: read } = monthlyDays(days, 1);
  expect(read.map(dayText)).toEqual(['2025-06-01']);
  expect(lacking.map((one) => [dayText(one.day), dayText(one.nearest)])).toEqual([
    ['2025-05-01', '2025-04-30'],
  ]);
});

it('goes over the turn of a year', () => {
  expect(monthlyDays(from('2025-12-15', 40), 28).days.map(dayText)).toEqual(['2025-12-28']);
  expect(monthlyDays(from('2025-12-15', 45), 28).days.map(dayText)).toEqual(['2025-12-28', '2026-01-28']);
});

it('takes all days of a file of bills, and one a month of a file of days', () => {
  expect(likelyMode([day('2025-04-01'), day('2025-04-21')])).toBe('all');
  expect(likelyMode([day('2025-04-01'), day('2025-04-20')])).toBe('monthly');
  expect(likelyMode([day('2025-04-01')])).toBe('all');
});
