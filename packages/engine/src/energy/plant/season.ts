import {
  calendarDay,
  dayNumber,
  roundLargeQuotient,
  roundQuotient,
  type DayNumber,
} from '../../quantity/index.ts';
import { yearsBefore } from './last-years.ts';
import type { Expected, Plant } from './plant.ts';
import type { SeriesDay } from './day-series.ts';

/** A day that can be compared: what it made, by the season and by capacity. */
export interface LevelDay {
  readonly day: DayNumber;
  readonly wattHours: number;
  /** Hundredths of a percent of what the season gives, rounded half-up. */
  readonly index: number;
  /** Ten-thousandths of a kWh per kWp, rounded half-up. */
  readonly perPeak: number;
  /** Hundredths of a percent of the bright days a year before, rounded half-up; null where they are not known. */
  readonly ofLastYear: number | null;
}

/** What days are compared with, and the days that can be. */
export interface Levels {
  readonly by: 'table' | 'last-year';
  readonly days: readonly LevelDay[];
}

/** Where a season has less than a twentieth of its best month, days are not compared. */
const LEAST_OF_BEST = 20;
/** 100 % in hundredths of a percent, for milliwatt-hours over watt-hours. */
const WHOLE = 10_000;
const MILLI = 1000;
/** No day that can be is so far above its season; beyond, sums would not stay exact. */
const MOST_INDEX = 60_000;

/** Lengths of the months, February's of a common year. */
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

type Table = Exclude<Expected, { kind: 'last-years' }>;

/** A whole number times another over a third, rounded half-up. */
function scaled(value: number, by: number, over: number): number {
  const whole = roundLargeQuotient(BigInt(value) * BigInt(by), BigInt(over), 'half-up');
  return Number.parseInt(whole.toString(), 10);
}

/** Milliwatt-hours a day in the middle of each month, for a plant of so many watts. */
function middles(expected: Table, quoted: number, watts: number): readonly number[] {
  return LENGTHS.map((length, month) => {
    const value = expected.wattHours[month] ?? 0;
    if (expected.kind === 'monthly') return scaled(value * MILLI, watts, length * quoted);
    // Wh per m² over 1 kW per m² are thousandths of an hour of full sun.
    const { numerator, denominator } = expected.performanceRatio;
    const days = expected.per === 'day' ? 1 : length;
    return scaled(value * (numerator as number), watts, denominator * days);
  });
}

/** The middle of a month: its 15th. */
const middleOf = (year: number, month: number): DayNumber =>
  dayNumber({ year: year + Math.floor(month / 12), month: (((month % 12) + 12) % 12) + 1, day: 15 });

/** What a table gives on a day: on the straight line between the middles of two months. */
function onLine(day: DayNumber, table: readonly number[]): number {
  const { year, month, day: of } = calendarDay(day);
  const from = of >= 15 ? month - 1 : month - 2;
  const [start, end] = [middleOf(year, from), middleOf(year, from + 1)];
  const [low = 0, high = 0] = [table[(from + 12) % 12], table[(from + 13) % 12]];
  return roundQuotient(low * (end - day) + high * (day - start), end - start, 'half-up');
}

function tableReference(plant: Plant, expected: Table): (one: SeriesDay) => number | null {
  const quoted = plant.capacities[0]?.watts ?? 1;
  const tables = new Map<number, readonly number[]>();
  return ({ day, watts }) => {
    const table = tables.get(watts) ?? middles(expected, quoted, watts);
    tables.set(watts, table);
    const value = onLine(day, table);
    return value * LEAST_OF_BEST < Math.max(...table) || value === 0 ? null : value;
  };
}

/** Days on either side of the same day last year that tell its season, and how many of them have to be known. */
const REACH = 22;
const LEAST_KNOWN = 33;

/** The value that a quarter of some values reach: the bright days. */
export function brightLevel(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.floor((sorted.length * 3) / 4)] ?? 0;
}

/** What the bright days around the same day of the year before made, for the capacity now. */
function lastYearReference(
  series: readonly (SeriesDay | null)[],
  first: DayNumber,
): (one: SeriesDay) => number | null {
  return ({ day, watts }) => {
    const place = yearsBefore(day, 1) - first;
    const near = series.slice(Math.max(0, place - REACH), Math.max(0, place + REACH + 1));
    const known = near.flatMap((one) =>
      one?.wattHours == null
        ? []
        : [one.watts === watts ? one.wattHours * MILLI : scaled(one.wattHours * MILLI, watts, one.watts)],
    );
    const value = known.length < LEAST_KNOWN ? 0 : brightLevel(known);
    return value === 0 ? null : value;
  };
}

/**
 * Set days against their season: against the plant's table where there is one, else against the bright days
 * around the same day of the year before.
 *
 * @param series  every day in a row
 * @param unfit   places of days that are no measure of the plant
 * @returns       null where nothing tells the season of any day
 */
export function levelsOf(
  series: readonly SeriesDay[],
  unfit: ReadonlySet<number>,
  plant: Plant,
): Levels | null {
  const fit = series.map((one, place) =>
    one.wattHours === null || one.isOutage || unfit.has(place) ? null : one,
  );
  const { expected } = plant;
  const isTable = expected !== null && expected.kind !== 'last-years';
  const first = series[0]?.day;
  if (first === undefined) return null;
  const before = lastYearReference(fit, first);
  const reference = isTable ? tableReference(plant, expected) : before;
  const days = fit.flatMap((one) => (one === null ? [] : levelDay(one, reference(one), before(one))));
  return days.length === 0 ? null : { by: isTable ? 'table' : 'last-year', days };
}

/** Hundredths of a percent of a reference, rounded half-up. */
const indexOf = (wattHours: number, reference: number): number =>
  Math.min(roundQuotient(wattHours * MILLI * WHOLE, reference, 'half-up'), MOST_INDEX);

function levelDay(one: SeriesDay, reference: number | null, before: number | null): LevelDay[] {
  const { day, watts, wattHours } = one;
  if (reference === null || wattHours === null) return [];
  const perPeak = roundQuotient(wattHours * WHOLE, watts, 'half-up');
  const ofLastYear = before === null ? null : indexOf(wattHours, before);
  return [{ day, wattHours, index: indexOf(wattHours, reference), perPeak, ofLastYear }];
}
