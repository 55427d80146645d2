import { decimalPlaces, decimalToWhole, minorUnitDigits, roundLargeQuotient } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { percentFactor, timesFactor } from './factors.ts';

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

/** An amount that grows by a percentage each year, in a year from 1 on, rounded half-up. */
export function grown(amount: number, percent: string, year: number): number {
  let factor = { numerator: 1n, denominator: 1n };
  for (let at = 1; at < year; at += 1) factor = timesFactor(factor, percentFactor(percent));
  const top = BigInt(amount) * factor.numerator;
  return Number.parseInt(roundLargeQuotient(top, factor.denominator, 'half-up').toString(), 10);
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

/**
 * What a plant costs at the beginning: items with tax, and the subsidy by amount or by tiers.
 *
 * @param grid   whole parts of a unit of money
 * @param watts  of all modules
 */
export function outlayOf(document: QuoteDocument, grid: number, watts: number): Outlay {
  const { price, subsidy, battery } = document;
  const items = price.map(({ item, amount, tax }) => {
    const plain = onGrid(amount, grid);
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
