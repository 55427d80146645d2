import { expect, it } from 'vitest';
import { emptyHousehold, householdText } from './household.ts';
import { readHousehold } from './read-household.ts';

const blank = emptyHousehold('en-IN');

function problems(change: (document: Record<string, unknown>) => void): string[] {
  const document = JSON.parse(householdText(blank)) as Record<string, unknown>;
  change(document);
  const read = readHousehold(JSON.stringify(document));
  return read.kind === 'damaged' ? read.findings.map(({ path }) => path.join('.')) : [read.kind];
}

it('reads back what it wrote, half-typed text and unknown notes included', () => {
  const half = { ...blank, readings: [{ date: 'Ju', import: '46,', export: '' }], note: 'mine' };
  expect(readHousehold(householdText(half))).toEqual({ kind: 'household', household: half });
});

it('names another version', () => {
  expect(readHousehold('{"format":"unitbook-household-2"}')).toEqual({
    kind: 'other-version',
    found: 'unitbook-household-2',
  });
});

it('says in words why a text is no document', () => {
  const reasons = ['{"format":', ' ', '\ufffdPNG', 'date,import'].map((text) => readHousehold(text));
  expect(reasons.map((read) => (read.kind === 'unreadable' ? read.reason : read.kind))).toEqual([
    'It is damaged or cut off.',
    'It is empty.',
    'It is no book saved from this page.',
    'It is no book saved from this page.',
  ]);
  expect(
    problems((document) => {
      document['format'] = undefined;
    }),
  ).toEqual(['format']);
  expect(readHousehold('7').kind).toBe('damaged');
});

it('lists everything that is wrong, by path', () => {
  expect(
    problems((document) => {
      document['tariff'] = 7;
      document['readings'] = [{ date: '', import: 1, export: '', status: 'guessed', confirmed: [2] }, 'x'];
      (document['account'] as Record<string, unknown>)['confirmed'] = 'yes';
    }),
  ).toEqual([
    'account.confirmed',
    'readings.0.import',
    'readings.0.status',
    'readings.0.confirmed.0',
    'readings.1',
    'tariff',
  ]);
  expect(
    problems((document) => {
      document['account'] = null;
    }),
  ).toContain('account');
  expect(
    problems((document) => {
      document['readings'] = {};
    }),
  ).toEqual(['readings']);
});
