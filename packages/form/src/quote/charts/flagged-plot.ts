import { scaleLinear } from 'd3-scale';
import type { Frame } from '../../plant/chart/geometry.ts';
import type { ChartView } from './chart-data.ts';
import { TOP_NAME } from './figure.ts';
import { placeFlags, type Flag, type Flags } from './flags.ts';
import { place, plotOf, type Margins, type Plot } from './frame.ts';

/** A plot and the labels above it. */
export interface FlaggedPlot {
  readonly plot: Plot;
  readonly flags: Flags;
}

/**
 * A plot under the labels of what it marks.
 *
 * @param values   that the upright axis holds
 * @param margins  at the right and beneath
 * @param flagsIn  what is marked, in a frame whose sides are known
 */
export function flaggedPlot(
  values: readonly number[],
  { size, writing }: Pick<ChartView, 'size' | 'writing'>,
  margins: Omit<Margins, 'top'>,
  flagsIn: (frame: Frame) => readonly Flag[],
): FlaggedPlot {
  const plotUnder = (top: number): Plot => plotOf(values, size, { ...margins, top }, writing.number);
  const bare = plotUnder(TOP_NAME);
  const flags = placeFlags(flagsIn(bare.frame), TOP_NAME, bare.frame.width);
  return { plot: plotUnder(TOP_NAME + flags.height + 12), flags };
}

/**
 * A straight scale from the left of a plot to its right; of one value alone, its middle.
 *
 * @param values  the first and the last of which stand at its sides
 * @example
 * acrossOf([0, 10], { left: 20, right: 10, width: 130, height: 50, top: 0, bottom: 0 })(5) //=> 70
 */
export function acrossOf(
  values: readonly number[],
  { left, right, width }: Frame,
): (value: number) => number {
  const scale = scaleLinear([Math.min(...values), Math.max(...values)], [left, width - right]);
  return (value) => place(scale(value));
}
