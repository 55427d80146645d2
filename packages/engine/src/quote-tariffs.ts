import type { Finding } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { prepareQuote, type PrepareOptions } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import { chargesThatRise, quoteFinding, type Quote, type QuoteInput } from './quote/index.ts';

/** A quote under one of the tariffs that are open to the customer. */
export interface TariffResult {
  /** Id and name of the tariff, as its document has them. */
  readonly id: string;
  readonly name: string;
  /** null where the quote cannot be billed under it; the findings say why. */
  readonly quote: Quote | null;
  readonly findings: readonly Finding[];
  /** Charges that rise by the quote and that this tariff does not have: their rises do not count here. */
  readonly unknownCharges: readonly string[];
}

/** What tariffs are compared with besides the quote. */
export interface CompareOptions extends PrepareOptions {
  /** Of the quote's own tariff, by ISO 4217; left out: not looked at. */
  readonly currency?: string;
}

/**
 * Work a quote out under other tariffs that the customer could choose: the same house, plant and price, every bill
 * with and without the plant by that tariff. A rise counts for the charges of the same name.
 *
 * @param tariffs  as they are today
 * @param options  as for `prepareQuote`, and the currency of the quote: a tariff in another one is not worked out
 */
export function compareTariffs(
  input: QuoteInput,
  tariffs: readonly Tariff[],
  { currency, ...options }: CompareOptions = {},
): readonly TariffResult[] {
  return tariffs.map((tariff) => {
    const { input: own, unknown } = chargesThatRise(input, tariff.document);
    const { id, name } = tariff.document;
    if (currency !== undefined && currency !== tariff.document.currency) {
      const values = { own: currency, other: tariff.document.currency };
      const findings = [quoteFinding('quote/other-currency', { path: [] }, values)];
      return { id, name, quote: null, findings, unknownCharges: unknown };
    }
    // Another tariff is what is asked for here.
    const document = { ...own.document, tariff: { id } };
    const { value, findings } = prepareQuote({ ...own, document }, tariff, undefined, options);
    const quote = value === null ? null : workOutQuote(value);
    return { id, name, quote, findings, unknownCharges: unknown };
  });
}
