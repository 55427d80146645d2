import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

const quoted = (text: string | undefined): string => `"${text ?? ''}"`;

/** Everything that can be wrong with the form of a JSON document, by code. */
export const DOCUMENT_FINDINGS = {
  'document/not-json': {
    severity: 'error',
    text: (v) => ({
      found: `the file is not JSON here: ${v['problem'] ?? ''}`,
      expected: 'one JSON object',
      remedy: 'Correct the text at this place; nothing after it could be read.',
    }),
  },
  'document/duplicate-key': {
    severity: 'error',
    text: (v) => ({
      found: `the key ${quoted(v['key'])} stands here a second time`,
      expected: 'each key once',
      remedy: 'Keep one of the two; a reader could take either.',
    }),
  },
  'document/number-not-text': {
    severity: 'error',
    text: (v) => ({
      found: `the number ${v['raw'] ?? ''} without quotation marks`,
      expected: 'a decimal number written as text, so that no digit is lost on the way',
      remedy: `Write ${quoted(v['raw'])}.`,
    }),
  },
  'document/not-a-decimal': {
    severity: 'error',
    text: (v) => ({
      found: quoted(v['value']),
      expected: 'a decimal number: digits, one point at most, no grouping, no exponent',
      remedy: 'Write it like "3.10" or "-1.50".',
    }),
  },
  'document/unknown-key': {
    severity: 'error',
    text: (v) => ({
      found: `the key ${quoted(v['key'])}, which means nothing here`,
      expected: `one of ${v['allowed'] ?? ''}`,
      remedy: 'Correct the spelling or take the key out.',
    }),
  },
  'document/missing-key': {
    severity: 'error',
    text: (v) => ({
      found: `no ${quoted(v['key'])}`,
      expected: v['meaning'] ?? '',
      remedy: `Add ${quoted(v['key'])}.`,
    }),
  },
  'document/wrong-value': {
    severity: 'error',
    text: (v) => ({
      found: v['value'] ?? '',
      expected: v['expected'] === '' ? 'a text of another form' : (v['expected'] ?? ''),
      remedy: 'Write what is expected.',
    }),
  },
  'document/too-large': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: `at most ${v['most'] ?? ''}`,
      remedy: 'Check that it is the right file. Beyond this place nothing was checked.',
    }),
  },
  'document/forbidden-key': {
    severity: 'error',
    text: (v) => ({
      found: `the key ${quoted(v['key'])}, which means something to programs themselves`,
      expected: 'another name',
      remedy: 'Take it out or give it another name. Nothing else in the document was checked.',
    }),
  },
  'document/more-problems': {
    severity: 'error',
    text: (v) => ({
      found: v['count'] === '1' ? '1 more problem' : `${v['count'] ?? ''} more problems`,
      expected: 'none',
      remedy: 'Correct those that are listed, then check the document again.',
    }),
  },
  'document/extends-another': {
    severity: 'error',
    text: (v) => ({
      found: `a document that extends ${quoted(v['id'])}, which was not opened with it`,
      expected: 'a whole tariff document',
      remedy: 'Check it with the command, which finds the other document, or write it whole.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about the form of a document. */
export type DocumentFindingCode = keyof typeof DOCUMENT_FINDINGS;

/** Make a finding about the form of a document. */
export const documentFinding: (
  code: DocumentFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<DocumentFindingCode>(DOCUMENT_FINDINGS);
