import { addDays, dayText, parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { letterOf, overlap, topOf, within, type Bar, type ChartModel } from './chart-model.ts';
import { stripsOf } from './strips.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);

function model(by: ChartModel['by'], bars: readonly Pick<Bar, 'from' | 'to'>[]): ChartModel {
  const whole = bars.map((bar) => ({ ...bar, value: 40_000, judgement: null }));
  return { by, bars: whole, bands: [], outages: [], marks: [], pointed: null, top: 5 };
}

const spans = (chart: ChartModel): readonly string[] =>
  stripsOf(chart).map(({ from, to }) => `${dayText(from)} ${dayText(to)}`);

const monthsFrom = (first: DayNumber, count: number, days: number): Pick<Bar, 'from' | 'to'>[] =>
  Array.from({ length: count }, (_, at) => ({
    from: addDays(first, at * days),
    to: addDays(first, (at + 1) * days),
  }));

it('shows up to two years of months in one strip, and cuts longer rows from the end', () => {
  const first = day('2024-01-01');
  expect(spans(model('months', monthsFrom(first, 12, 30)))).toEqual(['2024-01-01 2024-12-26']);
  // 25 periods of 30 days are 750 days, 26 are 780 and more than fit.
  expect(stripsOf(model('months', monthsFrom(first, 25, 30)))).toHaveLength(1);
  expect(spans(model('months', monthsFrom(first, 26, 30)))).toEqual([
    '2024-01-01 2024-01-31',
    '2024-01-31 2026-02-19',
  ]);
});

it('gives a period longer than a strip one of its own, and none where there is nothing', () => {
  expect(stripsOf(model('months', monthsFrom(day('2020-01-01'), 2, 800)))).toHaveLength(2);
  expect(stripsOf(model('months', []))).toEqual([]);
  expect(stripsOf(model('days', []))).toEqual([]);
});

it('cuts days into quarters of the calendar', () => {
  expect(spans(model('days', monthsFrom(day('2024-12-30'), 5, 1)))).toEqual([
    '2024-10-01 2025-01-01',
    '2025-01-01 2025-04-01',
  ]);
});

it('has a scale up to the next whole unit', () => {
  expect([topOf([]), topOf([0]), topOf([10_000]), topOf([10_001, 3]), topOf([49_999])]).toEqual([
    1, 1, 1, 2, 5,
  ]);
});

it('letters the diary from A on', () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(letterOf)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
});

it('knows what spans have in common', () => {
  const [one, other] = [
    { from: day('2025-01-01'), to: day('2025-01-11') },
    { from: day('2025-01-11'), to: day('2025-01-21') },
  ];
  expect(overlap(one, other)).toBe(false);
  expect(overlap(one, { ...other, from: day('2025-01-10') })).toBe(true);
  expect(within({ from: day('2024-12-01'), to: day('2026-01-01') }, one)).toEqual(one);
});
