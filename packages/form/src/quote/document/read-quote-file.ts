import type { Finding, QuoteDocument } from '@unitbook/engine';
import { isFields, misfits } from '../../household/shape.ts';
import { QUOTE_FORMAT } from './blank-quote.ts';
import { QUOTE } from './quote-shape.ts';

/** A text opened as a quote, or why it cannot be. */
export type QuoteFile =
  | { readonly kind: 'quote'; readonly quote: QuoteDocument }
  | { readonly kind: 'refused'; readonly reason: string; readonly findings: readonly Finding[] };

const refused = (reason: string, findings: readonly Finding[] = []): QuoteFile => ({
  kind: 'refused',
  reason,
  findings,
});

/** Of a text of another kind: what it is, and where it is opened. */
function otherFormat(format: unknown): QuoteFile {
  if (typeof format !== 'string')
    return refused(`It does not say what it is: a quote begins with "format": "${QUOTE_FORMAT}".`);
  const [, kind] = /^unitbook-(tariff|household|readings|book|plant)-/.exec(format) ?? [];
  if (kind !== undefined) return refused(`It is a ${kind}, not a quote. Expected: "${QUOTE_FORMAT}".`);
  return refused(
    `It is in the form “${format}”; this page opens “${QUOTE_FORMAT}”. Open it with the version that wrote it.`,
  );
}

/**
 * Open the text of a saved quote. Numbers that are half typed or wrong are opened as they are, and told of
 * beside their fields; what is not of the right form is refused, whole.
 *
 * @example
 * readQuoteFile('{').kind //=> "refused"
 */
export function readQuoteFile(text: string): QuoteFile {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return refused('It is not JSON, or not whole. Save it once more where it comes from.');
  }
  if (!isFields(document) || document['format'] !== QUOTE_FORMAT)
    return otherFormat(isFields(document) ? document['format'] : undefined);
  const findings = misfits(document, QUOTE, []);
  if (findings.length > 0) return refused('It is not a whole quote:', findings);
  return { kind: 'quote', quote: document as unknown as QuoteDocument };
}
