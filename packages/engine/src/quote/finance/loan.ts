import { decimalPlaces, decimalToWhole, type Rounding } from '../../quantity/index.ts';
import { instalmentOf, loanLines, type ExactLoan } from './loan-lines.ts';

/** The longest loan, in months: 50 years. */
export const LONGEST_LOAN = 600;

/** A loan as a lender offers it; numbers are decimal texts. */
export interface LoanTerms {
  /** Money lent, 0 or more. */
  readonly amount: string;
  /** Interest in percent a year, 0 or more; a month's is a twelfth. */
  readonly yearlyPercent: string;
  /** Instalments, one at the end of each month; whole, 1 to {@link LONGEST_LOAN}. */
  readonly months: number;
  /** Interest on what is still owed, or (flat) on the whole amount to the end. */
  readonly kind: 'reducing' | 'flat';
  /** How the instalment and each line's interest are rounded: to paise half-up, say. */
  readonly rounding: Rounding;
  /** What is paid beside the instalments. */
  readonly fees?: readonly string[];
}

/** One month of a loan, in whole numbers of the schedule's grid. */
export interface LoanLine {
  readonly payment: number;
  readonly interest: number;
  readonly principal: number;
  /** What is owed after it. */
  readonly balance: number;
}

/** A loan month by month; every amount a whole number of 10^-places of money, for `wholeToDecimal`. */
export interface LoanSchedule {
  /** Decimals of the amounts: those of the step, or of the amount and fees where these are finer. */
  readonly places: number;
  /** What is paid every month but the last, which takes up what rounding has left. */
  readonly instalment: number;
  readonly lines: readonly LoanLine[];
  /** All instalments. */
  readonly paid: number;
  readonly interest: number;
  /** Paid beside the instalments. */
  readonly fees: number;
  /** Interest and fees: what the loan costs. */
  readonly cost: number;
}

/** What a safe whole number is, exactly. */
function plain(value: bigint): number {
  const whole = Number.parseInt(value.toString(), 10);
  if (!Number.isSafeInteger(whole)) throw new RangeError(`a loan of ${value.toString()} coins`);
  return whole;
}

function checkTerms({ amount, yearlyPercent, months, rounding, fees = [] }: LoanTerms): void {
  if (!Number.isSafeInteger(months) || months < 1 || months > LONGEST_LOAN) {
    throw new RangeError(`months must be whole, 1 to ${LONGEST_LOAN}, found ${months}`);
  }
  const below = [amount, yearlyPercent, ...fees].find((text) => text.startsWith('-'));
  if (below !== undefined) throw new RangeError(`a loan has nothing below 0, found ${below}`);
  if (!(decimalToWhole(rounding.step, decimalPlaces(rounding.step)) > 0)) {
    throw new RangeError(`a step must be above 0, found ${rounding.step}`);
  }
}

/** The terms in whole numbers. */
function exactLoan(terms: LoanTerms, places: number): ExactLoan {
  const { amount, yearlyPercent, months, kind, rounding } = terms;
  const percentPlaces = decimalPlaces(yearlyPercent);
  return {
    amount: BigInt(decimalToWhole(amount, places)),
    rate: {
      top: BigInt(decimalToWhole(yearlyPercent, percentPlaces)),
      bottom: 1200n * 10n ** BigInt(percentPlaces),
    },
    months,
    kind,
    step: BigInt(decimalToWhole(rounding.step, places)),
    mode: rounding.mode,
  };
}

/**
 * A loan month by month, exact from text to text. Reducing: the instalment is
 * P × r × (1 + r)^n ÷ ((1 + r)^n − 1), of a rate of 0 P ÷ n, in fractions without loss and rounded once;
 * each month's interest is that on the balance, rounded. Flat: P × r × n is added to the amount, the sum
 * paid in n parts. Either way the last instalment takes up what rounding has left, and is what is owed then.
 *
 * @throws RangeError for texts that are no decimals, anything below 0, months outside of 1 to
 *         {@link LONGEST_LOAN}, a step of 0, and sums above 2^53: the caller checks what people type
 * @example
 * loanSchedule({ amount: '1000', yearlyPercent: '12', months: 3, kind: 'reducing', rounding: { step: '0.01', mode: 'half-up' } }).instalment //=> 34002
 */
export function loanSchedule(terms: LoanTerms): LoanSchedule {
  checkTerms(terms);
  const { amount, rounding, fees = [] } = terms;
  const places = [amount, rounding.step, ...fees].reduce(
    (most, one) => Math.max(most, decimalPlaces(one)),
    0,
  );
  const loan = exactLoan(terms, places);
  const lines = loanLines(loan);
  const interest = lines.reduce((sum, line) => sum + line.interest, 0n);
  const extra = fees.reduce((sum, fee) => sum + BigInt(decimalToWhole(fee, places)), 0n);
  return {
    places,
    instalment: plain(instalmentOf(loan)),
    lines: lines.map((line) => ({
      payment: plain(line.payment),
      interest: plain(line.interest),
      principal: plain(line.principal),
      balance: plain(line.balance),
    })),
    paid: plain(loan.amount + interest),
    interest: plain(interest),
    fees: plain(extra),
    cost: plain(interest + extra),
  };
}
