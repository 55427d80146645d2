import { growthOf } from './check-arguments.ts';

function timesAYearOf(times: number): number {
  if (!(times > 0 && Number.isFinite(times))) throw new RangeError(`${times} periods are no year`);
  return times;
}

/**
 * The rate of a year (or of any number of periods) that a rate of one period compounds to:
 * (1 + rate)^periods − 1. A month's rate is a year's by 12 periods.
 *
 * @param rate     a part of one a period, above −1
 * @param periods  above 0
 * @throws RangeError for a rate of −100 % or below and for no periods: a caller's bug
 * @example
 * compoundedRate(0.25, 2).toFixed(4) //=> "0.5625"
 */
export function compoundedRate(rate: number, periods: number): number {
  growthOf(rate);
  // By logarithms small rates lose no digits.
  return Math.expm1(timesAYearOf(periods) * Math.log1p(rate));
}

/**
 * The effective rate of a year for a nominal one that is added so many times a year:
 * (1 + nominal ÷ times)^times − 1.
 *
 * @param nominal     a part of one a year
 * @param timesAYear  above 0: 12 for months, 4 for quarters
 * @throws RangeError where a period's rate would be −100 % or below, and for no periods: a caller's bug
 * @example
 * effectiveRate(0.5, 2).toFixed(4) //=> "0.5625"
 */
export function effectiveRate(nominal: number, timesAYear: number): number {
  return compoundedRate(nominal / timesAYearOf(timesAYear), timesAYear);
}

/**
 * The rate of one period that compounds to a year's: (1 + effective)^(1 ÷ times) − 1.
 *
 * @param effective   a part of one a year, above −1
 * @param timesAYear  above 0
 * @throws RangeError for a rate of −100 % or below and for no periods: a caller's bug
 * @example
 * periodRate(0.5625, 2).toFixed(4) //=> "0.2500"
 */
export function periodRate(effective: number, timesAYear: number): number {
  return compoundedRate(effective, 1 / timesAYearOf(timesAYear));
}

/**
 * The rate left of a nominal one when prices rise: (1 + nominal) ÷ (1 + inflation) − 1.
 *
 * @param nominal    a part of one a year, above −1
 * @param inflation  a part of one a year, above −1
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * realRate(0.5, 0.25) //=> 0.2
 */
export function realRate(nominal: number, inflation: number): number {
  growthOf(nominal);
  return (nominal - inflation) / growthOf(inflation);
}

/**
 * The nominal rate that leaves a real one when prices rise: (1 + real) × (1 + inflation) − 1.
 *
 * @param real       a part of one a year, above −1
 * @param inflation  a part of one a year, above −1
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * nominalRate(0.5, 0.25) //=> 0.875
 */
export function nominalRate(real: number, inflation: number): number {
  growthOf(real);
  return real + inflation * growthOf(real);
}
