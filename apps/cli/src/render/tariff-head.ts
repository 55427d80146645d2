import type { TariffDocument } from '@unitbook/engine';
import { headEntry } from './head-entry.ts';
import { PAGE_WIDTH } from './text.ts';

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
