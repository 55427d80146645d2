import { capitalRecoveryFactor, singlePresentValueFactor } from './annuity.ts';
import { growthOf, wholePeriods } from './check-arguments.ts';

/** An amount that equal payments pay off, one a period. Estimates in doubles; the loan of a quote is exact. */
export interface LevelPayments {
  /** A part of one a period, above −1; of a year in months, a twelfth of the nominal rate. */
  readonly rate: number;
  /** Payments; whole, 1 or more. */
  readonly periods: number;
  /** What is owed at the start; money in any unit. */
  readonly amount: number;
  /** What is to be there after the last payment; below 0 where it stays owed. Left out: 0. */
  readonly saved?: number;
  /** Whether payments come at the end of each period or at its begin. Left out: at the end. */
  readonly paid?: 'end' | 'begin';
}

/**
 * The equal payment that pays an amount off, and gathers what is to be saved besides.
 *
 * @returns money a period, above 0 where it is paid; not rounded
 * @throws RangeError for an impossible rate or fewer than one period: a caller's bug
 * @example
 * levelPayment({ rate: 1, periods: 2, amount: 300 }) //=> 400
 * levelPayment({ rate: 0, periods: 12, amount: 1200 }).toFixed(2) //=> "100.00"
 */
export function levelPayment({ rate, periods, amount, saved = 0, paid = 'end' }: LevelPayments): number {
  wholePeriods(periods, 1);
  const now = amount + saved * singlePresentValueFactor(rate, periods);
  const payment = now * capitalRecoveryFactor(rate, periods);
  return paid === 'begin' ? payment / growthOf(rate) : payment;
}

/** What is owed just after a payment; after payment 0, at the start. */
function owedAfter(payments: LevelPayments, count: number): number {
  const { rate, amount, paid = 'end' } = payments;
  if (count === 0) return amount;
  const growth = growthOf(rate) ** count;
  const gathered = rate === 0 ? count : Math.expm1(count * Math.log1p(rate)) / rate;
  const grown = paid === 'begin' ? growth / growthOf(rate) : growth;
  return amount * grown - levelPayment(payments) * gathered;
}

/** A span of payments, both ends among them; the first payment is 1. */
export interface PaymentSpan {
  readonly from: number;
  readonly through: number;
}

/**
 * What a span of payments takes off the amount owed.
 *
 * @throws RangeError for a span outside of the payments and for impossible ones: a caller's bug
 * @example
 * principalOf({ rate: 1, periods: 2, amount: 300 }, { from: 1, through: 2 }) //=> 300
 */
export function principalOf(payments: LevelPayments, { from, through }: PaymentSpan): number {
  wholePeriods(from, 1);
  wholePeriods(through, from);
  if (through > payments.periods) throw new RangeError(`there is no payment ${through}`);
  return owedAfter(payments, from - 1) - owedAfter(payments, through);
}

/**
 * What a span of payments pays as interest: the payments less {@link principalOf} them.
 *
 * @throws RangeError for a span outside of the payments and for impossible ones: a caller's bug
 * @example
 * interestOf({ rate: 1, periods: 2, amount: 300 }, { from: 1, through: 2 }) //=> 500
 */
export function interestOf(payments: LevelPayments, span: PaymentSpan): number {
  const paid = levelPayment(payments) * (span.through - span.from + 1);
  return paid - principalOf(payments, span);
}

/**
 * The part of one payment that is interest on what was owed before it.
 *
 * @param payment  1 is the first
 * @throws RangeError where there is no such payment: a caller's bug
 * @example
 * interestPart({ rate: 1, periods: 2, amount: 300 }, 1) //=> 300
 */
export function interestPart(payments: LevelPayments, payment: number): number {
  return interestOf(payments, { from: payment, through: payment });
}

/**
 * The part of one payment that takes something off the amount owed.
 *
 * @param payment  1 is the first
 * @throws RangeError where there is no such payment: a caller's bug
 * @example
 * principalPart({ rate: 1, periods: 2, amount: 300 }, 1) //=> 100
 */
export function principalPart(payments: LevelPayments, payment: number): number {
  return principalOf(payments, { from: payment, through: payment });
}
