import { commonMultiple, dayText, type Finding, type Period } from './quantity/index.ts';
import { readTariff, type Tariff } from './tariff/index.ts';
import { prepareTariff, type ExactFactor } from './bill/index.ts';
import { amountsOf, type Amounts } from './bill-amounts.ts';
import type { AmountsResult } from './amounts-run.ts';
import type { Raises } from './amounts-raises.ts';
import {
  lifePeriods,
  UNIT_COLUMNS,
  type LifeUnits,
  type QuoteInput,
  type YearFactors,
} from './quote/index.ts';

/** Money of every month of a life, in whole 1/grid. */
export interface LifeBills {
  readonly grid: number;
  /** Bills without the plant. */
  readonly before: Float64Array;
  /** Bills with it, before any surplus they pay out. */
  readonly after: Float64Array;
  /** Surplus of the settlements of each month, whichever bill pays it. */
  readonly surplus: Float64Array;
  /** Units banked after each month. */
  readonly bank: Float64Array;
}

/** Bills the months of a life, with and without the plant, again and again. */
export interface LifeBiller {
  readonly bills: LifeBills;
  readonly periods: readonly Period[];
  /**
   * @param units   of every month
   * @param raises  how far rates have risen; null: not at all
   * @param what    `with`: only the bills with the plant, those without stay as they are
   * @returns       findings; with any, the bills are of no use
   */
  readonly run: (units: LifeUnits, raises: Raises | null, what: 'both' | 'with') => readonly Finding[];
}

/** The year of each month of a life, from 0 on. */
const monthRows = (years: number): Int32Array =>
  Int32Array.from({ length: years * 12 }, (_, at) => Math.floor(at / 12));

/**
 * Factors of charges by year.
 *
 * @param rows  the year of each period, from 0 on; left out: twelve months a year
 */
export function raisesOf(
  factors: readonly YearFactors[],
  years: number,
  rows: Int32Array = monthRows(years),
): Raises | null {
  if (factors.length === 0) return null;
  const table = new Float64Array(years * factors.length);
  factors.forEach(({ doubles }, column) => {
    for (let year = 0; year < years; year += 1)
      table[year * factors.length + column] = doubles[year] as number;
  });
  const exact = (row: number, column: number): ExactFactor =>
    factors[column]?.exact[row] ?? { numerator: 1n, denominator: 1n };
  return { rows, columns: factors.length, factors: table, exact };
}

type Document = Tariff['document'];

function openEnded<Dated extends { readonly through?: string | undefined }>(
  dated: readonly Dated[],
): Dated[] {
  return dated.map((one, at) => (at === dated.length - 1 ? { ...one, through: undefined } : one));
}

/** A tariff as a life is billed by it: what is in force at its end goes on, bills are rounded as the quote says. */
export function lifeTariff(
  { document, versions, settlements }: Tariff,
  payable: QuoteInput['document']['payable'],
  change: (document: Document) => Document = (same) => same,
): ReturnType<typeof readTariff> {
  const { rounding } = document;
  const life = {
    ...document,
    rounding: payable === 'as-billed' ? rounding : { ...rounding, total: 'none' as const },
    versions: openEnded(versions.map(({ item }) => item)),
    settlements: openEnded(settlements.map(({ item }) => item)),
  };
  return readTariff(JSON.stringify(change(life)));
}

function resultsInto(
  bills: LifeBills,
  { payables, payableGrids, dues, payouts, payoutGrid }: AmountsResult,
  what: 'before' | 'after',
): void {
  const { grid, after, before, surplus } = bills;
  for (let at = 0; at < payables.length; at += 1) {
    const payable = (payables[at] as number) * (grid / (payableGrids[at] as number));
    if (what === 'before') before[at] = payable;
    else {
      after[at] = payable - (dues[at] as number) * (grid / payoutGrid);
      surplus[at] = 0 - (payouts[at] as number) * (grid / payoutGrid);
    }
  }
}

/**
 * Prepare the bills of a life.
 *
 * @param tariff  of the life
 * @param raised  charges whose rates rise
 */
export function lifeBiller(
  tariff: Tariff,
  input: Pick<QuoteInput, 'start' | 'years'> & {
    readonly quantities: Readonly<Record<string, string>>;
    /** Left out: the calendar months of the life. */
    readonly periods?: readonly Period[];
  },
  raised: readonly string[],
): LifeBiller {
  const prepared = prepareTariff(tariff);
  const periods = input.periods ?? lifePeriods(input);
  const since = dayText(input.start);
  const base = { periods, names: UNIT_COLUMNS, raised };
  const both = {
    with: amountsOf(prepared, { ...base, account: { since, quantities: input.quantities } }),
    without: amountsOf(prepared, {
      ...base,
      account: { since, settlementDay: '01-01', quantities: input.quantities },
    }),
  };
  const results = { with: both.with.makeResult(), without: both.without.makeResult() };
  return makeBiller(both, results, periods);
}

function makeBiller(
  both: { readonly with: Amounts; readonly without: Amounts },
  results: { readonly with: AmountsResult; readonly without: AmountsResult },
  periods: readonly Period[],
): LifeBiller {
  const room = () => new Float64Array(periods.length);
  let bills: LifeBills | null = null;
  const own = (): LifeBills => {
    const { payableGrids, payoutGrid } = results.with;
    const grid = [payoutGrid, results.without.payableGrids[0] ?? 1].reduce(
      commonMultiple,
      payableGrids[0] ?? 1,
    );
    bills ??= { grid, before: room(), after: room(), surplus: room(), bank: room() };
    return bills;
  };
  return {
    periods,
    get bills() {
      return own();
    },
    run: (units, raises, what) => {
      const findings = [
        ...both.with.run(units.withPlant, results.with, raises ?? undefined),
        ...(what === 'with'
          ? []
          : both.without.run(units.withoutPlant, results.without, raises ?? undefined)),
      ];
      if (findings.length > 0) return findings;
      const into = own();
      resultsInto(into, results.with, 'after');
      if (what === 'both') resultsInto(into, results.without, 'before');
      const { length: columns } = both.with.columns;
      for (let at = 0; at < into.bank.length; at += 1)
        into.bank[at] = results.with.balances[at * columns] ?? 0;
      return [];
    },
  };
}
