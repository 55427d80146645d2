import { area, line } from 'd3-shape';
import type { Frame } from '../../plant/chart/geometry.ts';
import type { Band, CashFlowData, CashFlowYear, ChartView } from './chart-data.ts';
import { BELOW, type AcrossTick } from './figure.ts';
import { acrossOf, flaggedPlot, type FlaggedPlot } from './flagged-plot.ts';
import { spreadNames, type EndName, type PlacedFlag } from './flags.ts';
import { GAP, type Plot, type Point } from './frame.ts';
import { hatchPath } from './hatch.ts';
import { nameEvery, widestOf } from './text-width.ts';

/** Paths of what eight cases of ten lie between. */
interface BandPaths {
  readonly edge: string;
  readonly hatch: string;
  readonly middle: string;
}

/** Where everything of the chart of money by year stands. */
export interface CashFlowPlan {
  readonly plot: Plot;
  readonly across: readonly AcrossTick[];
  readonly points: readonly Point[];
  readonly line: string;
  readonly band: BandPaths | null;
  /** The names at the right ends of the lines. */
  readonly ends: readonly EndName[];
  readonly payback: { readonly flag: PlacedFlag; readonly at: Point } | null;
}

type Banded = CashFlowYear & { readonly band: Band };

const YEAR_STEPS = [1, 2, 5, 10, 20, 25, 50, 100];
const isBanded = (year: CashFlowYear): year is Banded => year.band !== null;
const sorted = ({ low, high }: Band): Point => [Math.min(low.at, high.at), Math.max(low.at, high.at)];

function bandOf(
  years: readonly CashFlowYear[],
  x: (year: number) => number,
  y: (money: number) => number,
): BandPaths | null {
  const own = years.filter(isBanded);
  if (own.length < 2) return null;
  const lower = own.map(({ year, band }): Point => [x(year), y(sorted(band)[0])]);
  const upper = own.map(({ year, band }): Point => [x(year), y(sorted(band)[1])]);
  const edges = own.map((_, at) => ({
    across: lower[at]?.[0] ?? 0,
    low: lower[at]?.[1],
    up: upper[at]?.[1],
  }));
  const edge = area<(typeof edges)[number]>(
    ({ across }) => across,
    ({ low = 0 }) => low,
    ({ up = 0 }) => up,
  );
  return {
    edge: edge(edges) ?? '',
    hatch: hatchPath([...lower, ...upper.reverse()], 7),
    middle: line()(own.map(({ year, band }): [number, number] => [x(year), y(band.middle.at)])) ?? '',
  };
}

/** Names at the ends of the lines: those of the band, and where there is room that of the line itself. */
function endsOf(
  { years, lineName }: CashFlowData,
  size: ChartView['size'],
): readonly (readonly [string, number])[] {
  const last = years.at(-1);
  if (last === undefined) return [];
  const own: [string, number][] = size === 'wide' ? [[lineName, last.value.at]] : [];
  if (last.band === null || years.filter(isBanded).length < 2) return own;
  const [low, high] = sorted(last.band);
  return [['P90', high], ['P50', last.band.middle.at], ['P10', low], ...own];
}

function acrossTicks(years: readonly CashFlowYear[], x: (year: number) => number): readonly AcrossTick[] {
  const [first, second] = years;
  const apart = first === undefined || second === undefined ? 0 : x(second.year) - x(first.year);
  const every = nameEvery(
    years.map(({ label }) => label),
    apart,
    YEAR_STEPS,
  );
  return years.map(({ year, label }, at) => ({ x: x(year), name: at % every === 0 ? label : '' }));
}

/** The payback if the axis reaches it: none is drawn where it is not. */
function paybackIn({ years, payback }: CashFlowData): CashFlowData['payback'] {
  const [first = 0, last = 0] = [years[0]?.year, years.at(-1)?.year];
  return payback !== null && first <= payback.year && payback.year <= last ? payback : null;
}

const valuesOf = ({ value, band }: CashFlowYear): readonly number[] =>
  band === null ? [value.at] : [value.at, ...sorted(band), band.middle.at];

type Names = ReturnType<typeof endsOf>;

/** The plot with room for the names at its right, and the label of the payback above it. */
function plotYears(data: CashFlowData, view: ChartView, ends: Names): FlaggedPlot {
  const payback = paybackIn(data);
  const right = Math.max(14, widestOf(ends.map(([name]) => name)) + GAP + 2);
  return flaggedPlot(data.years.flatMap(valuesOf), view, { right, bottom: BELOW.unit }, (frame) =>
    payback === null ? [] : [{ x: yearsAcross(data, frame)(payback.year), label: payback.label }],
  );
}

function yearsAcross({ years }: CashFlowData, frame: Frame): (year: number) => number {
  return acrossOf(
    years.map(({ year }) => year),
    frame,
  );
}

/** Where everything stands; null without a year. */
export function planCashFlow(data: CashFlowData, view: ChartView): CashFlowPlan | null {
  const { years } = data;
  if (years.length === 0) return null;
  const ends = endsOf(data, view.size);
  const { plot, flags } = plotYears(data, view, ends);
  const { frame, y } = plot;
  const x = yearsAcross(data, frame);
  const points = years.map(({ year, value }): [number, number] => [x(year), y.at(value.at)]);
  const names = ends.map(([name, at]) => ({ name, y: y.at(at) }));
  const [flag] = flags.placed;
  return {
    plot,
    across: acrossTicks(years, x),
    points,
    line: line()(points) ?? '',
    band: bandOf(years, x, y.at),
    ends: spreadNames(names, [frame.top, frame.height - frame.bottom]),
    payback: flag === undefined ? null : { flag, at: [flag.x, y.at(0)] },
  };
}
