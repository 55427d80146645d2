import { expect, it } from 'vitest';
import { amountOf, type ChartView, type SizeCurveData } from './chart-data.ts';
import { planSizeCurve } from './size-curve-plan.ts';
import { sizeCurveTable } from './size-curve.ts';
import { chartCsv } from './table.ts';

const view = (size: ChartView['size']): ChartView => ({
  id: 'size',
  size,
  writing: { number: (text) => text },
});
const money = (decimal: string) => amountOf(decimal, (text) => `Rs ${text}`);
const kwp = (decimal: string) => amountOf(decimal, (text) => `${text} kWp`);
const data = (
  points: readonly (readonly [string, string])[],
  marks: Partial<Pick<SizeCurveData, 'chosen' | 'surplusFrom'>> = {},
): SizeCurveData => ({
  title: 'By size',
  says: 'It grows.',
  unit: 'Rs',
  sizeUnit: 'kWp',
  sizeName: 'size',
  valueName: 'saved in a year',
  points: points.map(([size, value]) => ({ size: kwp(size), value: money(value) })),
  chosen: null,
  surplusFrom: null,
  ...marks,
});
const chosen = { size: kwp('2'), label: 'the quote' };

it('draws points in order of size, and marks on the curve', () => {
  const plan = planSizeCurve(
    data(
      [
        ['3', '300'],
        ['1', '100'],
      ],
      { chosen, surplusFrom: { size: kwp('3'), label: 'surplus' } },
    ),
    view('wide'),
  );
  const [first = [0, 0], last = [0, 0]] = plan?.points ?? [];
  expect(first[0] < last[0] && first[1] > last[1]).toBe(true);
  expect(plan?.chosen?.at[1]).toBe(plan?.plot.y.at(200));
  expect(Math.abs((plan?.chosen?.at[0] ?? 0) - (first[0] + last[0]) / 2) <= 0.1).toBe(true);
  expect(plan?.surplusFrom?.at).toEqual(last);
});

it('makes room for a mark beyond the points, as high as the nearest', () => {
  const plan = planSizeCurve(
    data(
      [
        ['3', '300'],
        ['4', '400'],
      ],
      { chosen },
    ),
    view('narrow'),
  );
  expect(plan?.chosen?.at).toEqual([plan?.plot.frame.left, plan?.plot.y.at(300)]);
});

it('tells two marks with the same label apart', () => {
  const points = [
    ['1', '100'],
    ['3', '300'],
  ] as const;
  const plan = planSizeCurve(
    data(points, {
      chosen: { size: kwp('1'), label: 'here' },
      surplusFrom: { size: kwp('3'), label: 'here' },
    }),
    view('wide'),
  );
  expect([plan?.chosen?.at, plan?.surplusFrom?.at]).toEqual(plan?.points);
});

it('draws nothing of no point, one point as one, negative values beneath zero', () => {
  expect(planSizeCurve(data([], { chosen }), view('wide'))).toBe(null);
  // Under the name of the axis, 18, the label, 15, and a gap, 12, is the top of the plot.
  expect(planSizeCurve(data([['2', '50']], { chosen }), view('wide'))?.chosen?.at[1]).toBe(45);
  const plan = planSizeCurve(
    data([
      ['1', '-50'],
      ['2', '0'],
    ]),
    view('wide'),
  );
  expect((plan?.points[0]?.[1] ?? 0) > (plan?.plot.y.at(0) ?? 0)).toBe(true);
  expect(planSizeCurve(data([['1', '0']]), view('wide'))?.plot.labels).toEqual(['0']);
});

it('writes its table and its marks as CSV text', () => {
  const table = sizeCurveTable(
    data([['1.5', '900']], { chosen, surplusFrom: { size: kwp('4'), label: 'from 4 kWp on surplus' } }),
  );
  expect(chartCsv(table)).toBe(
    '"size, kWp",saved in a year\n1.5,900\nthe quote: 2 kWp,\nfrom 4 kWp on surplus,\n',
  );
});
