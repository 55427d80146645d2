import {
  addDays,
  calendarDay,
  dayNumber,
  monthParts,
  parseDay,
  type DayNumber,
  type Finding,
  type Period,
} from './quantity/index.ts';
import { isOpenEnded, type NamedQuantity, type Tariff } from './tariff/index.ts';
import { prepareTariff, type PreparedTariff } from './bill/index.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsMonth } from './keeper.ts';
import { plainHousehold, type PlainHousehold, type PlainUse } from './plain-use.ts';
import { readQuantities } from './read-units.ts';

/** How long a tariff without a last day is billed after its last dated change. */
export const OPEN_MONTHS = 24;
/** The most months of one tariff that are billed. */
export const MOST_MONTHS = 600;

/** A calendar month under a tariff. */
export interface YearMonth {
  readonly period: Period;
  /** null where it could not be billed; the findings say why. */
  readonly month: UnitsMonth | null;
  readonly findings: readonly Finding[];
}

/** A quantity that the tariff needs and nobody gave. */
export interface MissingQuantity extends NamedQuantity {
  readonly name: string;
}

/** The calendar months that a tariff covers. */
export interface CoveredMonths {
  readonly periods: readonly Period[];
  /** The last dated change of a tariff without a last day; null for one that ends. */
  readonly openFrom: DayNumber | null;
  /** Months beyond the most that are billed. */
  readonly left: number;
}

/** A plain household under a tariff, month by month. */
export interface TariffYear extends Omit<CoveredMonths, 'periods'> {
  readonly months: readonly YearMonth[];
  readonly missing: readonly MissingQuantity[];
  /** Years whose holidays the tariff does not list though they would count: taken for weekdays. */
  readonly yearsWithoutHolidays: readonly number[];
  /** About what was given; with any, no month is billed. */
  readonly findings: readonly Finding[];
}

/** The latest day on which something of a tariff begins: a version, a settlement rule, a price. */
function lastChange({ document, versions, settlements }: Tariff): DayNumber {
  const priced = Object.values(document.prices ?? {}).flatMap((price) =>
    price.is === 'series' ? price.values.map(({ from }) => parseDay(from)) : [],
  );
  const begun = [...versions, ...settlements].map(({ period }) => period.from);
  return [...begun, ...priced].reduce<DayNumber>(
    (last, day) => (day !== null && day > last ? day : last),
    versions[0]?.period.from ?? (0 as DayNumber),
  );
}

/** The first day of the month so many months later. */
function monthStart(day: DayNumber, later: number): DayNumber {
  const { year, month } = calendarDay(day);
  const at = year * 12 + month - 1 + later;
  return dayNumber({ year: Math.floor(at / 12), month: (at % 12) + 1, day: 1 });
}

/**
 * The calendar months on any day of which the charges of a tariff are in force; of one without a last day,
 * those through 24 months after its last dated change.
 *
 * @example
 * coveredMonths({ document: {}, versions: [], settlements: [] }).periods //=> []
 */
export function coveredMonths(tariff: Tariff): CoveredMonths {
  const first = tariff.versions[0]?.period;
  const last = tariff.versions.at(-1)?.period;
  if (first === undefined || last === undefined) return { periods: [], openFrom: null, left: 0 };
  const openFrom = isOpenEnded(last) ? lastChange(tariff) : null;
  const to = openFrom === null ? last.to : monthStart(openFrom, OPEN_MONTHS);
  const all = monthParts({ from: first.from, to });
  const periods = all.slice(0, MOST_MONTHS).map(({ year, month, length }): Period => {
    const from = dayNumber({ year, month, day: 1 });
    return { from, to: addDays(from, length) };
  });
  return { periods, openFrom, left: all.length - periods.length };
}

/** Bill months one after the other; after one that cannot be billed, as a new account. */
function billMonths(
  prepared: PreparedTariff,
  { account, periodOf }: PlainHousehold,
  { periods, units }: { readonly periods: readonly Period[]; readonly units: number },
): readonly YearMonth[] {
  const asked = periods.map((period) => periodOf(period, units));
  const months: YearMonth[] = [];
  while (months.length < periods.length) {
    const rest = asked.slice(months.length);
    const since = rest[0]?.from ?? '';
    const input = { account: { ...account, since }, tariff: prepared, periods: rest, withSavings: false };
    const { value, findings } = keepPeriods(input);
    for (const month of value) months.push({ period: month.period, month, findings: [] });
    const stopped = periods[months.length];
    if (stopped !== undefined) months.push({ period: stopped, month: null, findings });
  }
  return months;
}

const ABOUT_MISSING = ['settlement/not-given', 'bill/quantity-unknown'];

/** The quantities that kept months from being billed, each once. */
function missingOf({ quantities }: PreparedTariff, months: readonly YearMonth[]): readonly MissingQuantity[] {
  const findings = months.flatMap((one) => one.findings);
  const names = findings.flatMap(({ code, values }) =>
    ABOUT_MISSING.includes(code) ? (values['quantity'] ?? []) : [],
  );
  return [...new Set(names)].flatMap((name) => {
    const known = quantities.get(name);
    return known === undefined ? [] : [{ name, ...known }];
  });
}

/**
 * Bill a household without a plant for every calendar month that a tariff covers.
 *
 * @param tariff  as read, or already in normal form
 * @param use     the same in every month
 * @returns       every month with its bill or why there is none, and the quantities that are missing
 * @example
 * tariffYear({ document: { settlements: [], rounding: { line: 'none', total: 'none' } }, versions: [], settlements: [] }, { units: 300, quantities: {} }).months //=> []
 */
export function tariffYear(tariff: Tariff | PreparedTariff, use: PlainUse): TariffYear {
  const prepared = 'prepared' in tariff ? tariff : prepareTariff(tariff);
  const { periods, openFrom, left } = coveredMonths(prepared.tariff);
  const reading = { known: prepared.quantities, registers: {} };
  const { findings } = readQuantities(use.quantities, reading, ['quantities']);
  const household = plainHousehold(prepared, use.quantities);
  const months = findings.length > 0 ? [] : billMonths(prepared, household, { periods, units: use.units });
  const [first, last] = [periods[0], periods.at(-1)];
  const span = first === undefined || last === undefined ? null : { from: first.from, to: last.to };
  return {
    months,
    openFrom,
    left,
    missing: missingOf(prepared, months),
    yearsWithoutHolidays: span === null ? [] : (household.clock?.yearsWithoutHolidays(span) ?? []),
    findings,
  };
}
