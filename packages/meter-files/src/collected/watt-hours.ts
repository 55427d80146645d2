/** Decimal places of a kWh in which a watt-hour is 1. */
export const WATT_HOUR_PLACES = 3;

/** Whole watt-hours, and what was carried to get them. */
export interface WattHoursResult {
  readonly values: Float64Array;
  /** How many values were no whole watt-hours. */
  readonly carried: number;
  /** What is left behind the last, in 10^-places kWh: less than a watt-hour. */
  readonly left: number;
}

/**
 * Values as whole watt-hours. Of a value that is finer, the whole watt-hours are counted and the rest is
 * carried to the next one, so that the sum from the first on is never a whole watt-hour away from what was
 * metered.
 *
 * @param values  in order of time, whole numbers of 10^-places kWh
 * @param places  3 to 18: a watt-hour in so many places is then far below 2^53
 * @example
 * Array.from(wholeWattHours(new Float64Array([14, 14, 14]), 4).values) //=> [1,1,2]
 */
export function wholeWattHours(values: Float64Array, places: number): WattHoursResult {
  const unit = 10 ** (places - WATT_HOUR_PLACES);
  if (unit === 1) return { values, carried: 0, left: 0 };
  const whole = new Float64Array(values.length);
  let carried = 0;
  let left = 0;
  values.forEach((value, row) => {
    const rest = ((value % unit) + unit) % unit;
    if (rest !== 0) carried += 1;
    left += rest;
    // Without its rest a value is a multiple of the unit, and the quotient is exact.
    whole[row] = (value - rest) / unit + (left >= unit ? 1 : 0);
    if (left >= unit) left -= unit;
  });
  return { values: whole, carried, left };
}
