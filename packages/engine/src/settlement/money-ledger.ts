import {
  addQuotients,
  commonMultiple,
  decimalPlaces,
  decimalToWhole,
  subtractQuotients,
  type Figure,
  type Period,
  type Quotient,
} from '../quantity/index.ts';
import type { LedgerRule } from '../tariff/index.ts';
import { emptyLedger, type LedgerState } from './ledger.ts';
import { ledgerEntry, type LedgerEntry } from './ledger-entry.ts';
import type { AccountDays } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** What a bill did with a ledger of money. */
export interface MoneyUse {
  /** What is left of the balance brought forward. */
  readonly keeps: Figure;
  /** Credit earned in the period that the bill did not use. */
  readonly adds: Figure;
}

/** The same state counted in finer fractions. */
function finer(state: LedgerState, denominator: number): LedgerState {
  const times = denominator / state.denominator;
  const lots = state.lots.map((lot) => ({ ...lot, amount: lot.amount * times }));
  return { ...state, lots, denominator };
}

const over = ({ numerator, denominator }: Quotient, common: number): number =>
  (numerator as number) * (common / denominator);

/** The balance of a ledger of money, exact. */
export function moneyBalance(state: LedgerState | undefined): Quotient {
  if (state === undefined) return { numerator: 0, denominator: 1 };
  const numerator = state.lots.reduce((sum, { amount }) => sum + amount, 0);
  return { numerator, denominator: state.denominator };
}

/**
 * Carry a ledger of money through a period, after its bill.
 *
 * @param use   what the bill left of the balance and added to it
 * @param most  the most that may be paid out, as money; null for no limit
 */
export function moneyEntry(
  rule: LedgerRule,
  state: LedgerState | undefined,
  use: MoneyUse & { readonly period: Period; readonly account: AccountDays; readonly most: Figure | null },
): LedgerEntry {
  const { keeps, adds, period, account, most } = use;
  const above = rule.payment?.above ?? rule.payment?.atLeast;
  const places = above === undefined ? 0 : decimalPlaces(above);
  const before = state ?? emptyLedger(1);
  if (keeps.numerator < 0 || adds.numerator < 0) {
    throw new SettlementProblem('settlement/credit-below-nothing', { ledger: rule.label });
  }
  const denominators = [
    before.denominator,
    keeps.denominator,
    adds.denominator,
    10 ** places,
    most?.denominator ?? 1,
  ];
  const denominator = denominators.reduce(commonMultiple, 1);
  const input = {
    state: finer(before, denominator),
    keeps: over(keeps, denominator),
    adds: over(adds, denominator),
    most: most === null ? null : over(most, denominator),
    threshold: above === undefined ? null : (decimalToWhole(above, places) * denominator) / 10 ** places,
    period,
    account,
  };
  return ledgerEntry(rule, input, { keeps, adds, most, rate: null });
}

/** A figure of money made of others. */
export function moneyOf(
  words: Pick<Figure, 'id' | 'label' | 'clause' | 'operation'>,
  value: Quotient,
  inputs: readonly Figure[],
): Figure {
  const { numerator, denominator } = value;
  return { ...words, unit: 'money', numerator, denominator, inputs, parameters: [], rounding: null };
}

/**
 * What a credit line used of a ledger: the balance brought forward first, then what the period earned.
 *
 * @param opening  the balance brought forward
 * @param earned   in the period
 * @param used     by the bill, above 0
 */
export function useOf(opening: Figure, earned: Figure, used: Figure): MoneyUse {
  const isEnough = isAtLeast(opening, used);
  const zero: Quotient = { numerator: 0, denominator: 1 };
  const keeps = isEnough ? subtractQuotients(opening, used) : zero;
  const adds = isEnough ? earned : subtractQuotients(addQuotients([opening, earned]), used);
  const clause = opening.clause;
  return {
    keeps: moneyOf(
      { id: 'kept', label: 'Left of the balance brought forward', operation: 'excess', clause },
      keeps,
      [opening, used],
    ),
    adds: isEnough
      ? moneyOf({ id: 'added', label: 'Credit of this period', operation: 'sum', clause }, adds, [earned])
      : moneyOf(
          { id: 'added', label: 'Credit of this period, left over', operation: 'difference', clause },
          adds,
          [
            moneyOf(
              { id: 'available', label: 'Credit available', operation: 'sum', clause },
              addQuotients([opening, earned]),
              [opening, earned],
            ),
            used,
          ],
        ),
  };
}

function isAtLeast(a: Quotient, b: Quotient): boolean {
  return BigInt(a.numerator) * BigInt(b.denominator) >= BigInt(b.numerator) * BigInt(a.denominator);
}
