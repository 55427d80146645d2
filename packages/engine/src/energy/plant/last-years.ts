import {
  calendarDay,
  dayNumber,
  daysInMonth,
  givenFigure,
  type DayNumber,
  type Figure,
  type Period,
} from '../../quantity/index.ts';
import { arithmetic, over, productFigure, sumFigure } from './exact-figures.ts';
import type { Plant } from './plant.ts';
import { capacityParts, type CapacityPart } from './service-days.ts';
import { daysFigure, meanCapacity } from './yield-figures.ts';

/** What a plant made in a period. */
export interface GenerationPeriod {
  readonly period: Period;
  /** Whole watt-hours. */
  readonly wattHours: number;
  /** Whether a reading at either end was estimated. */
  readonly isEstimated?: boolean;
  /** Irradiation in the plane of the modules over the whole period, in whole Wh per m². */
  readonly irradiation?: number;
}

/** What a plant made on a day; null where that is not known. */
export interface GenerationDay {
  readonly day: DayNumber;
  /** Whole watt-hours. */
  readonly wattHours: number | null;
}

/** What is known of earlier years. */
export interface History {
  readonly periods: readonly GenerationPeriod[];
  readonly days: ReadonlyMap<DayNumber, number>;
}

/** Days beyond which a period overlaps the same days of the year before. */
const LONGEST = 365;
/** The most years gone back. */
const MOST_YEARS = 10;

/**
 * The same day of the calendar some years before; of 29 February, 1 March where there is none.
 *
 * @example
 * yearsBefore(parseDay('2024-02-29'), 1) === parseDay('2023-03-01') //=> true
 */
export function yearsBefore(day: DayNumber, years: number): DayNumber {
  const { year, month, day: of } = calendarDay(day);
  const then = year - years;
  return of > daysInMonth(then, month)
    ? dayNumber({ year: then, month: month + 1, day: 1 })
    : dayNumber({ year: then, month, day: of });
}

/** The energy of some days as a figure, where every day is known. */
function fromDays(inService: readonly DayNumber[], history: History): Figure | null {
  let sum = 0;
  for (const day of inService) {
    const wattHours = history.days.get(day);
    if (wattHours === undefined) return null;
    sum += wattHours;
  }
  return givenFigure({
    id: 'earlier-generation',
    label: 'Units made on the same days of an earlier year',
    unit: 'kWh',
    numerator: sum,
    denominator: 1000,
    clause: 'generation',
  });
}

/** How many days in service two spans have in common. */
function commonDays({ from, to }: Period, inService: readonly DayNumber[]): number {
  return inService.filter((day) => from <= day && day < to).length;
}

/** The part of an earlier period's energy that fell on some days: each day in service made as much. */
function periodPart(one: GenerationPeriod, plant: Plant, days: number): Figure | null {
  const all = capacityParts(one.period, plant).reduce((sum, part) => sum + part.inService.length, 0);
  const whole = givenFigure({
    id: 'earlier-period',
    label: 'Units made in an earlier period',
    unit: 'kWh',
    numerator: one.wattHours,
    denominator: 1000,
    clause: 'generation',
  });
  const share = arithmetic({
    id: 'share-of-period',
    label: 'Its days in service that count',
    unit: 'ratio',
    numerator: days,
    denominator: all,
    operation: 'quotient',
    inputs: [daysFigure(days), daysFigure(all, 'period-days', 'Days of the period in service')],
  });
  return productFigure({ id: 'earlier-part', label: 'Part of an earlier period', unit: 'kWh' }, [
    whole,
    share,
  ]);
}

/** The energy of some days from periods, where they cover every day once and none was estimated. */
function fromPeriods(inService: readonly DayNumber[], history: History, plant: Plant): Figure | null {
  const parts: (Figure | null)[] = [];
  let covered = 0;
  for (const one of history.periods) {
    const days = commonDays(one.period, inService);
    if (days === 0) continue;
    if (one.isEstimated === true) return null;
    covered += days;
    parts.push(periodPart(one, plant, days));
  }
  const known = parts.filter((part) => part !== null);
  if (covered !== inService.length || known.length < parts.length) return null;
  const words = {
    id: 'earlier-generation',
    label: 'Units made on the same days of an earlier year',
    unit: 'kWh',
  };
  return sumFigure({ ...words, unit: 'kWh' }, known);
}

/** Units per kWp and day on the same days some years before; null where they are not all known. */
function earlierYield(period: Period, years: number, history: History, plant: Plant): Figure | null {
  const then = { from: yearsBefore(period.from, years), to: yearsBefore(period.to, years) };
  const parts = capacityParts(then, plant);
  const inService = parts.flatMap((part) => part.inService);
  const days = parts.reduce((sum, part) => sum + part.days, 0);
  if (inService.length === 0 || days < then.to - then.from) return null;
  const made = fromDays(inService, history) ?? fromPeriods(inService, history, plant);
  if (made === null) return null;
  const capacity = meanCapacity(parts, (part) => part.inService.length);
  const words = {
    id: 'earlier-yield',
    label: `Units per kWp and day, ${String(calendarDay(then.from).year)}`,
    unit: 'kWh/kWp/day',
  } as const;
  return over(words, made, [capacity, daysFigure(inService.length)]);
}

/** An expectation by earlier years, and how many years before each of them was. */
export interface EarlierExpectation {
  readonly figure: Figure;
  readonly years: readonly number[];
}

/**
 * What the plant should have made by the same days of earlier years: the mean of their yields per kWp and
 * day, times the capacity and the days in service now.
 *
 * @returns null without one whole earlier year for these days
 */
export function earlierExpectation(
  period: Period,
  parts: readonly CapacityPart[],
  history: History,
  plant: Plant,
): EarlierExpectation | null {
  // A long period reaches back into its own year: it is no measure of itself.
  const before = {
    periods: history.periods.filter((one) => one.period.to <= period.from),
    days: period.to - period.from > LONGEST ? new Map<DayNumber, number>() : history.days,
  };
  const found: { years: number; daily: Figure }[] = [];
  for (let years = 1; years <= MOST_YEARS; years += 1) {
    const daily = earlierYield(period, years, before, plant);
    if (daily !== null) found.push({ years, daily });
  }
  const running = parts.reduce((sum, part) => sum + part.inService.length, 0);
  if (found.length === 0 || running === 0) return null;
  const daily = { id: 'mean-yield', label: 'Mean of earlier years', unit: 'kWh/kWp/day' } as const;
  const yields = found.map((one) => one.daily);
  const sum = sumFigure({ ...daily, id: 'sum-of-yields', label: 'Sum of earlier years' }, yields);
  const count = givenFigure({
    id: 'years',
    label: 'Earlier years',
    unit: 'count',
    numerator: found.length,
    denominator: 1,
    clause: '',
  });
  const mean = sum === null ? null : over(daily, sum, [count]);
  if (mean === null) return null;
  const capacity = meanCapacity(parts, (part) => part.inService.length);
  const words = { id: 'expected', label: 'Units expected', unit: 'kWh' } as const;
  const figure = productFigure(words, [
    mean,
    capacity,
    daysFigure(running, 'days-in-service', 'Days in service'),
  ]);
  return figure === null ? null : { figure, years: found.map((one) => one.years) };
}
