import { decimalPlaces, decimalToWhole, minorUnitDigits, roundLargeQuotient } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';

/** What is paid at the beginning, in whole 1/grid of money. */
export interface Outlay {
  readonly grid: number;
  readonly items: readonly {
    readonly item: string;
    readonly amount: number;
    readonly tax: number;
  }[];
  /** With tax and, where there is one, the battery. */
  readonly price: number;
  readonly subsidy: number;
}

/** A decimal text on a grid of a power of ten, rounded half-up where it is finer. */
export function onGrid(text: string, grid: number): number {
  const places = decimalPlaces(text);
  const top = BigInt(decimalToWhole(text, places)) * BigInt(grid);
  return Number.parseInt(roundLargeQuotient(top, BigInt(10 ** places), 'half-up').toString(), 10);
}

/** A percentage of an amount, rounded half-up. */
export function percentOf(amount: number, percent: string): number {
  const places = decimalPlaces(percent);
  const top = BigInt(amount) * BigInt(decimalToWhole(percent, places));
  return Number.parseInt(roundLargeQuotient(top, BigInt(100 * 10 ** places), 'half-up').toString(), 10);
}

/** What tiers come to for a capacity, tier by tier, and no more than the most. */
function tiered(
  { tiers = [], most }: NonNullable<QuoteDocument['subsidy']>,
  watts: number,
  grid: number,
): number {
  let from = 0;
  let sum = 0;
  for (const { upTo, perKilowatt } of tiers) {
    const to = upTo === undefined ? watts : Math.min(watts, decimalToWhole(upTo, 3));
    const top = BigInt(onGrid(perKilowatt, grid)) * BigInt(Math.max(0, to - from));
    sum += Number.parseInt(roundLargeQuotient(top, 1000n, 'half-up').toString(), 10);
    from = Math.max(from, to);
  }
  return most === undefined ? sum : Math.min(sum, onGrid(most, grid));
}

/** An amount of the quoted plant for one of another size, by capacity, rounded half-up. */
export function bySize(amount: number, watts: number, quoted: number): number {
  if (watts === quoted) return amount;
  const top = BigInt(amount) * BigInt(watts);
  return Number.parseInt(roundLargeQuotient(top, BigInt(quoted), 'half-up').toString(), 10);
}

/**
 * What a plant costs at the beginning: items with tax, and the subsidy by amount or by tiers.
 *
 * @param grid   whole parts of a unit of money
 * @param watts  of all modules: of the quoted plant, or of another size of it
 */
export function outlayOf(document: QuoteDocument, grid: number, watts: number): Outlay {
  const { price, subsidy, battery } = document;
  const quoted = decimalToWhole(document.plant.kWp, 3);
  const items = price.map(({ item, amount, tax, fixed }) => {
    const plain = fixed === true ? onGrid(amount, grid) : bySize(onGrid(amount, grid), watts, quoted);
    return { item, amount: plain, tax: tax === undefined ? 0 : percentOf(plain, tax) };
  });
  const sum = items.reduce((total, one) => total + one.amount + one.tax, 0);
  const own = subsidy?.amount === undefined ? null : onGrid(subsidy.amount, grid);
  return {
    grid,
    items,
    price: sum + (battery === undefined ? 0 : onGrid(battery.cost, grid)),
    subsidy: subsidy === undefined ? 0 : (own ?? tiered(subsidy, watts, grid)),
  };
}

/** Whole parts of a unit of a currency that amounts of a quote are rounded to. */
export function moneyGrid(currency: string): number {
  return 10 ** (minorUnitDigits(currency) ?? 2);
}
