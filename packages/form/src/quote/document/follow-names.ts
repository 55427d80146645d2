import type { QuoteDocument } from '@unitbook/engine';
import { putAt } from './edit-quote.ts';

/**
 * A changed quote whose uncertainty still means the case that it meant: where that case was given another name, it
 * goes by the new one.
 *
 * @param before  the quote before the change
 */
export function followNames(before: QuoteDocument, now: QuoteDocument): QuoteDocument {
  const meant = before.uncertainty?.policy?.name;
  const [old, own] = [before.policies ?? [], now.policies ?? []];
  if (meant === undefined || now.uncertainty?.policy?.name !== meant || old.length !== own.length) return now;
  const at = old.findIndex(({ name }) => name === meant);
  const name = own[at]?.name;
  return name === undefined || name === meant ? now : putAt(now, ['uncertainty', 'policy', 'name'], name);
}
