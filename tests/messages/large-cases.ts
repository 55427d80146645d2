import { readTariff } from '@unitbook/engine';
import { changed, DEMO_TARIFF } from '../support/demo.ts';
import { changedTariff } from './changed-tariff.ts';
import type { MessageCase } from './message-case.ts';

const TOO_LARGE_REMEDY = 'Check that it is the right file. Beyond this place nothing was checked.';

/** Documents that are larger than is read, or have keys that no document can have. */
export const LARGE_CASES: readonly MessageCase[] = [
  {
    code: 'document/too-large',
    when: 'a text is too long',
    make: () => readTariff(' '.repeat(4_000_001)).findings,
    at: '1:1',
    found: 'more than 4000000 characters',
    expected: 'at most 4000000',
    remedy: TOO_LARGE_REMEDY,
  },
  {
    code: 'document/too-large',
    when: 'brackets stand too deep',
    make: () => readTariff(`{\n"a": ${'['.repeat(300)}`).findings,
    at: '2:205',
    found: 'more than 200 brackets within each other',
    expected: 'at most 200',
    remedy: TOO_LARGE_REMEDY,
  },
  {
    code: 'document/too-large',
    when: 'a list of a tariff is too long',
    make: () => readTariff(`{\n"versions": [${'0,'.repeat(1000)}0]}`).findings,
    at: '2:13',
    found: '1001 items in "versions"',
    expected: 'at most 1000',
    remedy: TOO_LARGE_REMEDY,
  },
  {
    code: 'document/too-large',
    when: 'a name is too long',
    make: changedTariff('"month": {\n      "rule"', `"${'m'.repeat(65)}": {\n      "rule"`),
    at: '34:74',
    found: 'a name of 65 characters',
    expected: 'at most 64',
    remedy: TOO_LARGE_REMEDY,
  },
  {
    code: 'document/forbidden-key',
    when: 'a key is one that every object has',
    make: changedTariff('"currency": "INR"', '"__proto__": { "id": "other" },\n  "currency": "INX"'),
    at: '8:16',
    found: 'the key "__proto__", which means something to programs themselves',
    expected: 'another name',
    remedy: 'Take it out or give it another name. Nothing else in the document was checked.',
  },
  {
    code: 'document/more-problems',
    when: 'a document has one problem more than are listed',
    make: () => readTariff(changed(DEMO_TARIFF, '"currency"', `${keys(1001)} "currency"`)).findings,
    isAmongOthers: true,
    at: '201:2',
    found: '1 more problem',
    expected: 'none',
    remedy: 'Correct those that are listed, then check the document again.',
  },
  {
    code: 'document/more-problems',
    when: 'a document has many problems more than are listed',
    make: () => readTariff(changed(DEMO_TARIFF, '"currency"', `${keys(2500)} "currency"`)).findings,
    isAmongOthers: true,
    at: '201:2',
    found: '1500 more problems',
    expected: 'none',
    remedy: 'Correct those that are listed, then check the document again.',
  },
];

/** Keys that mean nothing. */
function keys(count: number): string {
  return Array.from({ length: count }, (_, index) => `"k${index}": "",`).join(' ');
}
