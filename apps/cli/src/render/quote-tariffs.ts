import type { Quote, TariffDocument, TariffResult } from '@unitbook/engine';
import { markMeans, markOf } from './quote-crossed.ts';
import { quoteWriter, type QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, plainText, wrap } from './text.ts';

const NAME_WIDTH = 24;

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

/** The rows of a tariff: its name on as many lines as it takes, its figures behind the last. */
function rowsOf(name: string, quote: Quote | null, all: QuoteWriter): readonly (readonly string[])[] {
  // Another tariff can be in other parts of a coin.
  const { money, years } = quote === null ? all : quoteWriter(quote, all.notation);
  const [first] = quote?.years ?? [];
  const cells =
    quote === null || first === undefined
      ? ['NOT BILLED']
      : [
          money(first.before),
          money(first.after),
          money(first.saving),
          `${years(quote.measures.simple.first)}${markOf(quote.measures.simple)}`,
          money(quote.measures.netPresentValue),
        ];
  const lines = wrap(plainText(name), NAME_WIDTH);
  return lines.map((line, at) => [at === 0 ? line : `  ${line}`, ...(at === lines.length - 1 ? cells : [])]);
}

/** Why a tariff is not billed, and which rises it does not have. */
function notes({ name, findings, quote, unknownCharges }: TariffResult): readonly string[] {
  const [first] = findings.filter(({ severity }) => severity === 'error');
  const why = quote === null && first !== undefined ? [`${plainText(name)}: ${first.found}.`] : [];
  const rises =
    unknownCharges.length === 0
      ? []
      : [`${plainText(name)} has no charge ${unknownCharges.join(', ')}: no rise there.`];
  return [...why, ...rises];
}

/** The quote under the tariff of today and others that the customer could choose. */
export function quoteTariffs(
  quote: Quote,
  { tariff, others }: { readonly tariff: TariffDocument; readonly others: readonly TariffResult[] },
  writer: QuoteWriter,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Tariff'], side: 'left' },
    right('Bills', 'before'),
    right('Bills', 'after'),
    right('Saving', 'year 1'),
    right('Payback'),
    right('Value', 'now'),
  ];
  const body = [
    ...rowsOf(tariff.name, quote, writer),
    ...others.flatMap((one) => rowsOf(one.name, one.quote, writer)),
  ];
  const words = [
    'The same house, plant and price under each tariff, with it and without it. Compare the bills after, not only the ' +
      `saving: a dear tariff saves more and costs more.${markMeans(body)}`,
    ...others.flatMap(notes),
  ];
  return [...renderTable(columns, { body }), ...words.flatMap((line) => wrap(line, PAGE_WIDTH))];
}
