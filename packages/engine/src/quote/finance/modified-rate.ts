import { growthOf } from './check-arguments.ts';

/** What money costs and what it brings beside the flows; parts of one a period, above −1. */
export interface MoneyRates {
  /** What is paid for money that flows out. */
  readonly finance: number;
  /** What money brings that has flowed in. */
  readonly reinvestment: number;
}

/**
 * The modified internal rate of return: what is received, put by at one rate to the end, is so many times
 * what is paid, discounted at another to now; the rate is what compounds to that.
 *
 * @param flows  one a period, the first now; paid below 0, received above
 * @returns      a part of one a period; null where nothing is paid, nothing is received, or all is now
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * modifiedInternalRate([-100, 50, 150], { finance: 0.1, reinvestment: 0.5 }) //=> 0.5
 */
export function modifiedInternalRate(
  flows: readonly number[],
  { finance, reinvestment }: MoneyRates,
): number | null {
  const [cost, gain] = [growthOf(finance), growthOf(reinvestment)];
  const periods = flows.length - 1;
  let [paid, received] = [0, 0];
  flows.forEach((flow, at) => {
    if (flow < 0) paid -= flow / cost ** at;
    else received += flow * gain ** (periods - at);
  });
  const isThere = paid > 0 && received > 0 && periods > 0;
  return isThere ? Math.expm1(Math.log(received / paid) / periods) : null;
}
