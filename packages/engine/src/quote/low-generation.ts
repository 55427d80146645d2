import { combinedSigma, exceededYield } from './finance/index.ts';
import { firstYear } from './first-year.ts';
import { rateOf } from './measures.ts';
import type { Quote } from './quote.ts';

/** The chance, in percent, that more is made than in the low case: "P90". */
const LOW_CASE = 90;

/** What a plant makes in the low case, in whole thousandths of a unit that are whole units. */
export interface LowGeneration {
  /** In a first year whose plant and site make as little as is exceeded with a chance of 90 %. */
  readonly mean: number;
  /** The same of a single year, its weather in it; null: the quote does not say how years differ. */
  readonly year: number | null;
}

/**
 * The units of a low case, P90, of the first year: what is exceeded with a chance of 90 % where generation is normally
 * distributed, by the sigma that the quote names. Rounded half-up to whole units: it is a statistic, and no amount.
 *
 * @returns null where the quote does not say how sure its generation is
 */
export function lowGeneration(quote: Quote): LowGeneration | null {
  const { uncertainty } = quote.input.document;
  if (uncertainty === undefined) return null;
  const { generation } = firstYear(quote);
  const sigma = rateOf(uncertainty.generation);
  const low = (one: number): number =>
    Math.max(0, Math.floor(exceededYield({ middle: generation / 1000, sigma: one }, LOW_CASE) + 0.5)) * 1000;
  const { yearToYear } = uncertainty;
  return {
    mean: low(sigma),
    year: yearToYear === undefined ? null : low(combinedSigma([sigma, rateOf(yearToYear)])),
  };
}
