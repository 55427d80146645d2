import type { DecisionSubject, TableDecision } from '@unitbook/meter-files';
import { expect, it } from 'vitest';
import { alternativeWords, decisionWords } from './table-proposal.ts';

const decision = (
  about: DecisionSubject,
  detected: string,
  alternatives: readonly string[] = [],
): TableDecision => ({
  about,
  detected,
  alternatives,
  column: null,
  evidence: '',
  position: null,
  certain: true,
});

it.each([
  ['delimiter', '\t', 'cells are separated by tabs'],
  ['lines-above', '2', '2 lines above the table'],
  ['header', 'none', 'no line names the columns'],
  ['decimal-mark', '.', 'decimals stand behind points'],
  ['grouping', ' ', 'digits are grouped by spaces'],
  ['grouping', "'", 'digits are grouped by apostrophes'],
  ['date-order', 'month-day-year', 'dates are written month-day-year'],
  ['clock', 'utc', 'times are UTC'],
  ['clock', 'in-text', 'each time has its offset from UTC'],
  ['clock', '+05:30', 'times are at +05:30 from UTC'],
  ['label', 'end', 'a time names the end of its interval'],
  ['minutes', '1440', 'intervals are days'],
  ['holds', 'intervals', 'values are counted in each interval'],
  ['column', 'export', 'it is export'],
  ['rate', '', 'it counts all rates'],
  ['rate', '2', 'it counts rate 2'],
  ['unit', 'Wh', 'it is in Wh'],
  ['words', 'A = actual', 'its words mean: A = actual'],
] as const)('tells of %s "%s": %s', (about, detected, words) => {
  expect(decisionWords(decision(about, detected))).toBe(words);
});

it('sets marks apart from words in what else it could be', () => {
  expect(alternativeWords(decision('decimal-mark', ',', ['.']))).toBe('"."');
  expect(alternativeWords(decision('rate', '1', ['']))).toBe('""');
  expect(alternativeWords(decision('clock', 'local', ['local with a time zone', 'utc']))).toBe(
    'local with a time zone, or utc',
  );
});
