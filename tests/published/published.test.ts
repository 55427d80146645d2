import { describe, expect, it } from 'vitest';
import { checkCase } from './check-case.ts';
import { LISTED_IDS } from './listed-ids.ts';
import { caseFileProblems, elsewhereEntries, publishedCases } from './load-cases.ts';
import { tariffNames } from './load-tariffs.ts';
import { reportDocument, runCases } from './report.ts';
import { runCase } from './run-case.ts';
import { folderCases } from './worked-cases.ts';

const cases = publishedCases();

describe('every published case comes out as its source says', () => {
  it.each(cases.map((one) => [one.id, one.title, one] as const))('%s %s', (_id, _title, one) => {
    const { got, expected, stopped } = runCase(one);
    expect({ stopped, got }).toEqual({ stopped: null, got: expected });
  });
});

describe('the list of cases', () => {
  it('is well-formed: a source with title, publisher, year, address; numbers as text', () => {
    expect(caseFileProblems()).toEqual([]);
  });

  it('leaves out no listed id: each is a case here or among the examples, or nothing that bills come to', () => {
    const worked = folderCases().map(({ one }) => one);
    const ids = [...cases, ...worked, ...elsewhereEntries()].map(({ id }) => id);
    const missing = LISTED_IDS.filter((id) => !ids.some((one) => one === id || one.startsWith(`${id}-`)));
    expect(missing).toEqual([]);
  });

  it('uses every tariff file', () => {
    const used = new Set(cases.flatMap(({ runs }) => runs.map((run) => run.tariff)));
    expect(tariffNames().filter((name) => !used.has(name))).toEqual([]);
  });

  it('says that a value is from memory where it is', () => {
    const memory = cases.filter(({ kind }) => kind === 'memory');
    const unsaid = memory.filter(({ notes = [] }) => !notes.some((note) => note.includes('from memory')));
    expect(unsaid.map(({ id }) => id)).toEqual([]);
  });

  it('refuses a case with a bare number or without a source', () => {
    expect(checkCase({ id: 'x', title: 'x', kind: 'published', what: 'units', runs: [{ n: 1 }] })).toEqual([
      'source is missing',
      'nothing is expected',
      '.runs.0.n is a bare number: write it as text',
    ]);
  });
});

describe('the comparison', () => {
  it('fails on one figure that differs in one digit', () => {
    const [one] = cases;
    if (one === undefined) throw new Error('no cases');
    const [name = ''] = Object.keys(one.expected);
    const changed = { ...one, expected: { ...one.expected, [name]: `${one.expected[name] ?? ''}1` } };
    expect(runCase(changed).ok).toBe(false);
    expect(reportDocument(runCases([one, changed]))).toMatchObject({ total: 2, reproduced: 1 });
  });
});
