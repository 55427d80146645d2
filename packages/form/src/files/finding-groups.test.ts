import type { Finding, Severity } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { shownFindings } from './finding-groups.ts';

function finding(code: string, severity: Severity, line?: number): Finding {
  const text = { code, severity, path: [], values: {}, found: code, expected: '', remedy: '' };
  return line === undefined ? text : { ...text, position: { line, column: 1 } };
}

const codes = (findings: readonly Finding[]): string[] =>
  shownFindings(findings).groups.map(({ finding: { code }, more }) => `${code} +${String(more)}`);

it('shows twenty one by one, errors first and of one severity in the order of the file', () => {
  const many = Array.from({ length: 18 }, (_, at) => finding(`n${String(at)}`, 'note'));
  const all = [...many, finding('q', 'question'), finding('e', 'error')];
  expect(codes(all).slice(0, 3)).toEqual(['e +0', 'q +0', 'n0 +0']);
  expect(shownFindings(all)).toMatchObject({ left: 0, groups: { length: 20 } });
});

it('shows more than twenty by kind, with the lines of the others', () => {
  const same = Array.from({ length: 21 }, (_, at) => finding('row', 'error', at + 2));
  expect(shownFindings([...same, finding('q', 'question')]).groups).toEqual([
    { finding: same[0], more: 20, lines: 'lines 3, 4, 5, 6, 7, 8 and further on' },
    { finding: finding('q', 'question'), more: 0, lines: '' },
  ]);
});

it('says one line as one line, and nothing where no finding stands anywhere', () => {
  const twice = [finding('a', 'error', 4), finding('a', 'error', 9), finding('a', 'error', 9)];
  const bare = Array.from({ length: 20 }, () => finding('b', 'note'));
  expect(shownFindings([...twice, ...bare]).groups.map(({ lines }) => lines)).toEqual(['line 9', '']);
});

it('counts what is in none of the groups', () => {
  const kinds = Array.from({ length: 22 }, (_, at) => finding(`k${String(at)}`, 'error'));
  const all = [...kinds, finding('k21', 'error')];
  expect(shownFindings(all)).toMatchObject({ left: 3, groups: { length: 20 } });
});
