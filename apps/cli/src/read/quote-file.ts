import { quoteSchema, readDocument, readQuote, type QuoteDocument, type QuoteInput } from '@unitbook/engine';
import { about } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { placedIn, type Placed } from './placed.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** Read a quote document. */
export async function readQuoteFile(io: CommandIo, path: string): Promise<Placed<QuoteInput>> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-quote-1');
  if (text === null)
    return { value: null, place: (later) => about(subject, later), findings: about(subject, findings) };
  const { value, findings: own } = readQuote(text);
  // Read once more for its lines and columns: bills and doubts are told of them later.
  const { source } = readDocument<QuoteDocument>(text, quoteSchema);
  return { value, place: placedIn(subject, source), findings: about(subject, own) };
}
