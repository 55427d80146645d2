import { calendarDay, dayNumber, daysInMonth, type DayNumber, type Period } from '../quantity/index.ts';
import type { LedgerRule } from '../tariff/index.ts';
import { daysOfYearIn, lastDayOfYear } from './close-day.ts';
import type { AccountDays } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** Units or money that came into a ledger together. */
export interface Lot {
  /** The day after the period it was earned in. */
  readonly born: DayNumber;
  /** Whole number of 1/denominator of a unit of the ledger. */
  readonly amount: number;
}

/** What a ledger hands from one period to the next. */
export interface LedgerState {
  /** Oldest first. */
  readonly lots: readonly Lot[];
  readonly denominator: number;
  /** The first day of the periods in a row that ended with a balance; null where the last did not. */
  readonly creditSince: DayNumber | null;
}

/** What a period does to a ledger, in the ledger's own fractions. */
export interface LedgerInput {
  readonly state: LedgerState;
  /** What is left of the balance brought forward. */
  readonly keeps: number;
  readonly adds: number;
  /** The most that is paid; null for no limit. */
  readonly most: number | null;
  /** The balance from which on, or above which, it is paid; null for no threshold. */
  readonly threshold: number | null;
  readonly period: Period;
  readonly account: AccountDays;
}

/** Where the balance of a ledger went in a period: `opening + adds = used + paid + lapsed + closing`. */
export interface LedgerMoves {
  readonly opening: number;
  readonly used: number;
  readonly adds: number;
  /** Lapsed because its life had ended. */
  readonly outlived: number;
  /** Lapsed at the close. */
  readonly dropped: number;
  readonly paid: number;
  readonly closing: number;
  readonly isClosed: boolean;
  readonly next: LedgerState;
}

const total = (lots: readonly Lot[]): number => lots.reduce((sum, { amount }) => sum + amount, 0);

/** Take an amount out of the oldest lots. */
function takeOldest(lots: readonly Lot[], amount: number): readonly Lot[] {
  let left = amount;
  return lots.flatMap((lot) => {
    const taken = Math.min(left, lot.amount);
    left -= taken;
    return taken === lot.amount ? [] : [{ ...lot, amount: lot.amount - taken }];
  });
}

/** A day so many months later; the last of a month that is too short for it. */
export function monthsLater(day: DayNumber, months: number): DayNumber {
  const { year, month, day: date } = calendarDay(day);
  const at = year * 12 + month - 1 + months;
  const later = { year: Math.floor(at / 12), month: (at % 12) + 1 };
  return dayNumber({ ...later, day: Math.min(date, daysInMonth(later.year, later.month)) });
}

/** A day that the account has to tell; an error where it does not. */
function told<Value>(value: Value | null, what: string, ledger: string): Value {
  if (value === null) throw new SettlementProblem('settlement/account-day-needed', { what, ledger });
  return value;
}

/** The days of the year on which a ledger closes; null for every period. */
function closingDaysOf(rule: LedgerRule, account: AccountDays): readonly string[] | null {
  const on = rule.close?.on ?? [];
  if (on === 'every-period') return null;
  if (on === 'anniversary') return [lastDayOfYear(told(account.since, 'since', rule.label))];
  return on === 'chosen' ? [told(account.settlementDay, 'settlementDay', rule.label)] : on;
}

/**
 * Whether a closing day is one of every so manieth year: counted from the first such day after the account
 * began, or, of the account's own years, at the end of so many.
 */
function isItsYear(day: DayNumber, monthDay: string, { close }: LedgerRule, since: DayNumber): boolean {
  const start = calendarDay(since);
  const years = Number.parseInt(close?.everyYears ?? '1', 10);
  const [month = 1, date = 1] = monthDay.split('-').map((part) => Number.parseInt(part, 10));
  const isLater = month > start.month || (month === start.month && date > start.day);
  const next = isLater ? start.year : start.year + 1;
  const first = close?.on === 'anniversary' ? next + years - 1 : next;
  const elapsed = calendarDay(day).year - first;
  return elapsed >= 0 && elapsed % years === 0;
}

/**
 * Whether a period closes a ledger.
 *
 * @throws SettlementProblem where the rule needs a day that the account does not tell
 */
export function closesIn(rule: LedgerRule, period: Period, account: AccountDays): boolean {
  if (rule.close === undefined) return false;
  const days = closingDaysOf(rule, account);
  if (days === null) return true;
  const { everyYears } = rule.close;
  return days.some((monthDay) => {
    const held = daysOfYearIn(period, monthDay);
    if (held.length === 0 || everyYears === undefined) return held.length > 0;
    const since = told(account.since, 'since', rule.label);
    return held.some((day) => isItsYear(day, monthDay, rule, since));
  });
}

/** The lots that are still alive at the end of a period. */
function alive(
  rule: LedgerRule,
  lots: readonly Lot[],
  creditSince: DayNumber | null,
  period: Period,
): readonly Lot[] {
  const { life } = rule;
  if (life === undefined) return lots;
  const months = Number.parseInt(life.months, 10);
  if (life.of === 'each-unit') return lots.filter(({ born }) => monthsLater(born, months) > period.to);
  return creditSince !== null && monthsLater(creditSince, months) <= period.to ? [] : lots;
}

/** What a closing ledger pays of its balance. */
function paidOf(rule: LedgerRule, balance: number, { threshold, most }: LedgerInput): number {
  if (rule.close?.surplus !== 'paid') return 0;
  const { above, pays } = rule.payment ?? {};
  const isReached =
    threshold === null || balance > threshold || (above === undefined && balance === threshold);
  const due = isReached ? balance - (pays === 'excess' ? (threshold ?? 0) : 0) : 0;
  return most === null ? due : Math.min(due, Math.max(0, most));
}

/**
 * Carry a ledger through a period: use the oldest first, take in what was earned, let go what has
 * outlived its time, and at the close pay, drop or carry on.
 */
export function moveLedger(rule: LedgerRule, input: LedgerInput): LedgerMoves {
  const { state, keeps, adds, period, account } = input;
  const opening = total(state.lots);
  const earned = adds === 0 ? [] : [{ born: period.to, amount: adds }];
  const before = [...takeOldest(state.lots, opening - keeps), ...earned];
  const creditSince = total(before) > 0 ? (state.creditSince ?? period.from) : null;
  const lots = alive(rule, before, creditSince, period);
  const balance = total(lots);
  const isClosed = closesIn(rule, period, account);
  const paid = isClosed ? paidOf(rule, balance, input) : 0;
  const rest = balance - paid;
  const { surplus } = rule.close ?? {};
  const drops = isClosed && (surplus === 'lapses' || (surplus === 'paid' && rule.payment?.rest === 'lapses'));
  const closing = drops ? 0 : rest;
  return {
    opening,
    used: opening - keeps,
    adds,
    outlived: total(before) - balance,
    dropped: rest - closing,
    paid,
    closing,
    isClosed,
    next: {
      lots: closing === rest ? takeOldest(lots, paid) : [],
      denominator: state.denominator,
      creditSince: closing > 0 ? creditSince : null,
    },
  };
}

/** A ledger as it is before its first period. */
export function emptyLedger(denominator: number): LedgerState {
  return { lots: [], denominator, creditSince: null };
}
