import {
  addDays,
  INTERVAL_CHANNELS,
  LARGEST_WHOLE,
  type DayNumber,
  type Finding,
  type IntervalChannel,
  type Outcome,
} from '@unitbook/engine';
import type { CollectedFile } from './collect.ts';
import { collectedFinding } from './collected-findings.ts';
import type { IntervalSeries } from './interval-series.ts';
import { lanesOf, type Lane } from './lanes.ts';
import { localClock, type LocalClock } from './local-clock.ts';
import type { LocalOptions } from './local-columns.ts';
import { minutesWithin } from './minute-ranges.ts';
import { withIntervals } from './register-intervals.ts';
import { emptyTally, addToTally, tallyPosition, tallyValues, type Tally } from './tally.ts';
import { dayOfMinute } from './texts.ts';

/** What a quantity comes to on each day; null where it is not metered. */
export interface DayChannel {
  /** Whole numbers of 10^-places kWh; null for a day without any value. */
  readonly energy: readonly (number | null)[];
  /** How many minutes of each day all of its registers have values for. */
  readonly minutes: readonly number[];
}

/** The energy of local days. */
export interface DayEnergy extends Readonly<Record<IntervalChannel, DayChannel | null>> {
  /** Every local day from the first with a value to the last, but those that the calendar leaves out. */
  readonly days: readonly DayNumber[];
  /** Decimal places of a kWh. */
  readonly places: number;
  /** Whether every quantity has values for all minutes of the day, and no interval lies in two days. */
  readonly isWhole: readonly boolean[];
}

/** Days one after another, and where each begins in minutes of the file; one more start for the end. */
interface Calendar {
  readonly days: readonly DayNumber[];
  readonly starts: readonly number[];
}

/** What is summed up, and what was met on the way. */
interface Summing {
  readonly calendar: Calendar;
  readonly places: number;
  /** The days on which an interval begins or ends that lies in two. */
  readonly shared: Set<number>;
  readonly across: Tally;
  readonly tooLarge: Tally;
}

function calendarOf(clock: LocalClock, first: DayNumber, last: DayNumber): Calendar {
  const all = Array.from({ length: last - first + 1 }, (_, index) => addDays(first, index));
  // A day that the calendar of the zone leaves out has no minutes.
  const days = all.filter((day) => clock.dayLength(day) > 0);
  return { days, starts: [...days, addDays(last, 1)].map(clock.dayStart) };
}

/** Add a series to the sums of the days; NaN stands for a day without a value. */
function addSeries(series: IntervalSeries, sums: Float64Array, summing: Summing): void {
  const { starts, values, minutes, lines } = series;
  const { calendar, places, shared, across, tooLarge } = summing;
  const factor = 10 ** (places - series.places);
  let day = 0;
  starts.forEach((start, row) => {
    const value = values[row] as number;
    if (Number.isNaN(value)) return;
    while (start >= (calendar.starts[day + 1] as number)) day += 1;
    if (start + minutes > (calendar.starts[day + 1] as number)) {
      addToTally(across, start, lines[row]);
      shared.add(day);
      shared.add(day + 1);
    }
    const before = sums[day] as number;
    const sum = (Number.isNaN(before) ? 0 : before) + value * factor;
    if (Math.abs(sum) > LARGEST_WHOLE) addToTally(tooLarge, start, lines[row]);
    else sums[day] = sum;
  });
}

function channelOf(lanes: readonly Lane[], summing: Summing): DayChannel | null {
  if (lanes.length === 0) return null;
  const { days, starts } = summing.calendar;
  const sums = new Float64Array(days.length).fill(NaN);
  for (const lane of lanes) for (const series of lane.series) addSeries(series, sums, summing);
  const minutes = days.map((_, index) => {
    const window = { from: starts[index] as number, to: starts[index + 1] as number };
    return Math.min(...lanes.map(({ covered }) => minutesWithin(covered, window)));
  });
  return { energy: Array.from(sums, (sum) => (Number.isNaN(sum) ? null : sum)), minutes };
}

function tallyFindings({ across, tooLarge }: Summing): readonly Finding[] {
  const told = [
    ['meter-file/across-days', across],
    ['meter-file/day-too-large', tooLarge],
  ] as const;
  return told
    .filter(([, { count }]) => count > 0)
    .map(([code, tally]) => ({
      ...collectedFinding(code, { path: [] }, tallyValues(tally)),
      ...tallyPosition(tally),
    }));
}

/**
 * The energy of local days, from intervals of any length.
 *
 * An interval counts on the day on which it begins. What a day has is summed up even where some of it is
 * missing: `minutes` says how much is there. Several registers of one quantity are added up.
 *
 * @param file     collected; of a file of registers alone, what they went on from reading to reading
 * @param options  the zone and what streams are counted as
 * @returns        null where anything is an error
 * @throws RangeError  for a name that is no zone
 */
export function energyByDay(file: CollectedFile, options: LocalOptions): Outcome<DayEnergy | null> {
  const { file: own, told } = withIntervals(file);
  const { lanes, span, findings: found } = lanesOf(own, options.assign);
  const clock = localClock(own.clock, options.zone, span);
  const said = [...told, ...found];
  const isWrong = (all: readonly Finding[]): boolean => all.some(({ severity }) => severity === 'error');
  if (isWrong(said)) return { value: null, findings: said };
  const [first, last] = [dayOfMinute(clock.toLocal(span.from)), dayOfMinute(clock.toLocal(span.to - 1))];
  const summing: Summing = {
    calendar: calendarOf(clock, first, last),
    places: Math.max(0, ...lanes.flatMap(({ series }) => series.map(({ places }) => places))),
    shared: new Set(),
    across: emptyTally(),
    tooLarge: emptyTally(),
  };
  const channels = INTERVAL_CHANNELS.map((channel) =>
    channelOf(
      lanes.filter((lane) => lane.channel === channel),
      summing,
    ),
  );
  const findings = [...said, ...clock.findings, ...tallyFindings(summing)];
  if (isWrong(findings)) return { value: null, findings };
  const { days } = summing.calendar;
  const isWhole = days.map((day, index) => {
    const length = clock.dayLength(day);
    return (
      !summing.shared.has(index) && channels.every((one) => one === null || one.minutes[index] === length)
    );
  });
  const [taken = null, given = null, made = null] = channels;
  const value = {
    days,
    places: summing.places,
    isWhole,
    import: taken,
    export: given,
    generation: made,
  };
  return { value, findings };
}
