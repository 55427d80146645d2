import { LARGEST_WHOLE } from '@unitbook/engine';
import type { IntervalSeries } from './interval-series.ts';
import type { Lane } from './lanes.ts';
import type { MinuteRange } from './minute-ranges.ts';
import { addToTally, type Tally } from './tally.ts';

/** Starts in order and a value for each; the values are whole numbers of 10^-places kWh. */
export interface Rows {
  readonly starts: Int32Array;
  readonly values: Float64Array;
}

/** How rows are to be made. */
export interface RowPlan {
  /** The length that all intervals are to have. */
  readonly minutes: number;
  readonly places: number;
  readonly toLocal: (minute: number) => number;
  /** Counts intervals that are no whole one of that length. */
  readonly partial: Tally;
  /** Counts sums that are too large to be exact. */
  readonly tooLarge: Tally;
}

/** Rows as they are made, with room for as many as there can be. */
class RowList {
  private readonly starts: Int32Array;
  private readonly values: Float64Array;
  private count = 0;

  constructor(room: number) {
    this.starts = new Int32Array(room);
    this.values = new Float64Array(room);
  }

  push(start: number, value: number): void {
    this.starts[this.count] = start;
    this.values[this.count] = value;
    this.count += 1;
  }

  rows(): Rows {
    return { starts: this.starts.subarray(0, this.count), values: this.values.subarray(0, this.count) };
  }
}

/** How many rows from one on have values and follow each other, at most so many. */
function following({ starts, values, minutes }: IntervalSeries, row: number, most: number): number {
  let count = 0;
  while (
    count < most &&
    row + count < starts.length &&
    !Number.isNaN(values[row + count]) &&
    starts[row + count] === (starts[row] as number) + count * minutes
  )
    count += 1;
  return count;
}

/** The sum of some values; endless where it is not exact on the way. */
function exactSum(values: Float64Array, from: number, end: number): number {
  let sum = 0;
  for (let row = from; row < end; row += 1) {
    sum += values[row] as number;
    if (Math.abs(sum) > LARGEST_WHOLE) return Infinity;
  }
  return sum;
}

/** The intervals of a series that have values, summed up to the length of the plan. */
function seriesRows(series: IntervalSeries, plan: RowPlan): Rows {
  const { starts, values, minutes } = series;
  const group = plan.minutes / minutes;
  const factor = 10 ** (plan.places - series.places);
  const list = new RowList(starts.length);
  for (let row = 0; row < starts.length;) {
    const start = starts[row] as number;
    const isBeginning = group === 1 || plan.toLocal(start) % plan.minutes === 0;
    const count = isBeginning ? following(series, row, group) : 0;
    if (count < group) {
      if (!Number.isNaN(values[row])) addToTally(plan.partial, start, series.lines[row]);
      row += 1;
      continue;
    }
    const value = exactSum(values, row, row + group) * factor;
    if (Math.abs(value) <= LARGEST_WHOLE) list.push(start, value);
    else addToTally(plan.tooLarge, start, series.lines[row]);
    row += group;
  }
  return list.rows();
}

/** Two lists in order of time as one; values of the same start are added up. */
function mergeRows(one: Rows, other: Rows, tooLarge: Tally): Rows {
  const list = new RowList(one.starts.length + other.starts.length);
  let [a, b] = [0, 0];
  while (a < one.starts.length || b < other.starts.length) {
    const [startA, startB] = [one.starts[a] ?? Infinity, other.starts[b] ?? Infinity];
    const start = Math.min(startA, startB);
    const value =
      (startA === start ? (one.values[a] as number) : 0) +
      (startB === start ? (other.values[b] as number) : 0);
    if (Math.abs(value) <= LARGEST_WHOLE) list.push(start, value);
    else addToTally(tooLarge, start);
    if (startA === start) a += 1;
    if (startB === start) b += 1;
  }
  return list.rows();
}

/** The rows that lie in one of some stretches. */
function rowsWithin(rows: Rows, ranges: readonly MinuteRange[], minutes: number): Rows {
  const list = new RowList(rows.starts.length);
  let at = 0;
  rows.starts.forEach((start, row) => {
    while (at < ranges.length && (ranges[at] as MinuteRange).to <= start) at += 1;
    const range = ranges[at];
    if (range !== undefined && range.from <= start && start + minutes <= range.to)
      list.push(start, rows.values[row] as number);
  });
  return list.rows();
}

/**
 * The intervals of a register that have a value, all of one length: shorter ones are summed up where they
 * fill a whole one by the local clock.
 *
 * @param lane  the register
 * @param plan  the length, the decimal places and where to count what cannot be used
 */
export function laneRows(lane: Lane, plan: RowPlan): Rows {
  const [first = { starts: new Int32Array(0), values: new Float64Array(0) }, ...others] = lane.series.map(
    (series) => seriesRows(series, plan),
  );
  if (others.length === 0) return first;
  const merged = others.reduce((rows, other) => mergeRows(rows, other, plan.tooLarge), first);
  return rowsWithin(merged, lane.covered, plan.minutes);
}
