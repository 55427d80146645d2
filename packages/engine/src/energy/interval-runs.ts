import type { DayNumber, Period } from '../quantity/index.ts';
import { DAY_MINUTES } from './block-clock.ts';
import { INTERVAL_CHANNELS, type IntervalColumns } from './interval-columns.ts';

const HOUR = 60;
const HALF_HOUR = 30;

/** Rows that follow each other in time, each beginning where the one before ends. */
export interface IntervalRun {
  readonly row: number;
  /** The row after the last. */
  readonly end: number;
  /** The local minute at which the first begins. */
  readonly start: number;
  /** Whether its first hour is the second of the same name: the clocks went back. */
  readonly isSecondPass: boolean;
}

/** A row that is not counted, and why. */
export interface RowFault {
  readonly row: number;
  readonly code: 'energy/interval-repeated' | 'energy/interval-conflict' | 'energy/interval-out-of-order';
}

/** The rows of interval data in order of time. */
export interface IntervalOrder {
  readonly runs: readonly IntervalRun[];
  readonly faults: readonly RowFault[];
}

/** The local minute at which a run ends. */
export function runStop({ row, end, start }: IntervalRun, minutes: number): number {
  return start + (end - row) * minutes;
}

/** The day a minute lies on. */
export function dayOfMinute(minute: number): DayNumber {
  return Math.floor(minute / DAY_MINUTES) as DayNumber;
}

/** Cut the rows wherever one does not begin as the one before ends. */
function followingRuns({ starts, minutes }: IntervalColumns): IntervalRun[] {
  const runs: IntervalRun[] = [];
  let row = 0;
  for (let next = 1; next <= starts.length; next += 1) {
    if (next < starts.length && starts[next] === (starts[next - 1] as number) + minutes) continue;
    runs.push({ row, end: next, start: starts[row] as number, isSecondPass: false });
    row = next;
  }
  return runs;
}

/** The earlier row that begins at the same minute. */
function sameStart(runs: readonly IntervalRun[], start: number, minutes: number): number | null {
  for (let at = runs.length - 1; at >= 0; at -= 1) {
    const run = runs[at] as IntervalRun;
    const from = start - run.start;
    if (from >= 0 && start < runStop(run, minutes) && from % minutes === 0) return run.row + from / minutes;
  }
  return null;
}

function faultOf(row: number, runs: readonly IntervalRun[], columns: IntervalColumns): RowFault {
  const earlier = sameStart(runs, columns.starts[row] as number, columns.minutes);
  if (earlier === null) return { row, code: 'energy/interval-out-of-order' };
  const isSame = INTERVAL_CHANNELS.every((channel) => {
    const column = columns[channel];
    // 0 added turns −0 into 0, and no number is like no number.
    return column === null || Object.is((column[row] as number) + 0, (column[earlier] as number) + 0);
  });
  return { row, code: isSame ? 'energy/interval-repeated' : 'energy/interval-conflict' };
}

/**
 * Whether a run begins exactly one hour back, repeats that whole hour and goes on: what the day the
 * clocks go back looks like. In hourly data one row too many looks the same, so there the day has to be
 * named.
 */
function beginsSecondPass(
  run: IntervalRun,
  runs: readonly IntervalRun[],
  minutes: number,
  changes: ReadonlySet<number>,
): boolean {
  const before = runs.at(-1);
  if (before === undefined) return false;
  const day = dayOfMinute(run.start);
  const stop = runStop(before, minutes);
  const back = stop - run.start;
  // Half an hour is how Lord Howe Island does it: such a day has to be named, as an hour of hourly data has.
  if (back !== HOUR && !(back === HALF_HOUR && changes.has(day))) return false;
  if (stop - before.start < back || runStop(run, minutes) - run.start < back) return false;
  const isFirst = !runs.some((other) => other.isSecondPass && dayOfMinute(other.start) === day);
  return isFirst && (minutes < HOUR || changes.has(day));
}

/**
 * Put the rows of interval data in order: what follows, what is repeated because the clocks went back,
 * and what cannot be counted.
 *
 * @param columns  as read
 * @param changes  the local days on which the clocks are known to change
 */
export function orderIntervals(columns: IntervalColumns, changes: ReadonlySet<number>): IntervalOrder {
  const { minutes } = columns;
  const runs: IntervalRun[] = [];
  const faults: RowFault[] = [];
  for (const run of followingRuns(columns)) {
    const before = runs.at(-1);
    const cursor = before === undefined ? -Infinity : runStop(before, minutes);
    if (run.start >= cursor) runs.push(run);
    else if (beginsSecondPass(run, runs, minutes, changes)) runs.push({ ...run, isSecondPass: true });
    else {
      const rest = Math.min(run.end, run.row + Math.ceil((cursor - run.start) / minutes));
      for (let row = run.row; row < rest; row += 1) faults.push(faultOf(row, runs, columns));
      if (rest < run.end) runs.push({ ...run, row: rest, start: columns.starts[rest] as number });
    }
  }
  return { runs, faults };
}

/** Minutes that no interval covers. */
export interface Gap {
  readonly from: number;
  readonly to: number;
}

function gapsIn(runs: readonly IntervalRun[], { from, to }: Period, minutes: number): readonly Gap[] {
  const gaps: Gap[] = [];
  let cursor = from * DAY_MINUTES;
  const end = to * DAY_MINUTES;
  for (const run of runs) {
    const start = Math.min(run.start, end);
    if (start > cursor) gaps.push({ from: cursor, to: start });
    cursor = Math.max(cursor, runStop(run, minutes));
    if (cursor >= end) return gaps;
  }
  return [...gaps, { from: cursor, to: end }];
}

/** The one missing hour of a day on which the clocks go forward. */
function isClockGap(gap: Gap, gaps: readonly Gap[], forward: ReadonlySet<number>): boolean {
  const day = dayOfMinute(gap.from);
  const [first, end] = [day * DAY_MINUTES, (day + 1) * DAY_MINUTES];
  const isSkip = gap.to - gap.from === HOUR || gap.to - gap.from === HALF_HOUR;
  if (!isSkip || gap.to > end || !forward.has(day)) return false;
  return gaps.every((other) => other === gap || other.to <= first || other.from >= end);
}

/**
 * The stretches of a period that no interval covers, less the hour that the clocks skip on a day named
 * for it.
 *
 * @param order    of the rows
 * @param period   half-open
 * @param minutes  how long every interval is
 * @param changes  the local days on which the clocks are known to change
 */
export function missingIn(
  { runs }: IntervalOrder,
  period: Period,
  minutes: number,
  changes: ReadonlySet<number>,
): readonly Gap[] {
  const gaps = gapsIn(runs, period, minutes);
  if (gaps.length === 0 || changes.size === 0) return gaps;
  const back = new Set<number>(runs.filter((run) => run.isSecondPass).map(({ start }) => dayOfMinute(start)));
  const forward = new Set([...changes].filter((day) => !back.has(day)));
  return gaps.filter((gap) => !isClockGap(gap, gaps, forward));
}
