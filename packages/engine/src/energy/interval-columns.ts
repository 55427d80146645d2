import { LARGEST_WHOLE } from '../quantity/index.ts';

/** What an interval meter counts. */
export const INTERVAL_CHANNELS = ['import', 'export', 'generation'] as const;

/** One of the things an interval meter counts. */
export type IntervalChannel = (typeof INTERVAL_CHANNELS)[number];

/** Whole watt-hours, one for each interval. */
export type WattHours = Int32Array | Float64Array;

/** Interval data as columns, in order of time. */
export interface IntervalColumns extends Readonly<Record<IntervalChannel, WattHours | null>> {
  /** The minute at which each interval starts, since 1970-01-01 00:00 on the local clock. */
  readonly starts: Int32Array;
  /** How long every interval is. */
  readonly minutes: 5 | 15 | 30 | 60;
}

/** One interval: the local minute at which it starts, and whole watt-hours. */
export interface IntervalRow extends Partial<Readonly<Record<IntervalChannel, number | null>>> {
  readonly start: number;
}

/** A value that is no whole number of watt-hours. */
export interface ValueFault {
  readonly row: number;
  readonly channel: IntervalChannel;
}

const isWhole = (value: number): boolean =>
  value >= 0 && value <= LARGEST_WHOLE && Math.floor(value) === value;

/** Whether a whole column holds whole watt-hours. Whole numbers of 32 bits can only be below 0. */
function isWholeColumn(column: WattHours): boolean {
  if (column instanceof Int32Array) {
    let signs = 0;
    for (let row = 0; row < column.length; row += 1) signs |= column[row] as number;
    return signs >= 0;
  }
  for (let row = 0; row < column.length; row += 1) if (!isWhole(column[row] as number)) return false;
  return true;
}

/**
 * The columns with 0 in place of every value that is no whole number of watt-hours, and where those are.
 * Columns that hold none are handed on, not copied.
 */
export function wholeColumns(columns: IntervalColumns): {
  readonly columns: IntervalColumns;
  readonly faults: readonly ValueFault[];
} {
  const faults: ValueFault[] = [];
  const whole = INTERVAL_CHANNELS.map((channel) => {
    const column = columns[channel];
    if (column === null || isWholeColumn(column)) return column;
    column.forEach((value, row) => {
      if (!isWhole(value)) faults.push({ row, channel });
    });
    return Float64Array.from(column, (value) => (isWhole(value) ? value : 0));
  });
  const [taken = null, given = null, made = null] = whole;
  return { columns: { ...columns, import: taken, export: given, generation: made }, faults };
}

const FARTHEST = 2 ** 31;

/** A channel that at least one row has; where a row lacks it there is no number. */
function channelOf(column: Float64Array): Float64Array | null {
  return column.some((value) => !Number.isNaN(value)) ? column : null;
}

/**
 * Put interval data into columns. Values are kept as they are: measuring says which are no whole
 * watt-hours.
 *
 * @param rows     in order of time
 * @param minutes  how long every interval is
 * @throws RangeError  for a start that is no whole minute
 * @example
 * intervalRowsToColumns([{ start: 0, import: 250 }, { start: 15, import: 120 }], 15).import?.length //=> 2
 */
export function intervalRowsToColumns(
  rows: readonly IntervalRow[],
  minutes: IntervalColumns['minutes'],
): IntervalColumns {
  const starts = new Int32Array(rows.length);
  const taken = new Float64Array(rows.length);
  const given = new Float64Array(rows.length);
  const made = new Float64Array(rows.length);
  rows.forEach((row, at) => {
    const { start } = row;
    if (!Number.isInteger(start) || Math.abs(start) >= FARTHEST) {
      throw new RangeError(`row ${at} starts at ${start}, which is no whole minute`);
    }
    starts[at] = start;
    taken[at] = row.import ?? NaN;
    given[at] = row.export ?? NaN;
    made[at] = row.generation ?? NaN;
  });
  return {
    starts,
    minutes,
    import: channelOf(taken),
    export: channelOf(given),
    generation: channelOf(made),
  };
}
