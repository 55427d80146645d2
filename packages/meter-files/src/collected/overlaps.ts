import { mergedRanges, type MinuteRange } from './minute-ranges.ts';
import { pickRows, type Columns } from './order-rows.ts';
import { addToTally, emptyTally, type Tally } from './tally.ts';

/** Intervals of one length in order of time, each start once. */
export interface LengthColumns {
  readonly minutes: number;
  readonly columns: Columns;
}

/** Intervals of one length, less those that lie over others, and a count of those. */
export interface Untangled extends LengthColumns {
  readonly overlaps: Tally;
}

/** The stretches that rows with a value (or without) cover, in order. */
function stretches({ minutes, columns }: LengthColumns, isTaken: (row: number) => boolean): MinuteRange[] {
  const ranges: { from: number; to: number }[] = [];
  columns.starts.forEach((from, row) => {
    if (!isTaken(row)) return;
    const last = ranges.at(-1);
    if (last?.to === from) last.to = from + minutes;
    else ranges.push({ from, to: from + minutes });
  });
  return ranges;
}

/** Tells of intervals in order of time whether they lie over any of some ranges. */
function overlapTeller(ranges: readonly MinuteRange[]): (from: number, to: number) => boolean {
  let at = 0;
  return (from, to) => {
    while (at < ranges.length && (ranges[at] as MinuteRange).to <= from) at += 1;
    return at < ranges.length && (ranges[at] as MinuteRange).from < to;
  };
}

/** Which rows with a value lie over none before and none of some ranges; the others are counted. */
function freeRows(one: LengthColumns, taken: readonly MinuteRange[], overlaps: Tally): Uint8Array {
  const { starts, values, lines } = one.columns;
  const free = new Uint8Array(starts.length);
  const isTaken = overlapTeller(taken);
  let end = -Infinity;
  starts.forEach((start, row) => {
    if (Number.isNaN(values[row])) return;
    if (start < end || isTaken(start, start + one.minutes)) addToTally(overlaps, start, lines[row]);
    else {
      free[row] = 1;
      end = start + one.minutes;
    }
  });
  return free;
}

/** Let rows without a value stay where nothing with a value lies over them. */
function keepEmpty(one: LengthColumns, free: Uint8Array, taken: readonly MinuteRange[]): void {
  const { starts, values } = one.columns;
  const isTaken = overlapTeller(taken);
  let end = -Infinity;
  starts.forEach((start, row) => {
    if (!Number.isNaN(values[row]) || start < end || isTaken(start, start + one.minutes)) return;
    free[row] = 1;
    end = start + one.minutes;
  });
}

const isTangled = ({ minutes, columns: { starts } }: LengthColumns): boolean =>
  starts.some((start, row) => row > 0 && start < (starts[row - 1] as number) + minutes);

/**
 * Leave out what lies over other intervals of the same stream: of two the shorter is kept, of two of one
 * length the earlier. Rows without a value give way to any that has one, and are not counted.
 *
 * @param series  of one stream, one for each length, in any order
 * @returns       the shortest first
 */
export function withoutOverlaps(series: readonly LengthColumns[]): readonly Untangled[] {
  const [only] = series;
  if (series.length === 1 && only !== undefined && !isTangled(only))
    return [{ ...only, overlaps: emptyTally() }];
  const shortFirst = [...series].sort((a, b) => a.minutes - b.minutes);
  let taken: readonly MinuteRange[] = [];
  const freed = shortFirst.map((one) => {
    const overlaps = emptyTally();
    const free = freeRows(one, taken, overlaps);
    taken = mergedRanges([...taken, ...stretches(one, (row) => free[row] === 1)]);
    return { one, free, overlaps };
  });
  return freed.map(({ one, free, overlaps }) => {
    keepEmpty(one, free, taken);
    const kept = Uint32Array.from(free.keys()).filter((row) => free[row] === 1);
    const isWhole = kept.length === free.length;
    return { minutes: one.minutes, columns: isWhole ? one.columns : pickRows(one.columns, kept), overlaps };
  });
}
