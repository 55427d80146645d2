import { describe, expect, it } from 'vitest';
import type { Finding, Severity } from '@unitbook/engine';
import { keepFindings, MOST_OF_ONE_CODE } from './finding-keeper.ts';

const findingOf = (code: string, line: number | null, severity: Severity = 'error'): Finding => ({
  code,
  severity,
  path: [],
  values: {},
  found: '',
  expected: '',
  remedy: '',
  ...(line === null ? {} : { position: { line, column: 3 } }),
});

const kept = (findings: readonly Finding[]): readonly Finding[] => {
  const keeper = keepFindings();
  findings.forEach(keeper.add);
  return keeper.findings();
};

const thousand = Array.from({ length: MOST_OF_ONE_CODE }, (_, index) => findingOf('x/odd', index + 1));

describe('findings', () => {
  it('are all kept up to a thousand of one code', () => {
    expect(kept([...thousand, findingOf('x/even', 9)])).toHaveLength(1001);
  });

  it('beyond are counted, with their lines', () => {
    const more = [1001, 1002, 1003, 1003, 1010].map((line) => findingOf('x/odd', line));
    const [last, ...others] = kept([...thousand, ...more]).slice(1000);
    expect(others).toEqual([]);
    expect([last?.code, last?.severity, last?.values, last?.position]).toEqual([
      'meter-file/more-errors',
      'error',
      { code: 'x/odd', count: '5', lines: 'lines 1001 to 1003, 1010' },
      { line: 1001, column: 1 },
    ]);
  });

  it.each([
    ['question', 'meter-file/more-questions'],
    ['note', 'meter-file/more-notes'],
  ] as const)('are counted as what they are: %s', (severity, code) => {
    const all = Array.from({ length: 1001 }, () => findingOf('x/odd', null, severity));
    const last = kept(all).at(-1);
    expect([last?.code, last?.severity, last?.values['lines']]).toEqual([code, severity, 'no line']);
  });
});
