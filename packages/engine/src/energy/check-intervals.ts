import { dayText, LARGEST_WHOLE, type Finding, type Period } from '../quantity/index.ts';
import { DAY_MINUTES } from './block-clock.ts';
import { blockFindings } from './check-windows.ts';
import { INTERVAL_CHANNELS, type IntervalColumns } from './interval-columns.ts';
import { intervalFinding } from './interval-findings.ts';
import { dayOfMinute, missingIn, runStop, type IntervalRun } from './interval-runs.ts';
import type { IntervalRules } from './interval-windows.ts';
import { minuteText, type Measured } from './measured-intervals.ts';

const PATH = ['intervals'] as const;

const covers = ({ from, to }: Period, minute: number): boolean =>
  from * DAY_MINUTES <= minute && minute < to * DAY_MINUTES;

/** How many, the first and the last of some rows in order. */
function countedRows(rows: readonly number[], { starts, minutes }: IntervalColumns): Record<string, string> {
  const text = (row: number | undefined): string => minuteText(starts[row ?? 0] ?? 0);
  return {
    count: String(rows.length),
    first: text(rows[0]),
    last: text(rows.at(-1)),
    minutes: String(minutes),
  };
}

function missingFindings({ order, columns, changes }: Measured, period: Period): Finding[] {
  const { minutes } = columns;
  const gaps = missingIn(order, period, minutes, changes);
  const [first, last] = [gaps[0], gaps.at(-1)];
  if (first === undefined || last === undefined) return [];
  const count = gaps.reduce((sum, { from, to }) => sum + Math.ceil((to - from) / minutes), 0);
  if (count === 0) return [];
  const values = {
    count: String(count),
    first: minuteText(first.from),
    last: minuteText(Math.max(last.from, last.to - minutes)),
    minutes: String(minutes),
    from: dayText(period.from),
    to: dayText(period.to),
  };
  return [intervalFinding('energy/interval-missing', { path: PATH }, values)];
}

const ROW_CODES = [
  'energy/interval-repeated',
  'energy/interval-conflict',
  'energy/interval-out-of-order',
] as const;

/** Rows that are not counted. */
function faultFindings({ order, given }: Measured, period: Period): Finding[] {
  if (order.faults.length === 0) return [];
  const own = order.faults.filter(({ row }) => covers(period, given.starts[row] ?? 0));
  return ROW_CODES.flatMap((code) => {
    const rows = own.filter((fault) => fault.code === code).map(({ row }) => row);
    const [first] = rows;
    if (first === undefined) return [];
    return [intervalFinding(code, { path: [...PATH, first] }, countedRows(rows, given))];
  });
}

/** Hours that are repeated on a day that was not named as a clock change. */
function repeatedHours({ order, changes }: Measured, period: Period): Finding[] {
  return order.runs
    .filter((run) => run.isSecondPass && covers(period, run.start) && !changes.has(dayOfMinute(run.start)))
    .map(({ row, start }) =>
      intervalFinding('energy/interval-hour-twice', { path: [...PATH, row] }, { first: minuteText(start) }),
    );
}

/** The row of a run that has so many minutes of a boundary inside it. */
function straddling(run: IntervalRun, edge: number, minutes: number): Finding[] {
  const into = (edge - run.start) % minutes;
  if (edge <= run.start || edge >= runStop(run, minutes)) return [];
  const row = run.row + Math.floor((edge - run.start) / minutes);
  const values = { minutes: String(minutes), first: minuteText(edge - into), edge: minuteText(edge) };
  return [intervalFinding('energy/interval-straddles', { path: [...PATH, row] }, values)];
}

/** Intervals that do not start on a multiple of their length. */
function gridFindings({ order, columns }: Measured, { from, to }: Period): Finding[] {
  const { minutes } = columns;
  const off = order.runs.filter(({ start }) => start % minutes !== 0);
  if (off.length === 0) return [];
  const [first, end] = [from * DAY_MINUTES, to * DAY_MINUTES];
  const straddles = off.flatMap((run) => [
    ...straddling(run, first, minutes),
    ...straddling(run, end, minutes),
  ]);
  const parts = off.map((run) => {
    const rowAt = (minute: number): number =>
      Math.min(run.end, run.row + Math.max(0, Math.ceil((minute - run.start) / minutes)));
    return { row: rowAt(first), end: rowAt(end) };
  });
  const own = parts.filter((part) => part.row < part.end);
  const [begin, last] = [own[0], own.at(-1)];
  if (begin === undefined || last === undefined) return straddles;
  const values = {
    ...countedRows([begin.row, last.end - 1], columns),
    count: String(own.reduce((sum, part) => sum + part.end - part.row, 0)),
  };
  return [intervalFinding('energy/interval-off-grid', { path: [...PATH, begin.row] }, values), ...straddles];
}

/** Values that are no whole watt-hours, and sums that are too large. */
function valueFindings(measured: Measured, period: Period, at: number): Finding[] {
  const { given, wrong, sums, stride } = measured;
  return INTERVAL_CHANNELS.flatMap((channel, index) => {
    const rows = wrong
      .filter((fault) => fault.channel === channel && covers(period, given.starts[fault.row] ?? 0))
      .map(({ row }) => row);
    const [first] = rows;
    const found: Finding[] = [];
    if (first !== undefined) {
      const shown = given[channel]?.[first] ?? NaN;
      const value = Number.isNaN(shown) ? 'no number' : String(shown);
      const values = { ...countedRows(rows, given), channel, value };
      found.push(intervalFinding('energy/interval-not-whole', { path: [...PATH, first, channel] }, values));
    }
    const base = (at * INTERVAL_CHANNELS.length + index) * stride;
    const total = sums.subarray(base, base + stride).reduce((sum, value) => sum + value, 0);
    if (total > LARGEST_WHOLE)
      found.push(intervalFinding('energy/interval-too-large', { path: PATH }, { channel }));
    return found;
  });
}

/**
 * What is to be said of the interval data of each period.
 *
 * @param measured  the data, its order and its sums
 * @param rules     it was measured by
 * @returns         for each period its findings
 */
export function intervalFindings(measured: Measured, rules: IntervalRules): readonly (readonly Finding[])[] {
  const { periods } = measured;
  return periods.map((period, at) => [
    ...missingFindings(measured, period),
    ...repeatedHours(measured, period),
    ...faultFindings(measured, period),
    ...gridFindings(measured, period),
    ...valueFindings(measured, period, at),
    ...blockFindings(measured, at, rules),
    ...rules.clock
      .yearsWithoutHolidays(period)
      .map((year) =>
        intervalFinding('energy/interval-holidays-unknown', { path: PATH }, { year: String(year) }),
      ),
  ]);
}
