import {
  addDays,
  addQuotients,
  dayText,
  NumberTooLarge,
  roundLargeQuotient,
  subtractQuotients,
  wholeToDecimal,
  type Figure,
  type Period,
  type Quotient,
} from './quantity/index.ts';
import {
  inForceDuring,
  seasonsOn,
  type SettlementRule,
  type Tariff,
  type TariffVersion,
} from './tariff/index.ts';
import { prepareTariff, shapeOf, type Bill, type PreparedTariff } from './bill/index.ts';
import { keepPeriods } from './keep-periods.ts';
import { plainHousehold, type PlainHousehold, type PlainUse } from './plain-use.ts';
import { unitLimits } from './unit-limits.ts';
import type { YearMonth } from './tariff-year.ts';

/** Units up to which every single one is tried. */
export const SCANNED_UNITS = 2000;
/** Limits beyond this are not tried. */
const MOST_UNITS = 100_000;
/** Units over which the rate of a slab is measured. */
const MEASURED = 10;

/** A month in which the steps of a bill are looked at: of one version, in one season. */
export interface CliffMonth {
  readonly period: Period;
  readonly version: TariffVersion;
  readonly rule: SettlementRule | undefined;
}

/** One unit more that costs many times the rate of its slab. */
export interface Cliff {
  readonly period: Period;
  readonly version: string;
  /** Units of the smaller bill; the other has one more. */
  readonly units: number;
  readonly before: Figure;
  readonly after: Figure;
  /** What the one unit adds to the sum of the lines, before the total is rounded. */
  readonly cost: Quotient;
  /** What each of the units behind it adds: the rate of its slab, with everything that is charged on it. */
  readonly rate: Quotient;
  /** Cost ÷ rate, to one decimal; null where the units behind it cost nothing. */
  readonly multiple: string | null;
}

/** Where in a tariff one more unit costs many times the rate of its slab. */
export interface Cliffs {
  readonly months: readonly CliffMonth[];
  readonly cliffs: readonly Cliff[];
}

/** The months to look at: for each version, settlement rule and set of seasons, the first that lies in them. */
function cliffMonths(
  { document, versions, settlements }: Tariff,
  months: readonly YearMonth[],
): CliffMonth[] {
  const seen = new Set<string>();
  return months.flatMap(({ period, month }) => {
    const inForce = inForceDuring(versions, period);
    const [version] = inForce;
    const rules = inForceDuring(settlements, period);
    const last = addDays(period.to, -1);
    const [seasons, after] = [period.from, last].map((day) =>
      seasonsOn(document.seasons, dayText(day).slice(5)).join(),
    );
    if (month === null || version === undefined || inForce.length > 1 || rules.length > 1) return [];
    if (version.period.from > period.from || seasons !== after) return [];
    const rule = rules[0]?.item;
    const key = [version.item.name, rule?.from, seasons].join('|');
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ period, version: version.item, rule }];
  });
}

/** The bills of one month by its units, each made once; null where there is none. */
function billsOf(prepared: PreparedTariff, household: PlainHousehold, period: Period) {
  const known = new Map<number, Bill | null>();
  return (units: number): Bill | null => {
    const before = known.get(units);
    if (before !== undefined) return before;
    // To a thousandth: in whole units the one more would jump from block to block.
    const asked = household.periodOf(period, units, 'thousandths');
    const account = { ...household.account, since: asked.from };
    const { value } = keepPeriods({ account, tariff: prepared, periods: [asked], withSavings: false });
    const bill = value[0]?.bill ?? null;
    known.set(units, bill);
    return bill;
  };
}

/** Units after which a bill may step: all of the scan, and each limit with its neighbours. */
function unitsToTry(limits: readonly number[], minutes: readonly number[] | null): readonly number[] {
  const total = (minutes ?? []).reduce((sum, one) => sum + one, 0);
  // A limit of one time block is reached by all units of the month together.
  const inBlocks = limits.flatMap((limit) =>
    (minutes ?? []).filter((one) => one > 0).map((one) => Math.ceil((limit * total) / one)),
  );
  const near = [...limits, ...inBlocks].flatMap((limit) => [-2, -1, 0, 1].map((step) => limit + step));
  const scan = Array.from({ length: SCANNED_UNITS }, (_, units) => units);
  const beyond = near.filter((units) => units >= SCANNED_UNITS && units <= MOST_UNITS);
  return [...scan, ...new Set(beyond.sort((a, b) => a - b))];
}

const isAbove = (a: Quotient, b: Quotient): boolean =>
  BigInt(a.numerator) * BigInt(b.denominator) > BigInt(b.numerator) * BigInt(a.denominator);

function multipleText(cost: Quotient, rate: Quotient): string | null {
  if (rate.numerator <= 0) return null;
  const top = 10n * BigInt(cost.numerator) * BigInt(rate.denominator);
  const bottom = BigInt(cost.denominator) * BigInt(rate.numerator);
  return wholeToDecimal(roundLargeQuotient(top, bottom, 'half-up'), 1);
}

interface Looking {
  readonly at: CliffMonth;
  readonly bill: (units: number) => Bill | null;
  readonly limits: readonly number[];
  /** What the rounding of lines alone can add from one bill to the next. */
  readonly slack: Quotient;
  readonly times: Quotient;
}

function cliffAt({ at, bill, limits, slack, times }: Looking, units: number): Cliff | null {
  const next = limits.find((limit) => limit > units + 1) ?? Infinity;
  const count = Math.max(1, Math.min(MEASURED, next - units - 1));
  const [before, after, later] = [bill(units), bill(units + 1), bill(units + 1 + count)];
  if (before === null || after === null || later === null) return null;
  const cost = subtractQuotients(after.sum, before.sum);
  const more = subtractQuotients(later.sum, after.sum);
  const rate = { numerator: more.numerator, denominator: more.denominator * count };
  const many = {
    numerator: BigInt(rate.numerator) * BigInt(times.numerator),
    denominator: rate.denominator * times.denominator,
  };
  if (!isAbove(cost, many) || !isAbove(subtractQuotients(cost, rate), slack)) return null;
  const { period, version } = at;
  const payables = { before: before.payable, after: after.payable };
  return {
    period,
    version: version.name,
    units,
    ...payables,
    cost,
    rate,
    multiple: multipleText(cost, rate),
  };
}

/** The steps to which the lines of a version are rounded, added up. */
function roundingSlack({ document }: Tariff, version: TariffVersion): Quotient {
  const rateOf = () => ({ text: '0', clause: '' });
  const { lines } = shapeOf(version, document, {
    rateOf,
    seasons: new Set(Object.keys(document.seasons ?? {})),
  });
  const steps = lines.flatMap(({ rounding }) => (rounding === null ? [] : [rounding]));
  return addQuotients(steps);
}

function cliffsOf(looking: Looking, units: readonly number[]): readonly Cliff[] {
  return units.flatMap((one) => {
    try {
      return cliffAt(looking, one) ?? [];
    } catch (error) {
      // Sums that no exact number holds: such a bill would not stand either.
      if (error instanceof NumberTooLarge) return [];
      throw error;
    }
  });
}

/**
 * Find the places where one more unit costs many times the rate of its slab, by billing: every unit up to
 * 2,000, and beyond that each limit and its neighbours, each bill as the first of an account, its units spread
 * over time blocks to a thousandth.
 *
 * The rate of a slab is what each of the next ten units adds to the bill, or of fewer up to the next limit. A
 * step that the rounding of lines alone can make is none.
 *
 * @param tariff  as read, or already in normal form
 * @param use     powers and measures of the household; its units are not used
 * @param input   the months of `tariffYear`, and how many times the rate makes a cliff, above 1
 * @returns       the months looked at, one for each version, settlement rule and set of seasons; and the cliffs
 */
export function tariffCliffs(
  tariff: Tariff | PreparedTariff,
  use: Pick<PlainUse, 'quantities'>,
  { months, times }: { readonly months: readonly YearMonth[]; readonly times: Quotient },
): Cliffs {
  const prepared = 'prepared' in tariff ? tariff : prepareTariff(tariff);
  const household = plainHousehold(prepared, use.quantities);
  const looked = cliffMonths(prepared.tariff, months);
  const cliffs = looked.flatMap((at) => {
    const limits = unitLimits(prepared.tariff.document, at.version, at.rule, at.period);
    const slack = roundingSlack(prepared.tariff, at.version);
    const bill = billsOf(prepared, household, at.period);
    const units = unitsToTry(limits, household.blockMinutes(at.period));
    return cliffsOf({ at, bill, limits, slack, times }, units);
  });
  return { months: looked, cliffs };
}
