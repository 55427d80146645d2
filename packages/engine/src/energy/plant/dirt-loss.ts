import { decimalToWhole, exactText } from '../../quantity/index.ts';
import { rootText } from '../whole-root.ts';

/** Decimals of a rate of dirt in percent a day, and of amounts of money. */
const PLACES = 4;

/**
 * The mean loss to dirt where it grows by the same part every day and is washed off every so many days:
 * rate × (days − 1) ÷ 2. Rain is left out.
 *
 * @param percentPerDay  decimal text, up to 4 decimals
 * @param everyDays      whole, 1 or more
 * @returns              percent, exact
 * @throws RangeError when the rate is no such text or the days are fewer than 1: a caller's bug
 * @example
 * meanDirtLoss('0.34', 14) //=> "2.21"
 */
export function meanDirtLoss(percentPerDay: string, everyDays: number): string {
  if (!Number.isSafeInteger(everyDays) || everyDays < 1) throw new RangeError('fewer than one day');
  return exactText(decimalToWhole(percentPerDay, PLACES) * (everyDays - 1), 2 * 10 ** PLACES);
}

/** What a cleaning costs and what it brings. */
export interface CleaningCost {
  /** Money for one cleaning; decimal text. */
  readonly cost: string;
  /** Dirt in percent a day; decimal text. */
  readonly percentPerDay: string;
  /** Units that the clean plant makes a day; decimal text. */
  readonly unitsPerDay: string;
  /** Money for a unit; decimal text. */
  readonly price: string;
}

/**
 * The days between cleanings at which cleaning and lost units cost least together:
 * √(2 × cost ÷ (rate × units × price)). Rain is left out.
 *
 * @returns days with one decimal, rounded half-up; null where dirt costs nothing
 * @throws RangeError when a text is no decimal of up to 4 decimals: a caller's bug
 * @example
 * cheapestCleaningDays({ cost: '500', percentPerDay: '0.34', unitsPerDay: '40', price: '6' }) //=> "35.0"
 */
export function cheapestCleaningDays({
  cost,
  percentPerDay,
  unitsPerDay,
  price,
}: CleaningCost): string | null {
  const whole = (text: string): bigint => BigInt(decimalToWhole(text, PLACES));
  const loss = whole(percentPerDay) * whole(unitsPerDay) * whole(price);
  if (loss <= 0n) return null;
  // Each of the three is in ten-thousandths and the rate in percent besides; the cost in ten-thousandths.
  return rootText(2n * whole(cost) * 100n * 10n ** BigInt(2 * PLACES), loss, 1);
}
