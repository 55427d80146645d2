import { describe, expect, it } from 'vitest';
import { checkCase } from './check-case.ts';
import { LISTED_IDS } from './listed-ids.ts';
import { caseFileProblems, publishedCases, waitingEntries } from './load-cases.ts';
import { tariffNames } from './load-tariffs.ts';
import { reportJson, runCases } from './report.ts';
import { runCase } from './run-case.ts';

const cases = publishedCases();

describe('every published case comes out as its source says', () => {
  it.each(cases.map((one) => [one.id, one.title, one] as const))('%s %s', (_id, _title, one) => {
    const { got, expected, stopped } = runCase(one);
    expect({ stopped, got }).toEqual({ stopped: null, got: expected });
  });
});

describe('the list of cases', () => {
  it('is well-formed: a source with title, publisher, year and address, every number as text', () => {
    expect(caseFileProblems()).toEqual([]);
  });

  it('leaves out no listed id: each is a case, or waits with a reason', () => {
    const ids = [...cases, ...waitingEntries()].map(({ id }) => id);
    const missing = LISTED_IDS.filter((id) => !ids.some((one) => one === id || one.startsWith(`${id}-`)));
    expect(missing).toEqual([]);
  });

  it('uses every tariff file', () => {
    const used = new Set(cases.flatMap(({ runs }) => runs.map((run) => run.tariff)));
    expect(tariffNames().filter((name) => !used.has(name))).toEqual([]);
  });

  it('says why each thing waits', () => {
    const silent = waitingEntries().filter(
      ({ id, part, reason }) => id === '' || part === '' || reason === '',
    );
    expect(silent).toEqual([]);
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
    expect(JSON.parse(reportJson(runCases([one, changed])))).toMatchObject({ total: 2, reproduced: 1 });
  });
});
