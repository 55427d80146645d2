import type { Finding } from '@unitbook/engine';
import { HOUSEHOLD_FORMAT, type Household } from './household.ts';
import { HOUSEHOLD } from './household-shape.ts';
import { isFields, misfits } from './shape.ts';

/** What a text that should be a saved household turned out to be. */
export type HouseholdText =
  | { readonly kind: 'household'; readonly household: Household }
  | { readonly kind: 'other-version'; readonly found: string }
  /** No document at all, and why, in words. */
  | { readonly kind: 'unreadable'; readonly reason: string }
  | { readonly kind: 'damaged'; readonly findings: readonly Finding[] };

function unreadable(text: string): HouseholdText {
  const reason =
    text.trim() === ''
      ? 'It is empty.'
      : /^\s*[{[]/.test(text)
        ? 'It is damaged or cut off.'
        : 'It is no book saved from this page.';
  return { kind: 'unreadable', reason };
}

/**
 * Read a saved household. Only its shape is checked: what was typed in it may be half-typed or wrong, and
 * stays as it is. The engine's own reader wants every number to be one, so it would refuse half of a book.
 *
 * @param text  the file, whole
 */
export function readHousehold(text: string): HouseholdText {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return unreadable(text);
  }
  const { format, tariff } = isFields(document) ? document : {};
  if (typeof format === 'string' && format !== HOUSEHOLD_FORMAT)
    return { kind: 'other-version', found: format };
  const findings = misfits(document, HOUSEHOLD, []);
  if (isFields(document) && !isFields(tariff)) findings.push(...misfits(tariff, [], ['tariff']));
  return findings.length > 0
    ? { kind: 'damaged', findings }
    : { kind: 'household', household: document as Household };
}
