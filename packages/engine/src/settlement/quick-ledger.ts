import type { DayNumber, Period } from '../quantity/index.ts';
import type { LedgerRule } from '../tariff/index.ts';
import { closesIn, monthsLater, type LedgerState } from './ledger.ts';
import type { AccountDays } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** What a period does to a ledger, whatever its balance. */
export interface QuickMove {
  readonly from: DayNumber;
  readonly to: DayNumber;
  /** Units born up to this day have outlived their time; below every day: none. */
  readonly deadThrough: number;
  /** Credit that stands since this day or an earlier one has outlived its time. */
  readonly spentThrough: number;
  readonly isClosed: boolean;
  readonly pays: boolean;
  readonly drops: boolean;
  /** What the balance has to reach, −1 for nothing, and whether to exceed it. */
  readonly threshold: number;
  readonly isAbove: boolean;
  readonly paysExcess: boolean;
}

/** The last of some days, in order, that is so many months or more before another; −∞ for none. */
function lastOutlived(days: readonly DayNumber[], months: number, end: DayNumber): number {
  return days.findLast((day) => monthsLater(day, months) <= end) ?? -Infinity;
}

/**
 * The terms of a ledger in a period; null where the account does not tell a day that they need, or
 * a threshold lies below 0.
 *
 * @param days       the days on which anything can have come in, in order of time
 * @param threshold  in the ledger's fractions; null for none
 */
export function quickMove(
  rule: LedgerRule,
  {
    period,
    account,
    days,
  }: { readonly period: Period; readonly account: AccountDays; readonly days: readonly DayNumber[] },
  threshold: number | null,
): QuickMove | null {
  if (threshold !== null && threshold < 0) return null;
  let isClosed: boolean;
  try {
    isClosed = closesIn(rule, period, account);
  } catch (error) {
    if (error instanceof SettlementProblem) return null;
    throw error;
  }
  const { life, close, payment } = rule;
  const last =
    life === undefined ? -Infinity : lastOutlived(days, Number.parseInt(life.months, 10), period.to);
  const pays = isClosed && close?.surplus === 'paid';
  return {
    from: period.from,
    to: period.to,
    deadThrough: life?.of === 'each-unit' ? last : -Infinity,
    spentThrough: life?.of === 'time-in-credit' ? last : -Infinity,
    isClosed,
    pays,
    drops: isClosed && (close?.surplus === 'lapses' || (pays && payment?.rest === 'lapses')),
    threshold: threshold ?? -1,
    isAbove: payment?.above !== undefined,
    paysExcess: payment?.pays === 'excess',
  };
}

/** Places of what a ledger is at: doubles in a column are written in place. */
const BALANCE = 0;
const CREDIT_SINCE = 1;

/** A ledger that moves in place: lots in two columns, the oldest first. */
export class QuickLedger {
  private readonly at: Float64Array = new Float64Array(2);
  private readonly born: Float64Array;
  private readonly amount: Float64Array;
  private readonly hasLots: boolean;
  private first = 0;
  private end = 0;

  /**
   * @param periods  the most lots that can come in
   * @param hasLots  whether it matters when they did; false: the balance alone is kept
   */
  constructor(periods: number, hasLots: boolean) {
    this.hasLots = hasLots;
    this.born = new Float64Array(hasLots ? periods + 1 : 0);
    this.amount = new Float64Array(hasLots ? periods + 1 : 0);
  }

  get balance(): number {
    return this.at[BALANCE] as number;
  }

  /** Begin anew with what is brought forward, counted in so many times finer fractions. */
  begin(state: LedgerState | undefined, times: number): void {
    this.at[BALANCE] = 0;
    this.first = 0;
    this.end = 0;
    this.at[CREDIT_SINCE] = state?.creditSince ?? NaN;
    for (const { born, amount } of state?.lots ?? []) {
      this.at[BALANCE] = this.balance + amount * times;
      if (this.hasLots) this.add(born, amount * times);
    }
  }

  private add(day: number, amount: number): void {
    this.born[this.end] = day;
    this.amount[this.end] = amount;
    this.end += 1;
  }

  /** Take an amount out of the oldest lots. */
  private take(amount: number): void {
    let left = amount;
    while (left > 0) {
      const lot = this.amount[this.first] as number;
      if (lot > left) {
        this.amount[this.first] = lot - left;
        return;
      }
      left -= lot;
      this.first += 1;
    }
  }

  /** What has outlived its time is dropped. */
  private dropOld(deadThrough: number): number {
    let dead = 0;
    while (this.first < this.end && (this.born[this.first] as number) <= deadThrough) {
      dead += this.amount[this.first] as number;
      this.first += 1;
    }
    return dead;
  }

  /**
   * Carry the ledger through a period, as `moveLedger` does.
   *
   * @param keeps  what is left of the balance brought forward, from 0 to it
   * @param adds   0 or more
   * @param most   the most that is paid, 0 or more; Infinity for no limit
   * @returns      what is paid
   */
  move(terms: QuickMove, keeps: number, adds: number, most: number): number {
    const { at, hasLots } = this;
    if (hasLots) {
      this.take((at[BALANCE] as number) - keeps);
      if (adds !== 0) this.add(terms.to, adds);
    }
    let balance = keeps + adds;
    let since = at[CREDIT_SINCE] as number;
    if (!(balance > 0)) since = NaN;
    else if (Number.isNaN(since)) since = terms.from;
    if (since <= terms.spentThrough) balance = 0;
    if (hasLots) balance -= this.dropOld(terms.deadThrough);
    const paid = terms.pays ? paidOf(terms, balance, most) : 0;
    balance = terms.drops ? 0 : balance - paid;
    if (hasLots && balance === 0) this.first = this.end;
    else if (hasLots) this.take(paid);
    at[BALANCE] = balance;
    at[CREDIT_SINCE] = balance > 0 ? since : NaN;
    return paid;
  }
}

/** What a closing ledger pays of its balance; `most` Infinity for no limit. */
function paidOf({ threshold, isAbove, paysExcess }: QuickMove, balance: number, most: number): number {
  const isReached = threshold < 0 || balance > threshold || (!isAbove && balance === threshold);
  if (!isReached) return 0;
  return Math.min(paysExcess && threshold >= 0 ? balance - threshold : balance, most);
}
