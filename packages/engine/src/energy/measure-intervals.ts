import { givenFigure, type Figure, type Outcome, type Period } from '../quantity/index.ts';
import { DAY_MINUTES, type BlockClock } from './block-clock.ts';
import { intervalFindings } from './check-intervals.ts';
import {
  INTERVAL_CHANNELS,
  wholeColumns,
  type IntervalChannel,
  type IntervalColumns,
} from './interval-columns.ts';
import { dayOfMinute, orderIntervals, type IntervalRun } from './interval-runs.ts';
import { closeWindow, netRows, windowMeter, type DayRows, type IntervalRules } from './interval-windows.ts';
import type { Measured } from './measured-intervals.ts';

const CHANNELS = INTERVAL_CHANNELS.length;

/** Whole watt-hours by channel; null for a channel that is not metered. */
export type ChannelTotals = Readonly<Record<IntervalChannel, number | null>>;

/** The interval data of a period. All energy is in whole watt-hours. */
export interface IntervalPeriod {
  readonly period: Period;
  /** How many intervals were counted. */
  readonly intervals: number;
  /** As metered: netted in no way. */
  readonly totals: ChannelTotals;
  /** The totals of each time block, in the tariff's order. */
  readonly blocks: readonly (ChannelTotals & { readonly id: string })[];
  /** What each netting leaves: in all, and by block in the tariff's order. */
  readonly windows: readonly {
    readonly id: string;
    readonly total: number;
    readonly blocks: readonly number[];
  }[];
}

/** Add the rows of a day to the sums of its blocks. */
function addRows({ columns, sums, counts, stride }: Measured, rows: DayRows): void {
  const { runEnds, runBlocks } = rows.table;
  counts[rows.period] = (counts[rows.period] as number) + (rows.end - rows.row);
  for (let channel = 0; channel < CHANNELS; channel += 1) {
    const column = columns[INTERVAL_CHANNELS[channel] as IntervalChannel];
    if (column === null) continue;
    const base = (rows.period * CHANNELS + channel) * stride;
    let { row } = rows;
    for (let run = 0; row < rows.end; run += 1) {
      const stop = Math.min(rows.end, rows.row + (runEnds[run] as number) - rows.slot);
      let sum = 0;
      for (; row < stop; row += 1) sum += column[row] as number;
      const at = base + (runBlocks[run] as number);
      sums[at] = (sums[at] as number) + sum;
    }
  }
}

/** Which period a day lies in, looked for from the one before; −1 for none. */
function periodAt(periods: readonly Period[], day: number, from: number): number {
  let at = from;
  while (at > 0 && day < (periods[at]?.from ?? 0)) at -= 1;
  while (at < periods.length - 1 && day >= (periods[at]?.to ?? 0)) at += 1;
  const period = periods[at];
  return period !== undefined && period.from <= day && day < period.to ? at : -1;
}

/** Measure a run day by day. */
function addRun(measured: Measured, run: IntervalRun, clock: BlockClock): void {
  const { periods, columns, meters, splits } = measured;
  const { starts, minutes } = columns;
  for (let row = run.row; row < run.end;) {
    const minute = starts[row] as number;
    const day = dayOfMinute(minute);
    const inDay = minute - day * DAY_MINUTES;
    const end = Math.min(run.end, row + Math.ceil((DAY_MINUTES - inDay) / minutes));
    const period = periodAt(periods, day, measured.period);
    if (period >= 0) {
      const table = clock.day(day);
      const rows: DayRows = { day, table, row, end, slot: Math.floor(inDay / minutes), period };
      measured.period = period;
      addRows(measured, rows);
      for (const meter of meters) if (meter !== null) netRows(meter, rows);
      if (table.isSplit && !splits.has(period)) splits.set(period, rows);
    }
    row = end;
  }
}

function measureRuns(measured: Measured, clock: BlockClock): void {
  const meters = measured.meters.filter((meter) => meter !== null);
  for (const run of measured.order.runs) {
    // The second hour of the same name is another hour, but the same day.
    if (run.isSecondPass) for (const meter of meters) if (meter.window.within === 'hour') closeWindow(meter);
    addRun(measured, run, clock);
  }
  for (const meter of meters) closeWindow(meter);
}

function checkCall(columns: IntervalColumns, periods: readonly Period[], { clock }: IntervalRules): void {
  const { starts, minutes } = columns;
  if (clock.slotMinutes !== minutes) {
    throw new RangeError(`a clock for ${clock.slotMinutes} minutes cannot measure intervals of ${minutes}`);
  }
  for (const channel of INTERVAL_CHANNELS) {
    const { length } = columns[channel] ?? starts;
    if (length !== starts.length)
      throw new RangeError(`${length} values of ${channel}, ${starts.length} starts`);
  }
  periods.forEach((period, at) => {
    const before = periods[at - 1];
    if (period.to < period.from || (before !== undefined && before.to > period.from)) {
      throw new RangeError('periods have to be in order of time, none over another');
    }
  });
}

const sumOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

/** The sums of one period, by name. */
function periodResult(measured: Measured, at: number, { clock }: IntervalRules): IntervalPeriod {
  const { periods, columns, sums, counts, stride, meters } = measured;
  const own = (channel: number): Float64Array => {
    const base = (at * CHANNELS + channel) * stride;
    return sums.subarray(base, base + stride);
  };
  const totals = (pick: (values: Float64Array) => number): ChannelTotals => {
    const value = (channel: number, name: IntervalChannel): number | null =>
      columns[name] === null ? null : pick(own(channel));
    return { import: value(0, 'import'), export: value(1, 'export'), generation: value(2, 'generation') };
  };
  return {
    period: periods[at] as Period,
    intervals: counts[at] as number,
    totals: totals(sumOf),
    blocks: clock.blocks.map(({ id }, block) => ({ id, ...totals((values) => values[block] as number) })),
    windows: meters
      .filter((meter) => meter !== null)
      .map(({ window, sums: left }) => {
        const blocks = left.subarray(at * stride, (at + 1) * stride);
        return { id: window.id, total: sumOf(blocks), blocks: [...blocks.subarray(0, stride - 1)] };
      }),
  };
}

/**
 * Measure the interval data of several periods in one pass: exact sums by channel, by time block, and what
 * netting inside windows of time leaves.
 *
 * Sums are whole watt-hours in doubles, exact as far as they are at most 2⁵³ − 1: none of them falls, so
 * the last tells of all.
 *
 * @param columns  in order of time
 * @param periods  half-open, in order of time, none over another
 * @param rules    the clock of the tariff's time blocks, the windows, the days on which the clocks change
 * @returns        for each period its sums, null where anything is an error, and its findings
 * @throws RangeError  for a clock of another length, columns of different lengths, periods in disorder
 * @example
 * measureIntervalYear(intervalRowsToColumns([{ start: 0, import: 250 }], 60), [], { clock: blockClock(null, 60), windows: [] }) //=> []
 */
export function measureIntervalYear(
  columns: IntervalColumns,
  periods: readonly Period[],
  rules: IntervalRules,
): readonly Outcome<IntervalPeriod | null>[] {
  checkCall(columns, periods, rules);
  const { clock, windows, clockChanges = [] } = rules;
  const changes = new Set<number>(clockChanges);
  const stride = clock.blocks.length + 1;
  const { columns: whole, faults } = wholeColumns(columns);
  const measured: Measured = {
    columns: whole,
    wrong: faults,
    given: columns,
    periods,
    order: orderIntervals(columns, changes),
    changes,
    stride,
    sums: new Float64Array(periods.length * CHANNELS * stride),
    counts: new Float64Array(periods.length),
    meters: windows.map((window) => windowMeter(window, whole, clock, periods.length)),
    splits: new Map(),
    period: 0,
  };
  measureRuns(measured, clock);
  const findings = intervalFindings(measured, rules);
  return periods.map((_, at) => {
    const own = findings[at] ?? [];
    const isWrong = own.some(({ severity }) => severity === 'error');
    return { value: isWrong ? null : periodResult(measured, at, rules), findings: own };
  });
}

/**
 * Measure the interval data of one period: exact sums by channel, by time block, and what netting inside
 * windows of time leaves. Data outside the period is left alone.
 *
 * @param columns  in order of time
 * @param period   half-open; its days are local days
 * @param rules    the clock of the tariff's time blocks, the windows, the days on which the clocks change
 * @returns        the sums, null where anything is an error, and every finding about them
 * @throws RangeError  for a clock of another length, or columns of different lengths
 * @example
 * const hours = Array.from({ length: 24 }, (_, hour) => ({ start: hour * 60, import: 250 }));
 * measureIntervals(intervalRowsToColumns(hours, 60), { from: 0, to: 1 }, { clock: blockClock(null, 60), windows: [] }).value.totals.import //=> 6000
 */
export function measureIntervals(
  columns: IntervalColumns,
  period: Period,
  rules: IntervalRules,
): Outcome<IntervalPeriod | null> {
  const [result] = measureIntervalYear(columns, [period], rules);
  return result ?? { value: null, findings: [] };
}

/**
 * A sum of intervals as a figure, in kWh counted in whole watt-hours.
 *
 * @param words      its id and label
 * @param wattHours  whole
 * @example
 * intervalFigure({ id: 'import@peak', label: 'Import at peak' }, 1500).denominator //=> 1000
 */
export function intervalFigure(words: Pick<Figure, 'id' | 'label'>, wattHours: number): Figure {
  const { id, label } = words;
  return givenFigure({
    id,
    label,
    unit: 'kWh',
    numerator: wattHours,
    denominator: 1000,
    clause: 'intervals',
  });
}
