import {
  prepareQuote,
  readQuote,
  workOutQuote,
  type PreparedQuote,
  type Quote,
  type QuoteDocument,
  type QuoteYear,
} from '@unitbook/engine';
import demoQuoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { demoTariff } from './demo.ts';

/** The demo quote with some sections replaced, worked out under the demo tariff. */
export function workedQuote(sections: Readonly<Record<string, unknown>> = {}, withSubsidy = true): Quote {
  return workOutQuote(preparedQuote(sections), withSubsidy);
}

/** The demo quote with some sections replaced, ready to be billed under a tariff. */
export function preparedQuote(
  sections: Readonly<Record<string, unknown>> = {},
  tariff = demoTariff(),
): PreparedQuote {
  const document = { ...(JSON.parse(demoQuoteText) as Record<string, unknown>), ...sections };
  const read = readQuote(JSON.stringify(document));
  const prepared = read.value === null ? read : prepareQuote(read.value, tariff);
  if (prepared.value === null || !('biller' in prepared.value))
    throw new Error(prepared.findings.map(({ code, found }) => `${code}: ${found}`).join('; '));
  return prepared.value;
}

/** A quote of which the document says something else, and nothing is worked out anew. */
export function sayingQuote(quote: Quote, sections: Partial<QuoteDocument>): Quote {
  const { input } = quote;
  return { ...quote, input: { ...input, document: { ...input.document, ...sections } } };
}

/** A quote whose first year came out otherwise. */
export function firstYearQuote(quote: Quote, first: Partial<QuoteYear>): Quote {
  return { ...quote, years: quote.years.map((year, at) => (at === 0 ? { ...year, ...first } : year)) };
}
