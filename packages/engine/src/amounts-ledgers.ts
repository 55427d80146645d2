import {
  commonDivisor,
  commonMultiple,
  decimalPlaces,
  decimalToWhole,
  type DayNumber,
  type Period,
} from './quantity/index.ts';
import type { LedgerRule, LedgersRule, Tariff } from './tariff/index.ts';
import {
  paidRate,
  QuickLedger,
  quickMove,
  SettlementProblem,
  type AccountDays,
  type LedgerState,
  type LedgerStates,
  type QuickMove,
  type Ratio,
} from './settlement/index.ts';
import { stepRounding, type PreparedTariff, type StepRounding } from './bill/index.ts';

/** A ledger of the account: what its balance is counted in, and the place where it moves. */
export interface AmountsLedger {
  readonly id: string;
  readonly isMoney: boolean;
  /** Whole numbers of 1/grid. */
  readonly grid: number;
  readonly opening: LedgerState | undefined;
  readonly ledger: QuickLedger;
}

/** What a settlement pays for one thousandth, or one part, of a balance. */
export interface QuickPayment {
  readonly rate: number;
  readonly bottom: number;
  readonly rounding: StepRounding | null;
  readonly isNext: boolean;
}

/** A ledger in a period: its terms and how it is paid. */
export interface LedgerMove {
  readonly at: number;
  readonly terms: QuickMove;
  /** null: there is no price, or nothing that pays. */
  readonly payment: QuickPayment | null;
  /** Whether something pays although no price is in force: a finding. */
  readonly isUnpriced: boolean;
}

const thresholdOf = ({ payment }: LedgerRule): string | undefined => payment?.above ?? payment?.atLeast;

/** What money is counted in so that every threshold and every balance brought forward is whole. */
export function moneyGrid(rules: readonly LedgersRule[], opened: LedgerStates): number {
  const money = rules.flatMap(({ ledgers = [] }) => ledgers.filter(({ unit }) => unit === 'money'));
  const grids = money.map((rule) =>
    commonMultiple(10 ** decimalPlaces(thresholdOf(rule) ?? '0'), opened[rule.id]?.denominator ?? 1),
  );
  return grids.reduce(commonMultiple, 1);
}

/** The ledgers of all rules of a tariff; null where one id stands for units and for money. */
export function ledgersOf(
  rules: readonly LedgersRule[],
  {
    opened,
    money,
    periods,
  }: { readonly opened: LedgerStates; readonly money: number; readonly periods: number },
): readonly AmountsLedger[] | null {
  const all = new Map<string, AmountsLedger>();
  const declared = rules.flatMap(({ ledgers = [] }) => ledgers);
  const lots = new Set(declared.filter(({ life }) => life?.of === 'each-unit').map(({ id }) => id));
  for (const { id, unit } of declared) {
    const isMoney = unit === 'money';
    const known = all.get(id);
    if (known !== undefined && known.isMoney !== isMoney) return null;
    const grid = isMoney ? money : 1000;
    all.set(
      id,
      known ?? { id, isMoney, grid, opening: opened[id], ledger: new QuickLedger(periods, lots.has(id)) },
    );
  }
  return [...all.values()];
}

/** A rate in a period as whole number and denominator; null where its price is not in force. */
export function rateAt(
  { document }: Tariff,
  rate: string,
  period: Period,
): { readonly rate: number; readonly bottom: number } | null {
  try {
    const { text } = paidRate(document, rate, period);
    const places = decimalPlaces(text);
    return { rate: decimalToWhole(text, places), bottom: 1000 * 10 ** places };
  } catch (error) {
    if (error instanceof SettlementProblem) return null;
    throw error;
  }
}

/** How a ledger pays in a period; null where nothing does, or its price is not in force. */
function paymentOf(
  rule: LedgerRule,
  prepared: PreparedTariff,
  period: Period,
  grid: number,
): QuickPayment | null {
  const { payment } = rule;
  if (payment === undefined) return null;
  const price =
    rule.unit === 'money' || payment.rate === undefined
      ? { rate: 1, bottom: grid }
      : rateAt(prepared.tariff, payment.rate, period);
  const rounding = payment.rounding === undefined ? prepared.lineRounding : stepRounding(payment.rounding);
  return price === null ? null : { ...price, rounding, isNext: payment.inBill === 'next' };
}

/** What a period does to a ledger; null where only the long way can say. */
export function moveOf(
  rule: LedgerRule,
  {
    at,
    grid,
    prepared,
    period,
    account,
    days,
  }: {
    readonly at: number;
    readonly grid: number;
    readonly prepared: PreparedTariff;
    readonly period: Period;
    readonly account: AccountDays;
    readonly days: readonly DayNumber[];
  },
): LedgerMove | null {
  const above = thresholdOf(rule);
  const places = above === undefined ? 0 : decimalPlaces(above);
  const threshold = above === undefined ? null : (decimalToWhole(above, places) * grid) / 10 ** places;
  const terms = quickMove(rule, { period, account, days }, threshold);
  if (terms === null) return null;
  const payment = terms.pays ? paymentOf(rule, prepared, period, grid) : null;
  return { at, terms, payment, isUnpriced: payment === null && rule.payment !== undefined };
}

/** What amounts of a payment need to be whole numbers of. */
export const paymentGrid = ({ rounding, bottom }: QuickPayment): number => rounding?.denominator ?? bottom;

/** What a payment comes to on a grid, below 0 in favour of the account. */
export function paymentRatio({ rate, bottom, rounding }: QuickPayment, grid: number): Ratio {
  if (rounding === null) {
    return { multiply: 0 - rate * (grid / bottom), divide: 1, mode: null, step: 1, per: 1 };
  }
  const [top, under] = [rate * rounding.denominator, bottom * rounding.numerator];
  const divisor = commonDivisor(top, under);
  const step = (rounding.numerator * grid) / rounding.denominator;
  const { mode } = rounding.rounding;
  return { multiply: 0 - top / divisor, divide: under / divisor, mode, step, per: 1 };
}
