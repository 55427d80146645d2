import { scaleLinear } from 'd3-scale';
import type { Frame } from '../../plant/chart/geometry.ts';
import type { ChartSize } from './chart-data.ts';
import { widestOf } from './text-width.ts';

/** A point of a drawing: across, and down. */
export type Point = readonly [number, number];

/** How wide a drawing is, and how high what it plots, in its own units. */
export const SIZES = { narrow: { width: 320, plot: 190 }, wide: { width: 760, plot: 270 } } as const;

/** How many lines a scale has, about. */
const TICKS = { narrow: 4, wide: 6 } as const;

/** Between the numbers of a scale and its lines. */
export const GAP = 5;

/** A place in a drawing with one decimal: more makes no difference to the eye. */
export const place = (value: number): number => Math.round(value * 10) / 10;

/** Where numbers stand along an axis, and which of them are written there. */
export interface Axis {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/**
 * An axis over some values and zero, from round number to round number; a little below zero is not worth
 * a whole step. With nothing but zeros it says zero and no more.
 *
 * @param values  to hold
 * @param ends    of the axis in the drawing, that of the low values first
 * @param count   of written numbers, about
 * @example
 * axisOf([3, -12, 9], [100, 0], 4).ticks //=> [-15,-10,-5,0,5,10]
 */
export function axisOf(values: readonly number[], [from, to]: Point, count: number): Axis {
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  const isFlat = low === high;
  const scale = scaleLinear([low, isFlat ? 1 : high], [from, to]).nice(count);
  const [round = 0, top = 0] = scale.domain();
  const [first = 0, second = 0] = scale.ticks(count);
  if (low < 0 && round < low && -low < (second - first) / 2) scale.domain([low, top]);
  return { at: (value) => place(scale(value)), ticks: isFlat ? [0] : scale.ticks(count) };
}

/** What a frame must hold beside the plot. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A frame, and the upright axis along its left side. */
export interface Plot {
  readonly frame: Frame;
  readonly y: Axis;
  /** The written numbers of the axis. */
  readonly labels: readonly string[];
}

/** A frame whose left margin is as wide as the numbers of its upright axis. */
export function plotOf(
  values: readonly number[],
  size: ChartSize,
  margins: Margins,
  write: (decimal: string) => string,
): Plot {
  const { width, plot } = SIZES[size];
  const y = axisOf(values, [margins.top + plot, margins.top], TICKS[size]);
  const labels = y.ticks.map((tick) => write(String(tick)));
  const left = place(Math.max(16, widestOf(labels) + GAP));
  return { frame: { width, height: margins.top + plot + margins.bottom, left, ...margins }, y, labels };
}
