import { expect, it } from 'vitest';
import { amountOf, type BillsData, type ChartView } from './chart-data.ts';
import { planBills } from './bills-plan.ts';
import { billsTable } from './bills.ts';
import { chartCsv } from './table.ts';

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const view = (size: ChartView['size']): ChartView => ({
  id: 'bills',
  size,
  writing: { number: (text) => text },
});
const money = (decimal: string) => amountOf(decimal, (text) => `Rs ${text}`);
const data = (bills: readonly (readonly [string, string])[]): BillsData => ({
  title: 'Bills',
  says: 'They fall.',
  unit: 'Rs',
  months: bills.map(([before, after], at) => ({
    label: `${NAMES[at] ?? ''} 2026`,
    short: NAMES[at] ?? '',
    before: money(before),
    after: money(after),
  })),
  beforeName: 'without solar',
  afterName: 'with solar, "net"',
});
const year = data(NAMES.map((_, at) => [String(100 + at), String(at)] as const));

it('stands two bars of a month side by side on the line of zero, within the plot', () => {
  const plan = planBills(year, view('narrow'));
  const zero = plan?.plot.y.at(0) ?? 0;
  expect(plan?.pairs.length).toBe(12);
  let right = plan?.plot.frame.left ?? 0;
  for (const bar of plan?.pairs.flatMap(({ before, after }) => [before, after]) ?? []) {
    expect(bar.x >= right).toBe(true);
    expect(Math.abs(bar.y + bar.height - zero) < 0.05).toBe(true);
    right = bar.x + bar.width;
  }
  expect(right <= 316).toBe(true);
});

it('names every month where there is room, and every second where there is not', () => {
  const names = (size: ChartView['size']) => planBills(year, view(size))?.across.map(({ name }) => name);
  expect(names('wide')).toEqual(NAMES);
  expect(names('narrow')).toEqual(NAMES.map((name, at) => (at % 2 === 0 ? name : '')));
});

it('hangs a bill below zero down from the line, and gives one of nothing no height', () => {
  const plan = planBills(data([['0', '-50']]), view('narrow'));
  const { before, after } = plan?.pairs[0] ?? {};
  const zero = plan?.plot.y.at(0);
  expect([before?.y, before?.height, after?.y]).toEqual([zero, 0, zero]);
  expect((after?.height ?? 0) > 100).toBe(true);
});

it('draws nothing of no month, and all zeros as zeros', () => {
  expect(planBills(data([]), view('wide'))).toBe(null);
  const plan = planBills(data([['0', '0']]), view('wide'));
  expect([plan?.plot.labels, plan?.pairs[0]?.after.height]).toEqual([['0'], 0]);
});

it('writes its table as CSV text', () => {
  expect(chartCsv(billsTable(data([['1200.50', '-3']])))).toBe(
    'Month,without solar,"with solar, ""net"""\nJan 2026,1200.50,-3\n',
  );
});
