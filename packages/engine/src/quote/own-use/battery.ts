import { decimalPlaces, decimalToWhole } from '../../quantity/index.ts';
import type { QuoteDocument } from '../document/quote-document.ts';

/** A battery that is charged from surplus and discharged into the house. */
export interface Battery {
  /** What it holds at most, in Wh as they are stored. */
  readonly capacity: number;
  /** Wh in an hour at most, at its terminals: what goes in, and what comes out. */
  readonly power: number;
  /** What is left of a Wh on its way in, and again on its way out: the square root of the round trip. */
  readonly way: number;
}

/**
 * The battery of a quote.
 *
 * Losses of the round trip are split evenly, the square root each way: the capacity counts what is stored, so that
 * less than it goes out.
 *
 * @returns null where there is none, or one that changes nothing: without capacity, power or anything coming out
 * @source  round trips of about 85 %: Annual Technology Baseline, battery storage, NREL, 2020
 * @example
 * batteryOf({ battery: { capacity: '5', power: '2.5', efficiency: '81', cost: '0' } }) //=> {"capacity":5000,"power":2500,"way":0.9}
 */
export function batteryOf({ battery }: Pick<QuoteDocument, 'battery'>): Battery | null {
  if (battery === undefined) return null;
  const { efficiency } = battery;
  const capacity = decimalToWhole(battery.capacity, 3);
  const power = decimalToWhole(battery.power, 3);
  const places = decimalPlaces(efficiency);
  const way = Math.sqrt(decimalToWhole(efficiency, places) / (100 * 10 ** places));
  return capacity > 0 && power > 0 && way > 0 ? { capacity, power, way } : null;
}
