import type { TariffDocument } from '@unitbook/engine';
import { atLeft, PAGE_WIDTH, plainText, wrap } from './text.ts';

const LABEL_WIDTH = 11;

/** An entry of the head of a page: a label, and lines of text beside it. */
function headEntry(label: string, text: string): readonly string[] {
  return wrap(plainText(text), PAGE_WIDTH - LABEL_WIDTH).map(
    (line, index) => atLeft(index === 0 ? label : '', LABEL_WIDTH) + line,
  );
}

/**
 * The head of a page about a tariff.
 *
 * @param title    what the page shows
 * @param entries  label and text of what it is worked out from
 */
export function tariffHead(
  document: TariffDocument,
  title: string,
  entries: readonly (readonly [string, string])[],
): readonly string[] {
  const invented = document.invented === true ? ' (an invented example)' : '';
  return [
    `UNITBOOK   ${title}`,
    '='.repeat(PAGE_WIDTH),
    ...headEntry('Tariff', `${document.name}; ${document.supplier}${invented}`),
    ...entries.flatMap(([label, text]) => headEntry(label, text)),
    ...headEntry('Amounts', `in ${document.currency}; 1 unit is 1 kWh`),
  ];
}
