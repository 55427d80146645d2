import { LARGEST_WHOLE, type IntervalChannel } from '@unitbook/engine';
import type { Rows } from './lane-rows.ts';
import type { Lane } from './lanes.ts';
import { addToTally, emptyTally, type Tally } from './tally.ts';

/** The intervals that all registers have, summed up by quantity. */
export interface Common {
  /** In order, in minutes of the file. */
  readonly starts: Int32Array;
  readonly channels: ReadonlyMap<IntervalChannel, Float64Array>;
  /** For each register the intervals that it lacks and others have. */
  readonly lacking: readonly Tally[];
}

/** A walk over several lists at once, start by start. */
class Walk {
  private readonly rows: readonly Rows[];
  private readonly at: number[];

  constructor(rows: readonly Rows[]) {
    this.rows = rows;
    this.at = rows.map(() => 0);
  }

  /** The next start of any; Infinity at the end. */
  next(): number {
    let start = Infinity;
    for (let index = 0; index < this.rows.length; index += 1) {
      const own = (this.rows[index] as Rows).starts[this.at[index] as number];
      if (own !== undefined && own < start) start = own;
    }
    return start;
  }

  /** The row of a list at a start, from which the list then goes on; -1 where it has none. */
  take(index: number, start: number): number {
    const row = this.at[index] as number;
    if ((this.rows[index] as Rows).starts[row] !== start) return -1;
    this.at[index] = row + 1;
    return row;
  }
}

/**
 * Leave the intervals that all registers have, and add up those of one quantity.
 *
 * @param rows      of each register, in order of time, all in the same decimal places
 * @param lanes     the registers
 * @param tooLarge  counts sums that are too large to be exact; their intervals are left out
 */
export function commonRows(rows: readonly Rows[], lanes: readonly Lane[], tooLarge: Tally): Common {
  const room = Math.min(...rows.map(({ starts }) => starts.length));
  const starts = new Int32Array(room);
  const names = [...new Set(lanes.map(({ channel }) => channel))];
  const sums = names.map(() => new Float64Array(room));
  const columnOf = lanes.map(({ channel }) => names.indexOf(channel));
  const lacking = lanes.map(() => emptyTally());
  const walk = new Walk(rows);
  const taken = lanes.map(() => 0);
  let count = 0;
  for (let start = walk.next(); start < Infinity; start = walk.next()) {
    let isWhole = true;
    for (let index = 0; index < lanes.length; index += 1) {
      taken[index] = walk.take(index, start);
      if ((taken[index] as number) >= 0) continue;
      isWhole = false;
      addToTally(lacking[index] as Tally, start);
    }
    if (!isWhole) continue;
    starts[count] = start;
    for (const sum of sums) sum[count] = 0;
    for (let index = 0; index < lanes.length; index += 1) {
      const sum = sums[columnOf[index] as number] as Float64Array;
      const value = (rows[index] as Rows).values[taken[index] as number] as number;
      sum[count] = (sum[count] as number) + value;
    }
    if (sums.every((sum) => Math.abs(sum[count] as number) <= LARGEST_WHOLE)) count += 1;
    else addToTally(tooLarge, start);
  }
  return {
    starts: starts.subarray(0, count),
    channels: new Map(names.map((name, index) => [name, (sums[index] as Float64Array).subarray(0, count)])),
    lacking,
  };
}
