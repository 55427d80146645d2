import {
  addDays,
  INTERVAL_CHANNELS,
  wholeToDecimal,
  type DayNumber,
  type Finding,
  type IntervalChannel,
  type IntervalColumns,
  type Outcome,
  type Period,
} from '@unitbook/engine';
import type { CollectedFile } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import { columnsLength } from './columns-length.ts';
import { commonRows, type Common } from './common-rows.ts';
import { laneRows, type RowPlan } from './lane-rows.ts';
import { lanesOf, type Lanes } from './lanes.ts';
import { localClock, type LocalClock } from './local-clock.ts';
import { withIntervals } from './register-intervals.ts';
import type { Assign } from './selection.ts';
import { emptyTally, tallyPosition, tallyValues, type Tally } from './tally.ts';
import { dayOfMinute } from './texts.ts';
import { WATT_HOUR_PLACES, wholeWattHours } from './watt-hours.ts';

/** How local values are to be made of a file. */
export interface LocalOptions {
  /** Where the meter is: a name of the IANA list; null where the clock of the file is to stand. */
  readonly zone: string | null;
  /** What each stream is to be counted as; left out: what its own words say. */
  readonly assign?: Assign;
}

/** Interval data as the engine takes it. */
export interface LocalIntervals {
  readonly columns: IntervalColumns;
  /** The local days of the span on which the clocks change. */
  readonly clockChanges: readonly DayNumber[];
  /** From the local day of the first interval to the day after that of the last. */
  readonly span: Period;
}

/** The longest intervals that the engine takes, in minutes. */
const LONGEST = 60;

/** What goes with a finding: so many intervals, of so many minutes. */
function tallied(
  code: 'meter-file/partial' | 'meter-file/too-large' | 'meter-file/incomplete',
  tally: Tally,
  values: Readonly<Record<string, string>>,
): readonly Finding[] {
  if (tally.count === 0) return [];
  const made = collectedFinding(code, { path: [] }, { ...tallyValues(tally), ...values });
  return [{ ...made, ...tallyPosition(tally) }];
}

const lengthsOf = ({ lanes }: Lanes): readonly number[] =>
  [...new Set(lanes.flatMap(({ series }) => series.map(({ minutes }) => minutes)))].sort((a, b) => a - b);

const placesOf = ({ lanes }: Lanes): number =>
  Math.max(WATT_HOUR_PLACES, ...lanes.flatMap(({ series }) => series.map(({ places }) => places)));

/** The rows that all registers have, and what is to be said of the others. */
function rowsOf(lanes: Lanes, minutes: number, clock: LocalClock): { common: Common; findings: Finding[] } {
  const { toLocal } = clock;
  const plan: RowPlan = {
    minutes,
    places: placesOf(lanes),
    toLocal,
    partial: emptyTally(),
    tooLarge: emptyTally(),
  };
  const rows = lanes.lanes.map((lane) => laneRows(lane, plan));
  const common = commonRows(rows, lanes.lanes, plan.tooLarge);
  const length = { minutes: String(minutes) };
  const lengths = lengthsOf(lanes);
  const findings = [
    ...(lengths.every((one) => one === minutes)
      ? []
      : [collectedFinding('meter-file/summed-up', { path: [] }, { ...length, lengths: lengths.join(', ') })]),
    ...tallied('meter-file/partial', plan.partial, length),
    ...tallied('meter-file/too-large', plan.tooLarge, length),
    ...common.lacking.flatMap((tally, index) => {
      const register = lanes.lanes[index]?.name ?? '';
      return tallied('meter-file/incomplete', tally, { ...length, register });
    }),
    ...(common.starts.length > 0 || plan.tooLarge.count > 0
      ? []
      : [collectedFinding('meter-file/no-whole-interval', { path: [] }, length)]),
  ];
  return { common, findings };
}

/** A channel in whole watt-hours, and a note where values are finer. */
function wattHours(
  channel: IntervalChannel,
  values: Float64Array,
  places: number,
): { values: Float64Array; notes: Finding[] } {
  const { values: whole, carried, left } = wholeWattHours(values, places);
  if (carried === 0) return { values: whole, notes: [] };
  const words = {
    channel,
    count: String(carried),
    left: wholeToDecimal(left, places),
    places: String(places),
  };
  return { values: whole, notes: [collectedFinding('meter-file/finer-than-watt-hour', { path: [] }, words)] };
}

function columnsOf(
  lanes: Lanes,
  minutes: IntervalColumns['minutes'],
  clock: LocalClock,
): Outcome<IntervalColumns> {
  const { common, findings } = rowsOf(lanes, minutes, clock);
  const places = placesOf(lanes);
  const channels = INTERVAL_CHANNELS.map((channel) => {
    const values = common.channels.get(channel);
    return values === undefined ? null : wattHours(channel, values, places);
  });
  const [taken = null, given = null, made = null] = channels.map((one) => one?.values ?? null);
  const value: IntervalColumns = {
    starts: common.starts.map(clock.toLocal),
    minutes,
    import: taken,
    export: given,
    generation: made,
  };
  return { value, findings: [...findings, ...channels.flatMap((one) => one?.notes ?? [])] };
}

/**
 * The intervals of a file as the engine takes them: on the local clock, in whole watt-hours, one column for
 * each quantity.
 *
 * Several registers of one quantity are added up, interval by interval. An interval that one register lacks
 * is left out of all columns, and the engine then says that it is missing. Shorter intervals are summed up
 * to the shortest of 5, 15, 30 or 60 minutes that all lengths divide.
 *
 * @param file     collected; of a file of registers alone, what they went on from reading to reading
 * @param options  the zone and what streams are counted as
 * @returns        null where anything is an error
 * @throws RangeError  for a name that is no zone
 */
export function localColumns(file: CollectedFile, options: LocalOptions): Outcome<LocalIntervals | null> {
  const { file: own, told } = withIntervals(file, LONGEST);
  const lanes = lanesOf(own, options.assign);
  const clock = localClock(own.clock, options.zone, lanes.span);
  const findings: Finding[] = [...told, ...lanes.findings];
  const lengths = lengthsOf(lanes);
  const minutes = columnsLength(lengths);
  if (minutes === null) {
    const values = { lengths: lengths.join(', ') };
    findings.push(collectedFinding('meter-file/no-columns', { path: [] }, values));
  }
  const isWrong = (): boolean => findings.some(({ severity }) => severity === 'error');
  if (minutes === null || isWrong()) return { value: null, findings };
  const { value: columns, findings: found } = columnsOf(lanes, minutes, clock);
  findings.push(...clock.findings, ...found);
  if (isWrong()) return { value: null, findings };
  const [first, last] = [columns.starts[0] ?? 0, columns.starts.at(-1) ?? 0];
  const span = { from: dayOfMinute(first), to: addDays(dayOfMinute(last), 1) };
  return { value: { columns, clockChanges: clock.changeDays, span }, findings };
}
