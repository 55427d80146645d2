import type { IntervalRows } from './interval-rows.ts';

/** The columns of intervals of one stream and one length, each as long as there are rows. */
export interface Columns {
  readonly starts: Int32Array;
  readonly values: Float64Array;
  readonly qualities: Uint8Array;
  readonly lines: Int32Array;
}

/** Some rows of columns, in the order in which they are named. */
export function pickRows({ starts, values, qualities, lines }: Columns, picked: Uint32Array): Columns {
  return {
    starts: Int32Array.from(picked, (row) => starts[row] as number),
    values: Float64Array.from(picked, (row) => values[row] as number),
    qualities: Uint8Array.from(picked, (row) => qualities[row] as number),
    lines: Int32Array.from(picked, (row) => lines[row] as number),
  };
}

/**
 * Rows in order of time; of one start, in the order in which they stand in the file.
 *
 * @returns  views of the columns where nothing is to be moved, else copies
 */
export function inOrder({ count, isOrdered, ...rows }: IntervalRows): Columns {
  const columns: Columns = {
    starts: rows.starts.subarray(0, count),
    values: rows.values.subarray(0, count),
    qualities: rows.qualities.subarray(0, count),
    lines: rows.lines.subarray(0, count),
  };
  if (isOrdered) return columns;
  const { starts, lines } = columns;
  const order = Uint32Array.from(starts, (_, row) => row).sort(
    (a, b) =>
      (starts[a] as number) - (starts[b] as number) || (lines[a] as number) - (lines[b] as number) || a - b,
  );
  return pickRows(columns, order);
}
