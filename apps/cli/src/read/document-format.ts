import { textUnder, type Finding } from '@unitbook/engine';
import { commandFinding } from '../findings.ts';

/** The documents that a command reads: what they are called, and the option that takes each. */
const DOCUMENTS = {
  'unitbook-tariff-1': { name: 'a tariff', option: 'bill --tariff' },
  'unitbook-account-1': { name: 'an account', option: 'bill --account' },
  'unitbook-readings-1': { name: 'readings', option: 'bill --readings' },
  'unitbook-household-1': { name: 'a household', option: 'bill --household' },
  'unitbook-plant-1': { name: 'a plant', option: 'plant --plant' },
  'unitbook-quote-1': { name: 'a quote', option: 'quote --quote' },
  'unitbook-flyer-1': { name: 'a flyer', option: 'quote --flyer' },
  'unitbook-check-1': { name: 'printed bills to check', option: 'check --bills' },
  'unitbook-dispute-1': { name: 'rules for disputes', option: 'check --dispute' },
  'unitbook-columns-1': { name: 'what the columns of a table are', option: 'readings FILE --columns' },
  'unitbook-cases-1': { name: 'worked cases', option: 'tariff FILE --cases' },
} as const;

/** The format of a document, as its text says it. */
export type DocumentFormat = keyof typeof DOCUMENTS;

function isFormat(value: string | null): value is DocumentFormat {
  return value !== null && Object.hasOwn(DOCUMENTS, value);
}

/**
 * Say that a file is another document of ours than the one that is wanted: better than all that is then
 * missing in it and unknown.
 *
 * @returns null where it is not
 */
export function otherDocument(text: string, wanted: DocumentFormat): Finding | null {
  const format = textUnder(text, 'format');
  if (!isFormat(format) || format === wanted) return null;
  const { name, option } = DOCUMENTS[format];
  return commandFinding(
    'command/other-document',
    { path: [] },
    { name, wanted: DOCUMENTS[wanted].name, option },
  );
}
