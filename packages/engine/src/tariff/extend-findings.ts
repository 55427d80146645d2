import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

const quoted = (text: string | undefined): string => `"${text ?? ''}"`;

/** Everything that can be wrong where a tariff document extends another, by code. */
export const EXTEND_FINDINGS = {
  'tariff/extends-no-id': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected: 'the id of another tariff document, such as "utility-domestic"',
      remedy: 'Write the id under "extends", in small letters, digits and hyphens.',
    }),
  },
  'tariff/extends-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `no tariff document with the id ${quoted(v['id'])}`,
      expected: v['known']
        ? `a document beside this one, or one of ${v['known']}`
        : 'a document that can be found',
      remedy: 'Correct the id, or put the document beside this one in a file of that name.',
    }),
  },
  'tariff/extends-itself': {
    severity: 'error',
    text: (v) => ({
      found: v['chain'] ?? '',
      expected: 'documents of which none comes back to one before',
      remedy: 'Take "extends" out of one of them.',
    }),
  },
  'tariff/extends-too-deep': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${v['most'] ?? ''} documents, each of which extends the next`,
      expected: `at most ${v['most'] ?? ''}`,
      remedy: 'Extend a document nearer to the last one.',
    }),
  },
  'tariff/extends-wrong': {
    severity: 'error',
    text: (v) => ({
      found: `in the document ${quoted(v['id'])}, line ${v['line'] ?? ''}, column ${v['column'] ?? ''}: ${v['found'] ?? ''}`,
      expected: v['expected'] ?? '',
      remedy: `Correct that document. ${v['remedy'] ?? ''}`,
    }),
  },
  'tariff/extends-other-id': {
    severity: 'error',
    text: (v) => ({
      found: `a document with the id ${quoted(v['other'])} where ${quoted(v['id'])} was looked for`,
      expected: 'a file that is called by the id of its document',
      remedy: 'Correct the id under "extends", or the name of that file.',
    }),
  },
  'tariff/extends-no-change': {
    severity: 'error',
    text: (v) => ({
      found: v['found'] ?? '',
      expected:
        '"version" with "set", with "charge" and "set", with "remove", or with "add" and "after" or "first": true; or "settlement" with "set"',
      remedy: 'Write the change in one of these forms, with no other keys.',
    }),
  },
  'tariff/extends-unknown-name': {
    severity: 'error',
    text: (v) => ({
      found: `the ${v['what'] ?? ''} ${quoted(v['name'])}`,
      expected: `one that is there: ${v['known'] ?? ''}`,
      remedy: 'Correct the name.',
    }),
  },
  'tariff/extends-nothing-there': {
    severity: 'error',
    text: (v) => ({
      found: `null for ${quoted(v['key'])}, which is not there`,
      expected: `a key to take out: ${v['known'] ?? ''}`,
      remedy: 'Correct the key, or leave it out.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a document that extends another. */
type ExtendFindingCode = keyof typeof EXTEND_FINDINGS;

/** Make a finding about a document that extends another. */
export const extendFinding: (
  code: ExtendFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<ExtendFindingCode>(EXTEND_FINDINGS);
