import {
  calendarDay,
  daysInMonth,
  givenFigure,
  MONTH_NAMES,
  type Figure,
  type FigureUnit,
  type Period,
} from '../../quantity/index.ts';
import type { Expected, Plant } from './plant.ts';
import type { CapacityPart } from './service-days.ts';
import { arithmetic, productFigure, sumFigure } from './exact-figures.ts';

/** Days in service of one calendar month, with one capacity. */
interface MonthDays {
  readonly year: number;
  readonly month: number;
  readonly watts: number;
  readonly days: number;
}

function monthDays(parts: readonly CapacityPart[]): readonly MonthDays[] {
  const found: { year: number; month: number; watts: number; days: number }[] = [];
  for (const { watts, inService } of parts) {
    for (const day of inService) {
      const { year, month } = calendarDay(day);
      const last = found.at(-1);
      if (last?.watts === watts && last.month === month && last.year === year) last.days += 1;
      else found.push({ year, month, watts, days: 1 });
    }
  }
  return found;
}

const given = (id: string, label: string, unit: FigureUnit, value: readonly [number, number]): Figure =>
  givenFigure({ id, label, unit, numerator: value[0], denominator: value[1], clause: 'plant' });

/** The days of a month that count, as a part of the month. */
function shareOfMonth({ year, month, days }: MonthDays): Figure {
  const length = daysInMonth(year, month);
  return arithmetic({
    id: 'share-of-month',
    label: 'Days that count over days of the month',
    unit: 'ratio',
    numerator: days,
    denominator: length,
    operation: 'quotient',
    inputs: [
      given('days', 'Days', 'day', [days, 1]),
      given('month-days', 'Days of the month', 'day', [length, 1]),
    ],
  });
}

const capacityOf = (watts: number): Figure =>
  given('plant-capacity', 'Plant capacity in kWp', 'kW', [watts, 1000]);

/** How many times the capacity that was quoted for there is. */
function capacityRatio(watts: number, quoted: number): Figure {
  return arithmetic({
    id: 'capacity-ratio',
    label: 'Capacity over the capacity quoted for',
    unit: 'ratio',
    numerator: watts,
    denominator: quoted,
    operation: 'quotient',
    inputs: [
      capacityOf(watts),
      given('quoted-capacity', 'Capacity quoted for, in kWp', 'kW', [quoted, 1000]),
    ],
  });
}

function quotedInputs(days: MonthDays, expected: Expected & { kind: 'monthly' }, quoted: number): Figure[] {
  const { month, watts } = days;
  const name = MONTH_NAMES[month - 1] ?? '';
  const table = given('quoted-month', `Quoted for ${name}`, 'kWh', [
    expected.wattHours[month - 1] ?? 0,
    1000,
  ]);
  const scaled = watts === quoted ? [] : [capacityRatio(watts, quoted)];
  return [table, shareOfMonth(days), ...scaled];
}

function sunInputs(days: MonthDays, expected: Expected & { kind: 'irradiation' }): Figure[] {
  const { per, wattHours, performanceRatio, source } = expected;
  const sun = givenFigure({
    id: 'irradiation',
    label: `Irradiation in ${MONTH_NAMES[days.month - 1] ?? ''} in kWh per m² and ${per}`,
    unit: 'count',
    numerator: wattHours[days.month - 1] ?? 0,
    denominator: 1000,
    clause: source,
  });
  const span = per === 'day' ? given('days', 'Days', 'day', [days.days, 1]) : shareOfMonth(days);
  const { numerator, denominator } = performanceRatio;
  const ratio = given('performance-ratio', 'Performance ratio', 'ratio', [numerator as number, denominator]);
  return [sun, span, capacityOf(days.watts), ratio];
}

/**
 * What the plant should have made in a period by its table, month by month in proportion to the days in
 * service, and to the capacity where it was changed.
 *
 * @param plant  with a table
 * @param parts  the capacity of the period's days
 * @returns      in kWh, exact; null without a table, or where it cannot be held
 */
export function tableExpectation(plant: Plant, parts: readonly CapacityPart[]): Figure | null {
  const { expected, capacities } = plant;
  if (expected === null || expected.kind === 'last-years') return null;
  const quoted = capacities[0]?.watts ?? 0;
  const months = monthDays(parts).map((days) =>
    productFigure(
      {
        id: 'expected-month',
        label: `Expected of ${String(days.days)} days of ${MONTH_NAMES[days.month - 1] ?? ''}`,
        unit: 'kWh',
      },
      expected.kind === 'monthly' ? quotedInputs(days, expected, quoted) : sunInputs(days, expected),
    ),
  );
  const known = months.filter((month) => month !== null);
  return known.length < months.length
    ? null
    : sumFigure({ id: 'expected', label: 'Units expected', unit: 'kWh' }, known);
}

/** In words what an expectation rests on. */
export function basisWords({ expected }: Plant, period: Period, years: readonly number[]): string {
  if (expected?.kind === 'monthly') return 'the monthly table of the quote, by days of each month';
  if (expected?.kind === 'irradiation')
    return `irradiation by month times the performance ratio, by days of each month (${expected.source})`;
  const { year } = calendarDay(period.from);
  return `the same days of ${years.map((back) => String(year - back)).join(', ')}, by capacity`;
}
