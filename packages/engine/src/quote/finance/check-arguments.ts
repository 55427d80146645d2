/**
 * One more than a rate: what money grows by in a period.
 *
 * @param rate  a part of one a period, above −1: 0.08 is 8 %
 * @throws RangeError for a rate of −100 % or below, and for none that is finite: a caller's bug
 * @example
 * growthOf(0.25) //=> 1.25
 */
export function growthOf(rate: number): number {
  if (!(rate > -1 && Number.isFinite(rate))) throw new RangeError(`a rate must be above -1, found ${rate}`);
  return 1 + rate;
}

/**
 * A count of periods as it is given.
 *
 * @throws RangeError where it is no whole number from the least on: a caller's bug
 * @example
 * wholePeriods(25, 1) //=> 25
 */
export function wholePeriods(periods: number, least: number): number {
  if (!Number.isSafeInteger(periods) || periods < least) {
    throw new RangeError(`periods must be whole and at least ${least}, found ${periods}`);
  }
  return periods;
}

/**
 * A number as it is given.
 *
 * @throws RangeError where it is not finite: a caller's bug
 * @example
 * finite(-2.5, 'an amount') //=> -2.5
 */
export function finite(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be finite, found ${value}`);
  return value;
}
