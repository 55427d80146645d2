import { commonMultiple, dayText, type Finding, type Period } from './quantity/index.ts';
import { readTariff, type Tariff } from './tariff/index.ts';
import { prepareTariff, type ExactFactor } from './bill/index.ts';
import { amountsOf, type Amounts } from './bill-amounts.ts';
import type { Raises } from './amounts-raises.ts';
import type { AmountsResult } from './amounts-types.ts';
import {
  lifePeriods,
  quoteFinding,
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

/** Which bills of a life are made. */
export type Which = 'both' | 'with' | 'changed';

/** Bills the months of a life, with and without the plant, again and again. */
export interface LifeBiller {
  readonly bills: LifeBills;
  readonly periods: readonly Period[];
  /**
   * @param units   of every month
   * @param raises  how far rates have risen; null: not at all
   * @param what    `with`: only the bills with the plant, those without stay as they are; `changed`: these are made
   *                anew unless the `changed` run before had the same units without the plant, and the same raises,
   *                which are not to be written anew then
   * @returns       findings; with any, the bills are of no use
   */
  readonly run: (units: LifeUnits, raises: Raises | null, what: Which) => readonly Finding[];
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

/** Bills without the plant. Without figures all of them are on one grid. */
function beforeInto({ grid, before }: LifeBills, { payables, payableGrids }: AmountsResult): void {
  const times = grid / (payableGrids[0] as number);
  for (let at = 0; at < before.length; at += 1) before[at] = (payables[at] as number) * times;
}

/** Bills with the plant, surplus apart. */
function afterInto(
  { grid, after, surplus }: LifeBills,
  { payables, payableGrids, dues, payouts, payoutGrid }: AmountsResult,
): void {
  const times = grid / (payableGrids[0] as number);
  const paidTimes = grid / payoutGrid;
  for (let at = 0; at < after.length; at += 1) {
    after[at] = (payables[at] as number) * times - (dues[at] as number) * paidTimes;
    surplus[at] = 0 - (payouts[at] as number) * paidTimes;
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
    /** The day of the year that the account chose for its settlement, as mm-dd; left out: it chose none. */
    readonly settlementDay?: string | undefined;
    /** Left out: the calendar months of the life. */
    readonly periods?: readonly Period[];
    /** Columns of the units; left out: those without time blocks. */
    readonly names?: readonly string[];
  },
  raised: readonly string[],
): LifeBiller {
  const prepared = prepareTariff(tariff);
  const periods = input.periods ?? lifePeriods(input);
  const since = dayText(input.start);
  const base = { periods, names: input.names ?? UNIT_COLUMNS, raised };
  const { quantities, settlementDay } = input;
  const account = { since, quantities, ...(settlementDay === undefined ? {} : { settlementDay }) };
  // The same account twice: what differs is only the plant.
  const both = {
    with: amountsOf(prepared, { ...base, account }),
    without: amountsOf(prepared, { ...base, account }),
  };
  const results = { with: both.with.makeResult(), without: both.without.makeResult() };
  const ids = both.with.columns.map(({ id }) => id);
  const banks = unitLedgers(tariff).map((id) => ids.indexOf(id));
  return makeBiller(both, results, { periods, banks: banks.filter((at) => at >= 0) });
}

/** Ledgers that hold units, and the bank of unit netting. */
function unitLedgers({ document }: Tariff): readonly string[] {
  const declared = document.settlements.flatMap((rule) =>
    rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : [],
  );
  return ['credit', ...new Set(declared.filter(({ unit }) => unit !== 'money').map(({ id }) => id))];
}

/** Units of all banks after each period. */
function bankInto(
  bank: Float64Array,
  { balances }: AmountsResult,
  { columns, banks }: { readonly columns: number; readonly banks: readonly number[] },
): void {
  bank.fill(0);
  for (const column of banks) {
    for (let at = 0; at < bank.length; at += 1)
      bank[at] = (bank[at] as number) + (balances[at * columns + column] as number);
  }
}

/** What is wanted of an account is wanted of the quote: it has no account of its own. Bills without the plant say it again. */
function ofQuote(findings: readonly Finding[]): readonly Finding[] {
  const told = new Map<string, Finding>();
  findings.forEach((finding, at) => {
    const { code, values } = finding;
    const ledger = values['ledger'] ?? '';
    if (code !== 'settlement/account-day-needed') told.set(String(at), finding);
    else
      told.set(ledger, quoteFinding('quote/settlement-day-needed', { path: ['settlementDay'] }, { ledger }));
  });
  return [...told.values()];
}

function notProjected(raises: Raises | null): Finding {
  const why =
    raises === null
      ? 'their numbers have no room in plain arithmetic'
      : 'their rates, risen, have no room in plain arithmetic';
  return quoteFinding('quote/cannot-project', { path: ['years'] }, { why });
}

/** What the bills without the plant that stand were made of. */
class MadeOf {
  private units: Float64Array = new Float64Array(0);
  /** undefined: not known. */
  private raises: Raises | null | undefined = undefined;

  is({ withoutPlant }: LifeUnits, raises: Raises | null): boolean {
    const { units } = this;
    if (raises !== this.raises || withoutPlant.length !== units.length) return false;
    for (let at = 0; at < units.length; at += 1) if (units[at] !== withoutPlant[at]) return false;
    return true;
  }

  forget(): void {
    this.raises = undefined;
  }

  set({ withoutPlant }: LifeUnits, raises: Raises | null): void {
    if (withoutPlant.length === this.units.length) this.units.set(withoutPlant);
    else this.units = withoutPlant.slice();
    this.raises = raises;
  }
}

function makeBiller(
  both: { readonly with: Amounts; readonly without: Amounts },
  results: { readonly with: AmountsResult; readonly without: AmountsResult },
  { periods, banks }: { readonly periods: readonly Period[]; readonly banks: readonly number[] },
): LifeBiller {
  const room = () => new Float64Array(periods.length);
  let bills: LifeBills | null = null;
  const without = new MadeOf();
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
      const isWithout = what === 'both' || (what === 'changed' && !without.is(units, raises));
      if (isWithout) without.forget();
      const findings = [
        ...both.with.run(units.withPlant, results.with, raises ?? undefined),
        ...(isWithout ? both.without.run(units.withoutPlant, results.without, raises ?? undefined) : []),
      ];
      if (findings.length > 0) return ofQuote(findings);
      // Without figures only: bills kept in full know no rates that rise, and no surplus by its period.
      if (!results.with.isQuick || !results.without.isQuick) {
        without.forget();
        const told = both.with.run(units.withPlant, results.with);
        const more = told.length > 0 ? told : both.without.run(units.withoutPlant, results.without);
        return more.length > 0 ? ofQuote(more) : [notProjected(raises)];
      }
      const into = own();
      afterInto(into, results.with);
      if (isWithout) beforeInto(into, results.without);
      bankInto(into.bank, results.with, { columns: both.with.columns.length, banks });
      if (what === 'changed') without.set(units, raises);
      return [];
    },
  };
}
