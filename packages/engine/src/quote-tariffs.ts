import type { Finding } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { prepareQuote, type PrepareOptions } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';
import { chargesThatRise, type Quote, type QuoteInput } from './quote/index.ts';

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

/**
 * Work a quote out under other tariffs that the customer could choose: the same house, plant and price, every bill
 * with and without the plant by that tariff. A rise counts for the charges of the same name.
 *
 * @param tariffs  as they are today
 * @param options  as for `prepareQuote`
 */
export function compareTariffs(
  input: QuoteInput,
  tariffs: readonly Tariff[],
  options: PrepareOptions = {},
): readonly TariffResult[] {
  return tariffs.map((tariff) => {
    const { input: own, unknown } = chargesThatRise(input, tariff.document);
    const { id, name } = tariff.document;
    // Another tariff is what is asked for here.
    const document = { ...own.document, tariff: { id } };
    const { value, findings } = prepareQuote({ ...own, document }, tariff, undefined, options);
    const quote = value === null ? null : workOutQuote(value);
    return { id, name, quote, findings, unknownCharges: unknown };
  });
}
