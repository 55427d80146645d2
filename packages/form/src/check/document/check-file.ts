import { readCheck, type CheckDocument, type Finding } from '@unitbook/engine';
import { isFields } from '../../household/shape.ts';
import { checkMisfits } from './check-shape.ts';
import { inOrder } from './edit-bills.ts';
import { CHECK_FORMAT, type CheckGround, type TypedCheck } from './typed-check.ts';

/** A text opened as a check, or why it cannot be. */
export type CheckFile =
  | { readonly kind: 'check'; readonly check: TypedCheck }
  | { readonly kind: 'refused'; readonly reason: string; readonly findings: readonly Finding[] };

const refused = (reason: string, findings: readonly Finding[] = []): CheckFile => ({
  kind: 'refused',
  reason,
  findings,
});

/** Of a text of another kind: what it is, and where it is opened. */
function otherFormat(format: unknown): CheckFile {
  if (typeof format !== 'string')
    return refused(`It does not say what it is. Expected: "format": "${CHECK_FORMAT}" at its beginning.`);
  const where =
    format === 'unitbook-household-1'
      ? 'A household is opened in the book.'
      : 'Open it where it belongs, or with the version that wrote it.';
  return refused(`It is in the form “${format}”. Expected: “${CHECK_FORMAT}”. ${where}`);
}

function checkOf(document: CheckDocument & { readonly tariff: CheckGround['tariff'] }): TypedCheck {
  const { tariff, account, readings = [], bills, connected = '', opening } = document;
  return {
    ground: { tariff, account, readings },
    bills: inOrder(bills.map((bill, at) => ({ key: String(at + 1), bill }))),
    connected,
    isOpeningKnown: opening !== 'unknown',
  };
}

/**
 * Open the text of a check's file. Numbers and days that are half typed or wrong are opened as they are, and told of
 * beside their fields; what is not of the right form, or has keys that would not be looked at, is refused whole.
 *
 * @example
 * readCheckFile('{').kind //=> "refused"
 */
export function readCheckFile(text: string): CheckFile {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return refused('It is not JSON, or not whole. Save it once more where it comes from.');
  }
  if (!isFields(document) || document['format'] !== CHECK_FORMAT)
    return otherFormat(isFields(document) ? document['format'] : undefined);
  const unknown = readCheck(text).findings.filter(({ code }) => code === 'document/unknown-key');
  const findings = [...checkMisfits(document), ...unknown];
  if (findings.length > 0) return refused('It is not a check as this page reads it:', findings);
  return { kind: 'check', check: checkOf(document as never) };
}

/** The document of a check: what is printed, and what it is checked against. */
export type WrittenCheck = CheckDocument & { readonly format: typeof CHECK_FORMAT };

/**
 * A check as a document.
 *
 * @param bills   plain as far as they can be read; `read-typed-bill.ts` makes them
 * @param ground  what they are checked against
 */
export function checkDocument(
  { connected, isOpeningKnown }: TypedCheck,
  bills: CheckDocument['bills'],
  { tariff, account, readings }: CheckGround,
): WrittenCheck {
  return {
    format: CHECK_FORMAT,
    tariff,
    account,
    ...(readings.length === 0 ? {} : { readings }),
    ...(connected.trim() === '' ? {} : { connected: connected.trim() }),
    ...(isOpeningKnown ? {} : { opening: 'unknown' }),
    bills,
  };
}
