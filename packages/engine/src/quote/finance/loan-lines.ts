import { roundLargeQuotient, type RoundingMode } from '../../quantity/index.ts';

/** A loan in whole numbers of one grid of money. */
export interface ExactLoan {
  readonly amount: bigint;
  /** Of a month, a part of one; the bottom above 0. */
  readonly rate: { readonly top: bigint; readonly bottom: bigint };
  readonly months: number;
  readonly kind: 'reducing' | 'flat';
  /** What rounded amounts are multiples of, above 0. */
  readonly step: bigint;
  readonly mode: RoundingMode;
}

/** One month of a loan on that grid. */
export interface ExactLine {
  readonly payment: bigint;
  readonly interest: bigint;
  readonly principal: bigint;
  readonly balance: bigint;
}

/** A quotient rounded to whole steps. */
const rounded = ({ step, mode }: ExactLoan, top: bigint, bottom: bigint): bigint =>
  roundLargeQuotient(top, bottom * step, mode) * step;

/**
 * The instalment: P × r × (1 + r)^n ÷ ((1 + r)^n − 1), flat P × (1 + r × n) ÷ n, both P ÷ n where the rate is
 * 0; worked out in fractions and rounded once.
 *
 * @example
 * instalmentOf({ amount: 100000n, rate: { top: 1n, bottom: 100n }, months: 3, kind: 'reducing', step: 1n, mode: 'half-up' }) //=> 34002n
 */
export function instalmentOf(loan: ExactLoan): bigint {
  const { amount, months, kind } = loan;
  const { top, bottom } = loan.rate;
  const count = BigInt(months);
  if (kind === 'flat' || top === 0n) return rounded(loan, amount * (bottom + top * count), bottom * count);
  const grown = (bottom + top) ** count;
  return rounded(loan, amount * top * grown, bottom * (grown - bottom ** count));
}

/** The interest of a month; flat, what the rounded interest up to it is more than that before it. */
function interestOf(loan: ExactLoan, balance: bigint, month: number): bigint {
  const { top, bottom } = loan.rate;
  if (loan.kind === 'reducing') return rounded(loan, balance * top, bottom);
  // Months that were rounded each for itself would not come to the rounded interest of the whole.
  const upTo = (count: number): bigint => rounded(loan, loan.amount * top * BigInt(count), bottom);
  return upTo(month) - upTo(month - 1);
}

/**
 * The months of a loan. Every payment but the last is the instalment, or what is owed where that is less;
 * the last is what is owed.
 *
 * @example
 * loanLines({ amount: 100n, rate: { top: 0n, bottom: 1n }, months: 3, kind: 'flat', step: 1n, mode: 'half-up' }).at(-1).payment //=> 34n
 */
export function loanLines(loan: ExactLoan): readonly ExactLine[] {
  const instalment = instalmentOf(loan);
  let balance = loan.amount;
  return Array.from({ length: loan.months }, (_, index) => {
    const month = index + 1;
    const interest = interestOf(loan, balance, month);
    const owed = balance + interest;
    const payment = month < loan.months && instalment < owed ? instalment : owed;
    balance = owed - payment;
    return { payment, interest, principal: payment - interest, balance };
  });
}
