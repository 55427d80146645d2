import { dayText, givenFigure, wholeToDecimal, type Figure, type Finding } from './quantity/index.ts';
import type { PreparedTariff } from './bill/index.ts';
import { amountsPlan } from './amounts-plan.ts';
import { AmountsRun } from './amounts-run.ts';
import type { Raises } from './amounts-raises.ts';
import type { AmountsInput, AmountsPlan, AmountsResult } from './amounts-types.ts';
import { keepPeriods } from './keep-periods.ts';
import type { UnitsMonth } from './keeper.ts';
import type { UnitsPeriod } from './periods-document.ts';

/** What amounts are told of besides the payable. */
export interface AmountsColumn {
  /** Of the ledger; `credit` for the bank of unit netting. */
  readonly id: string;
}

/** Billing periods of an account under a tariff, to be billed with one set of units after another. */
export interface Amounts {
  /** The ledgers in the order of the balances. */
  readonly columns: readonly AmountsColumn[];
  /** Whether periods are billed without figures; false: each is kept in full, and its amounts taken. */
  readonly isQuick: boolean;
  /** Room for the results of one set of units, to be used again and again, by this object alone. */
  readonly makeResult: () => AmountsResult;
  /**
   * Bill the periods.
   *
   * @param units   whole thousandths: a row for each period, a column for each name
   * @param result  receives payables and balances
   * @param raises  factors of rates; left out: rates as they stand
   * @returns       the findings that `keepPeriods` has; with factors, none even where `result.isQuick` is
   *                false: then nothing could be billed, and `result.count` is 0
   */
  readonly run: (units: Float64Array, result: AmountsResult, raises?: Raises) => readonly Finding[];
}

/** Units as the text that `keepPeriods` reads; of no whole thousandths, one that it refuses. */
function unitsText(value: number): string {
  return Number.isInteger(value) ? wholeToDecimal(value, 3) : String(value / 1000);
}

function periodsOf({ periods, names }: AmountsInput, units: Float64Array): readonly UnitsPeriod[] {
  return periods.map(({ from, to }, row) => ({
    from: dayText(from),
    to: dayText(to),
    quantities: Object.fromEntries(
      names.map((name, column) => [name, unitsText(units[row * names.length + column] ?? NaN)]),
    ),
  }));
}

const NOTHING: Figure = givenFigure({
  id: 'nothing',
  label: 'Nothing',
  unit: 'kWh',
  numerator: 0,
  denominator: 1000,
  clause: '',
});

const closingOf = ({ ledgers, passbook }: UnitsMonth, id: string): Figure =>
  ledgers.find((entry) => entry.id === id)?.closing ??
  (id === 'credit' ? passbook?.closing : undefined) ??
  NOTHING;

/** Keep the periods in full, and take their amounts. */
function runInFull(
  prepared: PreparedTariff,
  input: AmountsInput,
  columns: readonly AmountsColumn[],
): Amounts['run'] {
  return (units, result, raises) => {
    result.isQuick = false;
    result.dues.fill(NaN);
    result.payouts.fill(NaN);
    result.count = 0;
    if (raises !== undefined) return NONE;
    const periods = periodsOf(input, units);
    const { account } = input;
    const kept = keepPeriods({ account, tariff: prepared, periods, withSavings: false });
    result.count = kept.value.length;
    kept.value.forEach((month, at) => {
      const { payable } = month.bill;
      result.payables[at] = payable.numerator as number;
      result.payableGrids[at] = payable.denominator;
      columns.forEach(({ id }, column) => {
        const closing = closingOf(month, id);
        result.balances[at * columns.length + column] = closing.numerator as number;
        result.balanceGrids[at * columns.length + column] = closing.denominator;
      });
    });
    return kept.findings;
  };
}

function columnsOf({ tariff }: PreparedTariff): readonly AmountsColumn[] {
  const { settlements } = tariff.document;
  const ids = settlements.flatMap((rule) => (rule.scheme === 'ledgers' ? (rule.ledgers ?? []) : []));
  const hasBank = settlements.some(({ scheme }) => scheme === 'unit-netting');
  const all = new Set([...ids.map(({ id }) => id), ...(hasBank ? ['credit'] : [])]);
  return [...all].map((id) => ({ id }));
}

const NONE: readonly never[] = [];

const resultMaker = (periods: number, columns: number) => (): AmountsResult => ({
  count: 0,
  isQuick: false,
  payables: new Float64Array(periods),
  payableGrids: new Float64Array(periods),
  balances: new Float64Array(periods * columns),
  balanceGrids: new Float64Array(periods * columns),
  dues: new Float64Array(periods),
  payouts: new Float64Array(periods),
  payoutGrid: 1,
});

function fillGrids(plan: AmountsPlan, result: AmountsResult): void {
  const { payableGrids, balanceGrids } = result;
  result.payoutGrid = plan.grid;
  payableGrids.fill(plan.payableGrid);
  const grids = [...plan.ledgers.map(({ grid }) => grid), ...(plan.credit === null ? [] : [1000])];
  for (let at = 0; at < balanceGrids.length; at += 1) balanceGrids[at] = grids[at % grids.length] ?? 1;
}

/**
 * Prepare billing periods to be billed with one set of units after another, exactly as `keepPeriods` bills
 * them but without figures: for quotes and checks that need amounts alone.
 *
 * Where the plain arithmetic has no room, or there is something to find, the periods are kept in full, and
 * so every result and finding is that of `keepPeriods`. Kept in full from the outset (`isQuick` false):
 * money credit in a period that is split, an opening or a rule with a finding, numbers finer than
 * thousandths in a definition that does not multiply, amounts without a common grid below 2^36.
 *
 * @param prepared  the tariff in normal form; serves any number of sequences
 * @param input     account, periods and the names of the quantities
 * @example
 * amountsOf(prepareTariff({ document: { rounding: { line: 'none', total: 'none' }, settlements: [] }, versions: [], settlements: [] }), { account: {}, periods: [], names: [] }).isQuick //=> false
 */
export function amountsOf(prepared: PreparedTariff, input: AmountsInput): Amounts {
  const columns = columnsOf(prepared);
  const makeResult = resultMaker(input.periods.length, columns.length);
  const inFull = runInFull(prepared, input, columns);
  const plan = amountsPlan(prepared, input);
  if (plan === null) return { columns, isQuick: false, makeResult, run: inFull };
  const quick = new AmountsRun(plan);
  const run: Amounts['run'] = (units, result, raises) => {
    const wasQuick = result.isQuick;
    if (!quick.run(units, result, raises)) return inFull(units, result, raises);
    if (!wasQuick) fillGrids(plan, result);
    return NONE;
  };
  return { columns, isQuick: true, makeResult, run };
}
