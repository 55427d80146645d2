import { readExtendedTariff, readTariff } from '@unitbook/engine';
import { changed, DEMO_TARIFF } from '../support/demo.ts';
import type { MessageCase } from './message-case.ts';

/** A document that extends the demo, with more in it. */
const own = (more: string): string =>
  `{\n  "extends": "tarumira-domestic",\n  "id": "own",\n  "name": "Own"${more === '' ? '' : `,\n  ${more}`}\n}`;

/** What is found in a document that can extend the demo and some others. */
const extending =
  (text: string, others: Readonly<Record<string, string>> = {}) =>
  () =>
    readExtendedTariff(text, {
      lookUp: (id) => (id === 'tarumira-domestic' ? DEMO_TARIFF : (others[id] ?? null)),
      known: ['tarumira-domestic', 'tarumira-shop'],
    }).findings;

const extendingAs = (id: string, others: Readonly<Record<string, string>> = {}) =>
  extending(own('').replace('"tarumira-domestic"', id), others);

const NO_ID = {
  expected: 'the id of another tariff document, such as "utility-domestic"',
  remedy: 'Write the id under "extends", in small letters, digits and hyphens.',
} as const;
const NO_CHANGE = {
  expected:
    '"version" with "set", with "charge" and "set", with "remove", or with "add" and "after" or "first": true; ' +
    'or "settlement" with "set"',
  remedy: 'Write the change in one of these forms, with no other keys.',
} as const;

const chain = (at: number): string => `{ "extends": "d${at + 1}", "id": "d${at}", "name": "D" }`;
const CHAIN = Object.fromEntries(
  Array.from({ length: 9 }, (_, index) => [`d${index + 1}`, chain(index + 1)]),
);

/** Everything that can be wrong where a tariff extends another. */
export const EXTEND_CASES: readonly MessageCase[] = [
  {
    code: 'tariff/extends-no-id',
    when: 'it is no text',
    make: extendingAs('1'),
    at: '2:14',
    found: 'no text',
    ...NO_ID,
  },
  {
    code: 'tariff/extends-no-id',
    when: 'it is the name of a file',
    make: extendingAs('"../other.json"'),
    at: '2:14',
    found: '"../other.json"',
    ...NO_ID,
  },
  {
    code: 'tariff/extends-unknown',
    when: 'no document has the id',
    make: extendingAs('"tarumira-farm"'),
    at: '2:14',
    found: 'no tariff document with the id "tarumira-farm"',
    expected: 'a document beside this one, or one of tarumira-domestic, tarumira-shop',
    remedy: 'Correct the id, or put the document beside this one in a file of that name.',
  },
  {
    code: 'tariff/extends-unknown',
    when: 'no ids can be named',
    make: () => readExtendedTariff(own(''), { lookUp: () => null }).findings,
    at: '2:14',
    found: 'no tariff document with the id "tarumira-domestic"',
    expected: 'a document that can be found',
    remedy: 'Correct the id, or put the document beside this one in a file of that name.',
  },
  {
    code: 'tariff/extends-itself',
    when: 'it extends itself',
    make: extendingAs('"own"'),
    at: '2:14',
    found: '"own", which extends "own"',
    expected: 'documents of which none comes back to one before',
    remedy: 'Take "extends" out of one of them.',
  },
  {
    code: 'tariff/extends-itself',
    when: 'the other extends it in turn',
    make: extendingAs('"b"', { b: '{ "extends": "own", "id": "b", "name": "B" }' }),
    at: '2:14',
    found: '"own", which extends "b", which extends "own"',
    expected: 'documents of which none comes back to one before',
    remedy: 'Take "extends" out of one of them.',
  },
  {
    code: 'tariff/extends-wrong',
    when: 'a value of the other is wrong',
    make: extendingAs('"b"', {
      b: changed(changed(DEMO_TARIFF, '"tarumira-domestic"', '"b"'), '"divisor": "30"', '"divisor": 30'),
    }),
    at: '2:14',
    found: 'in the document "b", line 37, column 18: the number 30 without quotation marks',
    expected: 'a decimal number written as text, so that no digit is lost on the way',
    remedy: 'Correct that document. Write "30".',
  },
  {
    code: 'tariff/extends-wrong',
    when: 'a document two behind it names a version that is not there',
    make: extendingAs('"b"', {
      b: '{ "extends": "c", "id": "b", "name": "B" }',
      c: own('"changes": [{ "version": "TO-2025", "set": {} }]').replace('"own"', '"c"'),
    }),
    at: '2:14',
    found: 'in the document "c", line 5, column 28: the version "TO-2025"',
    expected: 'one that is there: "TO-2023", "TO-2024"',
    remedy: 'Correct that document. Correct the name.',
  },
  {
    code: 'tariff/extends-too-deep',
    when: 'nine documents stand behind it',
    make: extending(chain(0), CHAIN),
    at: '1:14',
    found: 'more than 8 documents, each of which extends the next',
    expected: 'at most 8',
    remedy: 'Extend a document nearer to the last one.',
  },
  {
    code: 'tariff/extends-other-id',
    when: 'a file holds another document',
    make: extendingAs('"b"', { b: DEMO_TARIFF }),
    at: '2:14',
    found: 'a document with the id "tarumira-domestic" where "b" was looked for',
    expected: 'a file that is called by the id of its document',
    remedy: 'Correct the id under "extends", or the name of that file.',
  },
  {
    code: 'document/missing-key',
    when: 'a document that extends another has no id of its own',
    make: extending('{ "extends": "tarumira-domestic", "name": "Own" }'),
    at: '1:1',
    found: 'no "id"',
    expected: 'its own id',
    remedy: 'Add "id".',
  },
  {
    code: 'tariff/extends-no-change',
    when: 'the changes are no list',
    make: extending(own('"changes": { "version": "TO-2024" }')),
    at: '5:14',
    found: '{ "version": "TO-2024" }',
    ...NO_CHANGE,
  },
  {
    code: 'tariff/extends-no-change',
    when: 'a charge is added, but nothing says where',
    make: extending(own('"changes": [{ "version": "TO-2024", "add": { "id": "rent" } }]')),
    at: '5:15',
    found: '{ "version": "TO-2024", "add": { "id": "rent" } }',
    ...NO_CHANGE,
  },
  {
    code: 'tariff/extends-no-change',
    when: 'what is set is no object',
    make: extending(own('"changes": [{ "version": "TO-2024", "set": "6" }]')),
    at: '5:15',
    found: '{ "version": "TO-2024", "set": "6" }',
    ...NO_CHANGE,
  },
  {
    code: 'tariff/extends-unknown-name',
    when: 'no version has the name',
    make: extending(own('"changes": [{ "version": "TO-2025", "set": { "clause": "TO-2024 cl. 1" } }]')),
    at: '5:28',
    found: 'the version "TO-2025"',
    expected: 'one that is there: "TO-2023", "TO-2024"',
    remedy: 'Correct the name.',
  },
  {
    code: 'tariff/extends-unknown-name',
    when: 'no charge of the version has the id',
    make: extending(
      own('"changes": [{ "version": "TO-2024", "charge": "rent", "set": { "rate": "1.00" } }]'),
    ),
    at: '5:49',
    found: 'the charge "rent"',
    expected: 'one that is there: "fixed", "energy", "minimum", "fuel", "tax", "subsidy"',
    remedy: 'Correct the name.',
  },
  {
    code: 'tariff/extends-unknown-name',
    when: 'a charge that a change before took out is taken out again',
    make: extending(
      own(
        '"changes": [{ "version": "TO-2024", "remove": "fuel" }, { "version": "TO-2024", "remove": "fuel" }]',
      ),
    ),
    at: '5:93',
    found: 'the charge "fuel"',
    expected: 'one that is there: "fixed", "energy", "minimum", "tax", "subsidy"',
    remedy: 'Correct the name.',
  },
  {
    code: 'tariff/extends-unknown-name',
    when: 'no settlement begins on the day',
    make: extending(own('"changes": [{ "settlement": "2025-04-01", "set": { "carry": null } }]')),
    at: '5:31',
    found: 'the settlement "2025-04-01"',
    expected: 'one that is there: "2021-04-01"',
    remedy: 'Correct the name.',
  },
  {
    code: 'tariff/extends-nothing-there',
    when: 'a key that is not there is taken out of a charge',
    make: extending(
      own('"changes": [{ "version": "TO-2024", "charge": "fuel", "set": { "scaledBy": null } }]'),
    ),
    at: '5:78',
    found: 'null for "scaledBy", which is not there',
    expected: 'a key to take out: "id", "label", "kind", "clause", "on", "rate"',
    remedy: 'Correct the key, or leave it out.',
  },
  {
    code: 'document/extends-another',
    when: 'it is read without the document it extends',
    make: () => readTariff(own('')).findings,
    at: '2:14',
    found: 'a document that extends "tarumira-domestic", which was not opened with it',
    expected: 'a whole tariff document',
    remedy: 'Check it with the command, which finds the other document, or write it whole.',
  },
];
