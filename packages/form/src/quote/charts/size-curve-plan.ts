import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { ChartView, SizeCurveData, SizeMark, SizePoint } from './chart-data.ts';
import { BELOW, type AcrossTick } from './figure.ts';
import { acrossOf, flaggedPlot } from './flagged-plot.ts';
import type { Flags, PlacedFlag } from './flags.ts';
import type { Plot, Point } from './frame.ts';
import { widestOf } from './text-width.ts';

/** A label and the point of the curve that it marks. */
interface MarkedPoint {
  readonly flag: PlacedFlag;
  readonly at: Point;
}

/** Where everything of the curve of sizes stands. */
export interface SizeCurvePlan {
  readonly plot: Plot;
  readonly across: readonly AcrossTick[];
  /** In order of size. */
  readonly points: readonly Point[];
  readonly line: string;
  readonly chosen: MarkedPoint | null;
  readonly surplusFrom: MarkedPoint | null;
}

const ACROSS = { narrow: 5, wide: 10 } as const;

/** How high the curve is at a size; beyond its ends as high as there. */
function heightAt(points: readonly SizePoint[], size: number): number {
  const sizes = points.map((point) => point.size.at);
  const values = points.map(({ value }) => value.at);
  return points.length === 1 ? (values[0] ?? 0) : scaleLinear(sizes, values).clamp(true)(size);
}

function acrossTicks(
  sizes: readonly number[],
  x: (size: number) => number,
  view: ChartView,
): readonly AcrossTick[] {
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  const ticks = scaleLinear([low, high], [0, 1]).ticks(ACROSS[view.size]);
  return ticks.map((size) => ({ x: x(size), name: view.writing.number(String(size)) }));
}

/** A point with its label above the plot; two marks may say the same. */
function markedPoint(label: string, { placed }: Flags, at: Point): MarkedPoint | null {
  const flag = placed.find((one) => one.x === at[0] && one.label === label);
  return flag === undefined ? null : { flag, at };
}

/** Where everything stands; null without a point. */
export function planSizeCurve(data: SizeCurveData, view: ChartView): SizeCurvePlan | null {
  const points = [...data.points].sort((one, other) => one.size.at - other.size.at);
  if (points.length === 0) return null;
  const marks = [data.chosen, data.surplusFrom].filter((mark) => mark !== null);
  const sizes = [...points, ...marks].map(({ size }) => size.at);
  const right = Math.max(10, widestOf(points.map(({ size }) => view.writing.number(size.decimal))) / 2);
  const values = points.map(({ value }) => value.at);
  const { plot, flags } = flaggedPlot(values, view, { right, bottom: BELOW.unit }, (frame) =>
    marks.map(({ size, label }) => ({ x: acrossOf(sizes, frame)(size.at), label })),
  );
  const x = acrossOf(sizes, plot.frame);
  const drawn = points.map(({ size, value }): [number, number] => [x(size.at), plot.y.at(value.at)]);
  const marked = (mark: SizeMark | null): MarkedPoint | null =>
    mark && markedPoint(mark.label, flags, [x(mark.size.at), plot.y.at(heightAt(points, mark.size.at))]);
  return {
    plot,
    across: acrossTicks(sizes, x, view),
    points: drawn,
    line: line()(drawn) ?? '',
    chosen: marked(data.chosen),
    surplusFrom: marked(data.surplusFrom),
  };
}
