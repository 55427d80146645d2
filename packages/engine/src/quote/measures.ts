import { decimalPlaces, decimalToWhole, roundLargeQuotient } from '../quantity/index.ts';
import {
  benefitCostRatio,
  discountedPayback,
  internalRates,
  levelisedCost,
  modifiedInternalRate,
  simplePayback,
} from './finance/index.ts';
import type { QuoteMeasures, QuoteMonth, QuoteYear } from './quote.ts';

/**
 * Flows of whole coins discounted to the first day, exact, rounded half-up once to whole coins.
 *
 * @param percent  of discount a year, above −100
 * @param flows    one a year, the first now
 * @example
 * exactPresentValue('25', [-100, 50, 100]) //=> 4
 */
export function exactPresentValue(percent: string, flows: readonly number[]): number {
  const places = decimalPlaces(percent);
  const hundred = BigInt(100 * 10 ** places);
  const growth = hundred + BigInt(decimalToWhole(percent, places));
  let top = 0n;
  let bottom = 1n;
  for (const flow of [...flows].reverse()) {
    // (top / bottom) ÷ (growth / hundred) + flow
    top = top * hundred + BigInt(flow) * bottom * growth;
    bottom *= growth;
  }
  return Number.parseInt(roundLargeQuotient(top, bottom, 'half-up').toString(), 10);
}

/** The discount rate as a part of one. */
export function rateOf(percent: string): number {
  const places = decimalPlaces(percent);
  return decimalToWhole(percent, places) / (100 * 10 ** places);
}

/** What the years of a quote come to. */
export function measuresOf(
  years: readonly QuoteYear[],
  {
    months,
    netPrice,
    percent,
    grid,
  }: {
    readonly months: readonly QuoteMonth[];
    readonly netPrice: number;
    readonly percent: string;
    readonly grid: number;
  },
): QuoteMeasures {
  const flows = [0 - netPrice, ...years.map(({ net }) => net)];
  const rate = rateOf(percent);
  const costs = [netPrice, ...years.map(({ cost }) => cost)].map((cost) => cost / grid);
  const bills = months.map(({ after }) => after);
  const simple = simplePayback(flows);
  return {
    simple,
    discounted: discountedPayback(rate, flows),
    netPresentValue: exactPresentValue(percent, flows),
    rates: internalRates(flows),
    modifiedRate: modifiedInternalRate(flows, { finance: rate, reinvestment: rate }),
    levelisedCost: levelisedCost(rate, {
      costs,
      energy: [0, ...years.map(({ generation }) => generation / 1000)],
    }),
    benefitCost: benefitCostRatio(rate, {
      benefits: [0, ...years.map(({ saving }) => saving / grid)],
      costs,
    }),
    smallestBill: Math.min(...bills),
    largestBill: Math.max(...bills),
    lifeNet: simple.cumulative.at(-1) ?? 0,
  };
}
