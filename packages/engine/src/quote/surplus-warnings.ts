import type { Finding } from '../quantity/index.ts';
import { compared, dividedBy, exactDecimal, exactParts, roundedText } from './exact-decimals.ts';
import { percentFactor, timesFactor } from './factors.ts';
import { quoteFinding } from './findings.ts';
import type { QuoteFacts } from './first-year.ts';
import { moneyText } from './money-text.ts';
import type { Quote } from './quote.ts';
import { rateFactors } from './rate-factors.ts';

/**
 * Surplus that a quote comes to value as dear as a unit bought, or dearer: the first such year, where only the rise
 * that the quote assumes brings it there. What the tariff itself pays is its own matter and is not asked about, and a
 * quote has no other way to value surplus.
 *
 * A unit bought costs what the bills of the year without the plant come to, over the units used in it: with all rises
 * of charges. The comparison is exact; the rate of a year is not rounded to the step of the quote here.
 *
 * @param facts  with what surplus is paid; where that is not known, nothing is asked
 */
export function surplusWarnings(quote: Quote, { surplusRate = null }: QuoteFacts): readonly Finding[] {
  const { input, years, grid, currency } = quote;
  const { surplus } = input.document.escalation;
  if (surplus === undefined || surplusRate === null) return [];
  const own = exactDecimal(surplusRate);
  const factors = rateFactors(input, percentFactor(surplus.percent)).exact;
  for (const [at, { year, before, use }] of years.entries()) {
    const factor = factors[at];
    const price = dividedBy(exactParts(before, grid), exactParts(use, 1000));
    if (factor === undefined || price === null) continue;
    const rate = timesFactor(own, factor);
    if (compared(rate, price) < 0 || compared(own, price) >= 0) continue;
    const values = {
      rate: moneyText(rate, currency),
      year: String(year),
      own: surplusRate,
      price: roundedText(price, 2),
    };
    return [quoteFinding('quote/surplus-at-retail', { path: ['escalation', 'surplus', 'percent'] }, values)];
  }
  return [];
}
