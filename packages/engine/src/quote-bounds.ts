import type { Outcome } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { ALL, NOTHING, prepareQuote } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import type { Quote, QuoteInput } from './quote/index.ts';

/** A quote at both ends of what own use can be. */
export interface QuoteBounds {
  /** Nothing is used as it is made. */
  readonly low: Quote;
  /** As much as use and generation of each month allow. */
  readonly high: Quote;
}

/**
 * Work a quote out at both ends of own use, where neither a share nor a profile tells it. The truth lies between
 * them; where surplus is paid better than units cost, the low end of own use is the high end of the saving.
 *
 * A battery of the document counts at both ends, by the mean day of each month.
 *
 * @param input  its own share is not looked at
 * @returns      null with findings where the quote cannot be billed
 */
export function quoteBounds(input: QuoteInput, tariff: Tariff): Outcome<QuoteBounds | null> {
  const [low, high] = [NOTHING, ALL].map((share) => prepareQuote({ ...input, share }, tariff));
  if (low?.value == null || high?.value == null) {
    const findings = (low?.value == null ? low : high)?.findings ?? [];
    return { value: null, findings };
  }
  const value = { low: workOutQuote(low.value), high: workOutQuote(high.value) };
  return { value, findings: low.findings };
}
