import { expect, it } from 'vitest';
import { amountOf, type CashFlowData, type CashFlowYear, type ChartView } from './chart-data.ts';
import { planCashFlow } from './cash-flow-plan.ts';
import { cashFlowTable } from './cash-flow.ts';
import { chartCsv } from './table.ts';

const money = (decimal: string) => amountOf(decimal, (text) => `Rs ${text}`);
const view = (size: ChartView['size'] = 'narrow'): ChartView => ({
  id: 'cash',
  size,
  writing: { number: (text) => text },
});
const plain = (year: number, decimal: string): CashFlowYear => ({
  year,
  label: String(year),
  value: money(decimal),
  band: null,
});
const banded = (year: number, texts: readonly [string, string, string, string]): CashFlowYear => {
  const [value, low, middle, high] = texts.map(money);
  if (!value || !low || !middle || !high) throw new Error('A year has four amounts.');
  return { year, label: String(year), value, band: { low, middle, high } };
};
const data = (years: readonly CashFlowYear[], payback: CashFlowData['payback'] = null): CashFlowData => ({
  title: 'Money by year',
  says: 'It is paid back.',
  unit: 'Rs',
  years,
  lineName: 'as quoted',
  payback,
});

it('puts years from left to right and money from the bottom up, with the payback on the line of zero', () => {
  const plan = planCashFlow(
    data([plain(0, '-100'), plain(1, '-50'), plain(2, '0'), plain(3, '100')], {
      year: 2,
      label: 'paid back',
    }),
    view(),
  );
  const { frame, y } = plan?.plot ?? {};
  const [first, second, third, last] = plan?.points ?? [];
  expect(first).toEqual([frame?.left, (frame?.height ?? 0) - (frame?.bottom ?? 0)]);
  expect(last).toEqual([320 - (frame?.right ?? 0), frame?.top]);
  expect(third?.[1]).toBe(y?.at(0));
  expect((first?.[1] ?? 0) - (second?.[1] ?? 0)).toBe((second?.[1] ?? 0) - (third?.[1] ?? 0));
  expect(plan?.payback?.at).toEqual(third);
  expect(plan?.band).toBe(null);
});

it('marks a payback between two years, and none beyond the last', () => {
  const years = [plain(0, '-100'), plain(1, '100')];
  const plan = planCashFlow(data(years, { year: 0.5, label: 'half a year' }), view());
  const [first = [0, 0], last = [0, 0]] = plan?.points ?? [];
  expect(Math.abs((plan?.payback?.at[0] ?? 0) - (first[0] + last[0]) / 2) <= 0.1).toBe(true);
  expect(planCashFlow(data(years, { year: 4, label: 'later' }), view())?.payback).toBe(null);
});

it('keeps the band in order, low beneath high, also where they were given the other way round', () => {
  const right = planCashFlow(
    data([banded(0, ['0', '0', '0', '0']), banded(9, ['5', '2', '4', '8'])]),
    view('wide'),
  );
  const wrong = planCashFlow(
    data([banded(0, ['0', '0', '0', '0']), banded(9, ['5', '8', '4', '2'])]),
    view('wide'),
  );
  expect(right?.ends.map(({ name }) => name)).toEqual(['P90', 'as quoted', 'P50', 'P10']);
  expect(wrong?.ends).toEqual(right?.ends);
  expect(wrong?.band).toEqual(right?.band);
  expect(right?.band?.hatch.startsWith('M')).toBe(true);
});

it('names no line at its end where there is no room, and names few years', () => {
  const years = Array.from({ length: 26 }, (_, year) =>
    banded(
      year,
      [year - 6, year - 9, year - 7, year - 3].map((of) => String(of * 25_000)) as [
        string,
        string,
        string,
        string,
      ],
    ),
  );
  const plan = planCashFlow(data(years), view());
  expect(plan?.ends.map(({ name }) => name)).toEqual(['P90', 'P50', 'P10']);
  expect(plan?.across.map(({ name }) => name).filter(Boolean)).toEqual(['0', '5', '10', '15', '20', '25']);
});

it('draws nothing of no year, and one year in the middle', () => {
  expect(planCashFlow(data([]), view())).toBe(null);
  const plan = planCashFlow(data([banded(1, ['5', '2', '4', '8'])]), view());
  const { frame } = plan?.plot ?? {};
  expect(
    Math.abs((plan?.points[0]?.[0] ?? 0) - ((frame?.left ?? 0) + 320 - (frame?.right ?? 0)) / 2) <= 0.1,
  ).toBe(true);
  expect([plan?.band, plan?.across.map(({ name }) => name)]).toEqual([null, ['1']]);
});

it('draws zeros on the line of zero', () => {
  const plan = planCashFlow(data([plain(0, '0'), plain(1, '0')]), view());
  expect(plan?.plot.labels).toEqual(['0']);
  expect(plan?.points.map(([, y]) => y)).toEqual([plan?.plot.y.at(0), plan?.plot.y.at(0)]);
});

it('has every number in its table, and exact ones in its CSV text', () => {
  const table = cashFlowTable(
    data([plain(0, '-1250.50'), banded(1, ['5', '2', '4', '8'])], {
      year: 0.9,
      label: 'after 11 months, about',
    }),
  );
  expect(table.lines[0]?.[2]).toBe('–');
  expect(chartCsv(table)).toBe(
    'Year,as quoted,P10,P50,P90\n0,-1250.50,,,\n1,5,2,4,8\n"after 11 months, about",,,,\n',
  );
});
