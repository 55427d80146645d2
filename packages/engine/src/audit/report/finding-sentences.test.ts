import { expect, it } from 'vitest';
import { readingFinding } from '../../readings/index.ts';
import { checkFinding } from '../findings.ts';
import { findingSentences, foundWords } from './finding-sentences.ts';

const NOTATION = {
  number: (text: string) => `#${text}`,
  money: (text: string) => `Rs ${text}`,
  moneyPlaces: 2,
  day: (text: string) => `day ${text}`,
};

it('writes the days of a finding as the household does, and leaves what is no day', () => {
  const overlap = checkFinding(
    'check/ends-before-it-begins',
    { path: [] },
    { from: '2025-06-01', to: '2025-05-01' },
  );
  expect(findingSentences(overlap, NOTATION).found).toBe('a bill from day 2025-06-01 to day 2025-05-01');
  const none = checkFinding('check/no-such-day', { path: [] }, { value: '2025-06-31' });
  expect(findingSentences(none, NOTATION).found).toContain('"2025-06-31"');
});

it('groups the amounts of a finding', () => {
  // Lines of 1234.5 that do not come to a sum of 2000.
  const values = { sum: '2000', lines: '1234.5', difference: '765.5', what: 'lines' };
  const { found } = findingSentences(checkFinding('check/lines-off-sum', { path: [] }, values), NOTATION);
  expect(found).toContain('#1234.5');
});

it('keeps the text of a number that cannot be read as it was typed', () => {
  const value = '119.20 or so';
  const finding = checkFinding('check/not-a-number', { path: [] }, { value, what: 'fuel surcharge' });
  expect(foundWords(finding, NOTATION)).toBe(
    '"119.20 or so" for fuel surcharge; expected: a number, such as 1234.5',
  );
  const letter = readingFinding('reading/letter', { path: [] }, { value: '5l6', offer: '516' });
  expect(foundWords(letter, NOTATION)).toContain('5l6');
});
