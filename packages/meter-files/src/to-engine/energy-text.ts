import { decimalText } from '../collected/decimal-text.ts';

/**
 * Energy in kWh as exact decimal text, without zeros at the end.
 *
 * @param value   a whole number of 10^-places kWh
 * @param places  decimal places of a kWh, 0 or more
 * @example
 * energyText(12500, 3) //=> "12.5"
 * energyText(-5, 3) //=> "-0.005"
 */
export function energyText(value: number | bigint, places: number): string {
  return decimalText({ whole: BigInt(value), places });
}
