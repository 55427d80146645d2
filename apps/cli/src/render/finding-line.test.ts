import { readingFinding } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { findingLine, findingLines } from './finding-line.ts';

const formula = (value: string) =>
  readingFinding('reading/formula', { path: ['readings', 0, 'import'] }, { value });

describe('findingLine', () => {
  it('says where, what was found, what was expected, what to do, and the code', () => {
    const finding = { ...formula('=1+1'), position: { line: 3, column: 12 } };
    expect(findingLine({ subject: 'r.csv', finding })).toBe(
      'r.csv:3:12  "=1+1", which looks like a spreadsheet formula. Expected a number. ' +
        'Save the sheet with values instead of formulas. [reading/formula]',
    );
  });

  it('prints nothing that a terminal would obey', () => {
    expect(findingLine({ subject: 'a\u001b[2J', finding: formula('\u001b]0;x\u0007') })).not.toMatch(
      /\p{Cc}/u,
    );
  });

  it('cuts a text that nobody can read', () => {
    expect(
      findingLine({ subject: 'r.csv', finding: formula('=' + '1'.repeat(1_000_000)) }).length,
    ).toBeLessThan(1000);
  });

  it.each([
    [['readings', 1, 'date'], 'date'],
    [['readings', 1, 'generation'], 'generation'],
    [['readings', 1], 'import'],
  ])('says how to confirm what is asked at %j', (path, register) => {
    const finding = readingFinding('reading/same-as-before', { path }, { value: '1' });
    expect(findingLine({ subject: 'r.csv', finding })).toContain(
      ` To confirm, put reading/same-as-before:${register} under "confirmed". [`,
    );
  });
});

describe('findingLines', () => {
  it('counts those beyond 200', () => {
    const many = Array.from({ length: 203 }, () => ({ subject: 'r.csv', finding: formula('=') }));
    const lines = findingLines(many);
    expect(lines.length).toBe(201);
    expect(lines.at(-1)).toBe('… and 3 more.');
  });
});
