import type { Finding } from '@unitbook/engine';
import { commandFinding } from '../findings.ts';

/** The documents that a command reads: what they are called, and the option that takes each. */
const DOCUMENTS = {
  'unitbook-tariff-1': { name: 'a tariff', option: '--tariff' },
  'unitbook-account-1': { name: 'an account', option: '--account' },
  'unitbook-readings-1': { name: 'readings', option: '--readings' },
  'unitbook-household-1': { name: 'a household', option: '--household' },
} as const;

/** The format of a document, as its text says it. */
export type DocumentFormat = keyof typeof DOCUMENTS;

function isFormat(value: unknown): value is DocumentFormat {
  return typeof value === 'string' && Object.hasOwn(DOCUMENTS, value);
}

/** The format that a text says it has; null where it says none that we know. */
function formatOf(text: string): DocumentFormat | null {
  try {
    const document: unknown = JSON.parse(text);
    const format =
      typeof document === 'object' && document !== null && 'format' in document && document.format;
    return isFormat(format) ? format : null;
  } catch {
    return null;
  }
}

/**
 * Say that a file is another document of ours than the one that is wanted: better than all that is then
 * missing in it and unknown.
 *
 * @returns null where it is not
 */
export function otherDocument(text: string, wanted: DocumentFormat): Finding | null {
  const format = formatOf(text);
  if (format === null || format === wanted) return null;
  const { name, option } = DOCUMENTS[format];
  return commandFinding(
    'command/other-document',
    { path: [] },
    { name, wanted: DOCUMENTS[wanted].name, option },
  );
}
