import { decimalToWhole, roundLargeQuotient, wholeToDecimal } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';

type Battery = NonNullable<QuoteDocument['battery']>;

const THOUSANDTHS = 3;
const COINS = 2;

/**
 * Capacities to set beside that of a quote, in Wh: none, and half of it to twice as much in steps of a half; empty
 * where the quote has no battery, or one of no capacity.
 *
 * @example
 * usualBatteries({ battery: { capacity: '5', power: '2.5', efficiency: '90', cost: '200000' } }) //=> [0,2500,5000,7500,10000]
 */
export function usualBatteries({ battery }: Pick<QuoteDocument, 'battery'>): readonly number[] {
  if (battery === undefined) return [];
  const quoted = decimalToWhole(battery.capacity, THOUSANDTHS);
  if (quoted === 0) return [];
  const halves = [0, 1, 2, 3, 4].map((half) => Math.floor((quoted * half) / 2));
  return [...new Set(halves)];
}

/** A part of a text by capacity, rounded half-up to so many decimals. */
function byCapacity(text: string, places: number, wattHours: number, quoted: number): string {
  const top = BigInt(decimalToWhole(text, places)) * BigInt(wattHours);
  return wholeToDecimal(roundLargeQuotient(top, BigInt(quoted), 'half-up'), places);
}

function sized(battery: Battery, wattHours: number, quoted: number): Battery {
  const { power, cost, replacement } = battery;
  const money = (text: string): string => byCapacity(text, COINS, wattHours, quoted);
  return {
    ...battery,
    capacity: wholeToDecimal(wattHours, THOUSANDTHS),
    power: byCapacity(power, THOUSANDTHS, wattHours, quoted),
    cost: money(cost),
    replacement: replacement && { ...replacement, amount: money(replacement.amount) },
  };
}

/**
 * A quote with a battery of another capacity: power and prices go by capacity, rounded half-up.
 *
 * @param wattHours  0: without a battery; the quoted capacity: as it is
 * @example
 * withBatteryOf({ battery: { capacity: '5', power: '2.5', efficiency: '90', cost: '200000' } }, 10000).battery.cost //=> "400000.00"
 */
export function withBatteryOf(document: QuoteDocument, wattHours: number): QuoteDocument {
  const { battery, ...rest } = document;
  if (battery === undefined || wattHours === 0) return rest;
  const quoted = decimalToWhole(battery.capacity, THOUSANDTHS);
  if (quoted === 0 || wattHours === quoted) return document;
  return { ...rest, battery: sized(battery, wattHours, quoted) };
}
