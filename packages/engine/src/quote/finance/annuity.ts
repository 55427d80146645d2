import { finite, growthOf } from './check-arguments.ts';

/**
 * What 1 at the end of so many periods is worth now: (1 + rate)^−periods.
 *
 * @param rate     a part of one a period, above −1
 * @param periods  any number
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @source Handbook 135, Life-Cycle Costing Manual, NIST, 1995 (from memory)
 * @example
 * singlePresentValueFactor(0.25, 2) //=> 0.64
 */
export function singlePresentValueFactor(rate: number, periods: number): number {
  return growthOf(rate) ** -finite(periods, 'periods');
}

/**
 * What 1 at the end of each of so many periods is worth now: (1 − (1 + rate)^−periods) ÷ rate, and as many
 * as there are periods where the rate is 0. Small rates lose no digits.
 *
 * @param rate     a part of one a period, above −1
 * @param periods  any number
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @source Handbook 135, Life-Cycle Costing Manual, NIST, 1995 (from memory)
 * @example
 * uniformPresentValueFactor(1, 2) //=> 0.75
 */
export function uniformPresentValueFactor(rate: number, periods: number): number {
  growthOf(rate);
  finite(periods, 'periods');
  return rate === 0 ? periods : -Math.expm1(-periods * Math.log1p(rate)) / rate;
}

/**
 * What has to come at the end of each of so many periods for 1 now: the capital recovery factor,
 * rate ÷ (1 − (1 + rate)^−periods), the inverse of {@link uniformPresentValueFactor}.
 *
 * @param rate     a part of one a period, above −1
 * @param periods  above 0
 * @throws RangeError for a rate of −100 % or below and for no periods: a caller's bug
 * @source A Manual for the Economic Evaluation of Energy Efficiency and Renewable Energy Technologies, NREL,
 *         1995 (formula from memory)
 * @example
 * capitalRecoveryFactor(0, 4) //=> 0.25
 */
export function capitalRecoveryFactor(rate: number, periods: number): number {
  if (!(periods > 0)) throw new RangeError(`nothing can be recovered in ${periods} periods`);
  return 1 / uniformPresentValueFactor(rate, periods);
}
