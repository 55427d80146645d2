import { scaleBand } from 'd3-scale';
import type { BillsData, BillsMonth, ChartView } from './chart-data.ts';
import { BELOW, TOP_NAME, type AcrossTick } from './figure.ts';
import { place, plotOf, type Axis, type Plot } from './frame.ts';
import { nameEvery } from './text-width.ts';

/** A bar from the line of zero, upwards or downwards. */
export interface BillBar {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** 0 of a bill of nothing. */
  readonly height: number;
}

/** Where everything of the chart of the bills stands. */
export interface BillsPlan {
  readonly plot: Plot;
  readonly across: readonly AcrossTick[];
  readonly pairs: readonly { readonly before: BillBar; readonly after: BillBar }[];
}

const MONTH_STEPS = [1, 2, 3, 4, 6, 12];

function barOf(value: number, { at }: Axis, x: number, width: number): BillBar {
  const [one, other] = [at(value), at(0)];
  return { x: place(x), y: Math.min(one, other), width: place(width), height: place(Math.abs(one - other)) };
}

function namesOf(months: readonly BillsMonth[], apart: number): readonly string[] {
  const names = months.map(({ short }) => short);
  const every = nameEvery(names, apart, MONTH_STEPS);
  return names.map((name, at) => (at % every === 0 ? name : ''));
}

/** Where everything stands; null without a month. */
export function planBills({ months }: BillsData, { size, writing }: ChartView): BillsPlan | null {
  if (months.length === 0) return null;
  const values = months.flatMap(({ before, after }) => [before.at, after.at]);
  const plot = plotOf(values, size, { top: TOP_NAME + 8, right: 4, bottom: BELOW.names }, writing.number);
  const { frame, y } = plot;
  const band = scaleBand(months.keys(), [frame.left, frame.width - frame.right]).padding(0.24);
  const half = band.bandwidth() / 2;
  const left = (at: number): number => band(at) ?? 0;
  const names = namesOf(months, band.step());
  return {
    plot,
    across: months.map((_, at) => ({ x: place(left(at) + half), name: names[at] ?? '' })),
    pairs: months.map(({ before, after }, at) => ({
      before: barOf(before.at, y, left(at), half - 0.5),
      after: barOf(after.at, y, left(at) + half + 0.5, half - 0.5),
    })),
  };
}
