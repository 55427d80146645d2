import { parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import type { PeriodEnergy } from '@unitbook/meter-files';
import { runningTotals } from './running-totals.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;

function period(from: string, to: string, taken: string | null, given: string | null): PeriodEnergy {
  return { period: { from: day(from), to: day(to) }, import: taken, export: given, generation: null };
}

const APRIL = period('2025-04-01', '2025-05-01', '221.5', '280.6');
const MAY = period('2025-05-01', '2025-06-01', '298.2004', '215.2');
const JUNE = period('2025-06-01', '2025-07-01', '0.0001', '0');

const rows = (periods: readonly PeriodEnergy[], ...[anchor]: [Parameters<typeof runningTotals>[1]?]) =>
  runningTotals(periods, anchor ?? null).offers.map(({ row }) => row);

it('adds periods up from 0, and rounds each total, not each period', () => {
  // 221.5 + 298.2004 = 519.7004; with 0.0001 more 519.7005, which rounds up.
  expect(rows([APRIL, MAY, JUNE])).toEqual([
    { date: '2025-04-01', import: '0.000', export: '0.000' },
    { date: '2025-05-01', import: '221.500', export: '280.600' },
    { date: '2025-06-01', import: '519.700', export: '495.800' },
    { date: '2025-07-01', import: '519.701', export: '495.800' },
  ]);
});

it('goes on from a reading of the book, and back before it as far as 0', () => {
  const anchor = { day: day('2025-05-01'), texts: { import: '4342.1', export: '280.6' } };
  expect(rows([APRIL, MAY], anchor)).toEqual([
    { date: '2025-04-01', import: '4120.600', export: '0.000' },
    { date: '2025-05-01', import: '4342.100', export: '280.600' },
    { date: '2025-06-01', import: '4640.300', export: '495.800' },
  ]);
  const low = { day: day('2025-05-01'), texts: { import: '4342.1', export: '280.5' } };
  expect(rows([APRIL, MAY], low).map(({ date }) => date)).toEqual(['2025-05-01', '2025-06-01']);
});

it('ends before a period in which something cannot be told', () => {
  const broken = period('2025-05-01', '2025-06-01', '298.2', null);
  const { offers, unknown } = runningTotals([APRIL, broken, JUNE], null);
  expect(offers.map(({ row }) => row.date)).toEqual(['2025-04-01', '2025-05-01']);
  expect(unknown).toEqual(broken.period);
  expect(runningTotals([APRIL], null).unknown).toBeNull();
});

it('has nothing to total where there is no period, or nothing counted', () => {
  expect(rows([])).toEqual([]);
  expect(rows([period('2025-04-01', '2025-05-01', null, null)])).toEqual([]);
});
