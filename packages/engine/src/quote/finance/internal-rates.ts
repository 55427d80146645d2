import { finite } from './check-arguments.ts';
import { powerSum } from './power-sum.ts';
import { DAYS_OF_RATE, type DatedFlow } from './present-value.ts';
import { zerosOf } from './zeros.ts';

/** Every rate at which flows are worth nothing now. */
export interface InternalRates {
  /** Parts of one a period (dated: a year of 365 days), ascending, all above −1; empty where there is none. */
  readonly rates: readonly number[];
}

const ratesOf = (growths: readonly number[]): InternalRates => ({ rates: growths.map((one) => one - 1) });

/**
 * All internal rates of return of flows: every real rate above −100 % at which their present value is 0.
 * Flows whose sign changes once have one; more changes can have as many or fewer by an even number, and
 * flows that only touch 0 at a rate have that rate once. Flows without a change of sign have none, nor have
 * flows that are all 0.
 *
 * @param flows  money in any unit, one a period; the first is now
 * @returns      good to about the last digit of 1 + rate in doubles, never NaN or infinite: a rate beyond
 *               what a double can hold is set to the nearest that it can
 * @throws RangeError where a flow is not finite: a caller's bug
 * @example
 * internalRates([-1.6, 10, -10]).rates //=> [0.25,4]
 * internalRates([1000, -3000, 2500]).rates //=> []
 */
export function internalRates(flows: readonly number[]): InternalRates {
  return ratesOf(zerosOf(powerSum(flows.map((flow, time) => ({ time, amount: finite(flow, 'a flow') })))));
}

/**
 * All internal rates of return of dated flows: every real rate above −100 % a year at which
 * {@link datedPresentValue} is 0, with powers of days ÷ 365. The flows may stand in any order.
 *
 * @throws RangeError where a flow is not finite: a caller's bug
 * @example
 * datedInternalRates([{ day: 730, amount: 225 }, { day: 0, amount: -100 }]).rates //=> [0.5]
 */
export function datedInternalRates(flows: readonly DatedFlow[]): InternalRates {
  const start = flows.reduce((first, { day }) => Math.min(first, day), Infinity);
  const terms = flows.map(({ day, amount }) => ({
    time: finite(day - start, 'a day') / DAYS_OF_RATE,
    amount: finite(amount, 'a flow'),
  }));
  return ratesOf(zerosOf(powerSum(terms)));
}

/**
 * Whether flows have no internal rate of return, one, or several. With several, none of them says whether
 * the flows are worth it: the present value at the rate one reckons with does.
 *
 * @example
 * countOfRates(internalRates([-100, 125])) //=> "one"
 */
export function countOfRates({ rates }: InternalRates): 'none' | 'one' | 'several' {
  if (rates.length === 0) return 'none';
  return rates.length === 1 ? 'one' : 'several';
}
