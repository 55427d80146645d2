import { projectionText, type Payback, type Quote, type TariffResult } from '@unitbook/engine';
import { writingFor } from '../../writing/writing.ts';
import type { Amount } from '../charts/chart-data.ts';
import { NONE, type ChartTable } from '../charts/table.ts';
import { paybackWords } from './answer-view.ts';
import type { QuoteWriting } from './quote-writing.ts';

const TITLE = 'The same house, plant and price under other tariffs';

/** An amount as a column has it: without its sign. */
function columnAt(amount: number, writing: QuoteWriting): Amount {
  return { ...writing.amountAt(amount), text: writing.column(amount) };
}

function paybackAt(payback: Payback, writing: QuoteWriting): Amount | string {
  const text = paybackWords(payback, writing);
  const { first } = payback;
  return first === null ? text : { at: first, text, decimal: projectionText(first, 2) };
}

function lineOf(name: string, { years, measures, grid }: Quote, writing: QuoteWriting) {
  const own = writing.atGrid(grid);
  const [first] = years;
  return [
    name,
    columnAt(first?.before ?? 0, own),
    columnAt(first?.after ?? 0, own),
    columnAt(first?.saving ?? 0, own),
    paybackAt(measures.simple, own),
  ];
}

/** Why a tariff is not compared; '' where it is. */
function reasonOf({ quote, findings }: TariffResult, currency: string): string {
  if (quote !== null) return quote.currency === currency ? '' : `its bills are in ${quote.currency}`;
  const [first] = findings.filter(({ severity }) => severity === 'error');
  return first === undefined ? 'it cannot be billed' : first.found;
}

function notesOf(result: TariffResult, currency: string): readonly string[] {
  const { name, unknownCharges } = result;
  const reason = reasonOf(result, currency);
  const rises = unknownCharges.join(', ');
  return [
    ...(reason === '' ? [] : [`${name} is not compared: ${reason}.`]),
    ...(rises === ''
      ? []
      : [`${name} has no charge ${rises}: what rises there by the quote does not count.`]),
  ];
}

/**
 * A quote under its own tariff and others that are open to the customer.
 *
 * @param named  the tariff of the quote by its name, and the others worked out
 */
export function tariffTable(
  quote: Quote,
  named: { readonly name: string; readonly others: readonly TariffResult[] },
  writing: QuoteWriting,
): ChartTable {
  const { currency } = quote;
  const lines = named.others.map((one) =>
    one.quote === null || reasonOf(one, currency) !== ''
      ? [one.name, 'not compared', NONE, NONE, NONE]
      : lineOf(one.name, one.quote, writing),
  );
  return {
    caption: `${TITLE}, first year; money in ${writingFor(quote.input.document.locale, currency).sign}`,
    heads: ['Tariff', 'Bills before', 'Bills after', 'Saving', 'Payback'],
    lines: [lineOf(named.name, quote, writing), ...lines],
    notes: named.others.flatMap((one) => notesOf(one, currency)),
  };
}
