import {
  dayText,
  INTERVAL_CHANNELS,
  type Finding,
  type IntervalChannel,
  type Outcome,
  type Period,
} from '@unitbook/engine';
import type { CollectedFile } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import { decimalText } from './decimal-text.ts';
import { ExactTotal } from './exact-total.ts';
import type { IntervalSeries } from './interval-series.ts';
import { lanesOf, missingOf, type Lane } from './lanes.ts';
import { localClock, type LocalClock } from './local-clock.ts';
import type { LocalOptions } from './local-columns.ts';
import { minutesWithin, type MinuteRange } from './minute-ranges.ts';
import { DAY_MINUTES, minuteText } from './texts.ts';
import { withIntervals } from './register-intervals.ts';

/** The energy of a period in kWh, exact; null for what is not metered, or cannot be told. */
export interface PeriodEnergy extends Readonly<Record<IntervalChannel, string | null>> {
  readonly period: Period;
}

/** What is asked of one register in one period. */
interface Asked {
  readonly lane: Lane;
  readonly period: Period;
  /** The period in minutes of the file. */
  readonly window: MinuteRange;
  readonly clock: LocalClock;
}

/** The first row that begins at a minute or later. */
function rowFrom({ starts }: IntervalSeries, minute: number): number {
  let [low, high] = [0, starts.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((starts[middle] as number) < minute) low = middle + 1;
    else high = middle;
  }
  return low;
}

const periodValues = ({ lane, period }: Asked): Record<'register' | 'channel' | 'from' | 'to', string> => ({
  register: lane.name,
  channel: lane.channel,
  from: dayText(period.from),
  to: dayText(period.to),
});

/** The interval of a series that lies across an edge of a period. */
function straddling(asked: Asked, series: IntervalSeries, edge: number): readonly Finding[] {
  const row = rowFrom(series, edge) - 1;
  const start = series.starts[row];
  if (start === undefined || start + series.minutes <= edge || Number.isNaN(series.values[row])) return [];
  const values = {
    ...periodValues(asked),
    minutes: String(series.minutes),
    start: minuteText(asked.clock.toLocal(start)),
    edge: minuteText(asked.clock.toLocal(edge)),
  };
  const finding = collectedFinding('meter-file/straddles', { path: [] }, values);
  return [{ ...finding, position: { line: series.lines[row] ?? 1, column: 1 } }];
}

/** What a register lacks of a period. */
function missing(asked: Asked): readonly Finding[] {
  const { lane, window, clock } = asked;
  const gaps = missingOf(lane, window);
  const [first, last] = [gaps[0], gaps.at(-1)];
  if (first === undefined || last === undefined) return [];
  const minutes = Math.min(...lane.series.map((series) => series.minutes));
  const values = {
    ...periodValues(asked),
    minutes: String(minutes),
    count: String(gaps.reduce((sum, { from, to }) => sum + Math.ceil((to - from) / minutes), 0)),
    first: minuteText(clock.toLocal(first.from)),
    last: minuteText(clock.toLocal(Math.max(last.from, last.to - minutes))),
  };
  return [collectedFinding('meter-file/period-incomplete', { path: [] }, values)];
}

/** What one register comes to in a period: its findings, and its values added to a total. */
function addLane(asked: Asked, total: ExactTotal): readonly Finding[] {
  const { lane, window } = asked;
  const straddles = lane.series.flatMap((series) => {
    const [from, end] = [rowFrom(series, window.from), rowFrom(series, window.to)];
    total.add(series.values, series.places, from, end);
    return [...straddling(asked, series, window.from), ...straddling(asked, series, window.to)];
  });
  return [...straddles, ...missing(asked)];
}

/** One quantity in one period. */
function channelIn(
  lanes: readonly Lane[],
  period: Period,
  clock: LocalClock,
): { energy: string | null; findings: readonly Finding[] } {
  const window = { from: clock.dayStart(period.from), to: clock.dayStart(period.to) };
  const total = new ExactTotal();
  const findings = lanes.flatMap((lane) => addLane({ lane, period, window, clock }, total));
  const hasValues = lanes.some(({ covered }) => minutesWithin(covered, window) > 0);
  const isWrong = findings.some(({ severity }) => severity === 'error');
  return { energy: hasValues && !isWrong ? decimalText(total.total()) : null, findings };
}

function checkPeriods(periods: readonly Period[]): void {
  periods.forEach((period, at) => {
    const before = periods[at - 1];
    if (period.to <= period.from || (before !== undefined && before.to > period.from))
      throw new RangeError('periods have to be in order of time, none over another, and none empty');
  });
}

/**
 * The energy of billing periods, from intervals of any length, exactly.
 *
 * Several registers of one quantity are added up. What is missing is a question, and is in no sum; an
 * interval that lies across the edge of a period is an error, and the quantity is then null.
 *
 * @param file     collected; of a file of registers alone, what they went on from reading to reading
 * @param periods  half-open, in local days, in order of time, none over another
 * @param options  the zone and what streams are counted as
 * @returns        one for each period; none where no stream can be counted
 * @throws RangeError  for a name that is no zone, and for periods in disorder
 */
export function energyInPeriods(
  file: CollectedFile,
  periods: readonly Period[],
  options: LocalOptions,
): Outcome<readonly PeriodEnergy[]> {
  checkPeriods(periods);
  const { file: own, told } = withIntervals(file);
  const { lanes, span, findings: found } = lanesOf(own, options.assign);
  const clock = localClock(own.clock, options.zone, withPeriods(span, periods));
  const said = [...told, ...found];
  if (said.some(({ severity }) => severity === 'error')) return { value: [], findings: said };
  const findings = [...said, ...clock.findings];
  const value = periods.map((period) => {
    const channels = INTERVAL_CHANNELS.map((channel) =>
      channelIn(
        lanes.filter((lane) => lane.channel === channel),
        period,
        clock,
      ),
    );
    findings.push(...channels.flatMap((one) => one.findings));
    const [taken = null, given = null, made = null] = channels.map(({ energy }) => energy);
    return { period, import: taken, export: given, generation: made };
  });
  return { value, findings };
}

/** A span that has all periods in it, too. */
function withPeriods(span: MinuteRange, periods: readonly Period[]): MinuteRange {
  const [first, last] = [periods[0], periods.at(-1)];
  if (first === undefined || last === undefined) return span;
  return {
    from: Math.min(span.from, first.from * DAY_MINUTES),
    to: Math.max(span.to, last.to * DAY_MINUTES),
  };
}
