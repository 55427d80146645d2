import type { DayNumber } from '../../quantity/index.ts';
import { growthOf } from './check-arguments.ts';

/**
 * The present value of flows of which the first is now: flow 0 ÷ (1 + rate)^0 + flow 1 ÷ (1 + rate)^1 …
 * Years of a quote are counted so: the outlay now, the first year's saving at its end. Where the first flow
 * comes a period later, {@link spreadsheetPresentValue} is meant.
 *
 * @param rate   a part of one a period, above −1
 * @param flows  money in any unit, one a period; what is received above 0, what is paid below
 * @returns      money in the same unit, in doubles and not rounded: a projection, no amount of a bill
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * presentValue(0.25, [-100, 50, 100]) //=> 4
 */
export function presentValue(rate: number, flows: readonly number[]): number {
  const growth = growthOf(rate);
  let value = 0;
  for (let at = flows.length - 1; at >= 0; at -= 1) value = value / growth + (flows[at] ?? 0);
  return value;
}

/**
 * The present value of flows of which the first comes at the END of the first period, as the function of
 * spreadsheets counts them: {@link presentValue} discounted by one period more.
 *
 * @param rate   a part of one a period, above −1
 * @param flows  money in any unit, one a period
 * @returns      money in the same unit, in doubles and not rounded
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * spreadsheetPresentValue(0.25, [50, 100]) //=> 104
 */
export function spreadsheetPresentValue(rate: number, flows: readonly number[]): number {
  return presentValue(rate, flows) / growthOf(rate);
}

/** Money that comes (above 0) or goes (below 0) on a day. */
export interface DatedFlow {
  readonly day: DayNumber;
  readonly amount: number;
}

/** A year of dated flows has 365 days, leap years too. */
export const DAYS_OF_RATE = 365;

/**
 * The present value of dated flows on the day of the first one listed: each is divided by
 * (1 + rate)^(days ÷ 365), leap years or not. An earlier flow further down the list grows instead.
 *
 * @param rate   a part of one a year, above −1
 * @param flows  in any order but for the first
 * @returns      money in the unit of the flows, in doubles and not rounded; 0 for no flows
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * datedPresentValue(0.25, [{ day: 0, amount: -100 }, { day: 730, amount: 200 }]) //=> 28
 */
export function datedPresentValue(rate: number, flows: readonly DatedFlow[]): number {
  const growth = growthOf(rate);
  const start = flows[0]?.day ?? 0;
  return flows.reduce((sum, { day, amount }) => sum + amount / growth ** ((day - start) / DAYS_OF_RATE), 0);
}
