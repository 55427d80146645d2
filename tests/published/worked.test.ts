import { describe, expect, it } from 'vitest';
import { EXAMPLE_FOLDERS, readFolder } from './example-folders.ts';
import { folderCases, READ_FOLDERS, runWorked, unexplainedOf } from './worked-cases.ts';
import { workedDocument, workedText } from './worked-report.ts';

const cases = folderCases();
const told = (country: string, folder: string): string => `${country}/${folder}`;

describe('every worked case of the examples comes out as it says', () => {
  it.each(cases.map((one) => [one.country, one.folder, one.one.id, one.one.title, one] as const))(
    '%s/%s %s %s',
    (_country, _folder, _id, _title, one) => {
      const { checked, problems } = runWorked(one);
      expect(problems).toEqual([]);
      expect(unexplainedOf(checked)).toEqual([]);
    },
  );
});

describe('the folders of the examples', () => {
  it('are there', () => {
    expect(EXAMPLE_FOLDERS.length).toBeGreaterThan(80);
  });

  it.each(EXAMPLE_FOLDERS.map((folder) => [folder.country, folder.name, folder] as const))(
    '%s/%s has a tariff, cases and a source, and nothing else',
    (_country, _name, { tariff, cases: worked, source, others }) => {
      expect({ tariff: tariff !== null, cases: worked !== null, source: source !== null, others }).toEqual({
        tariff: true,
        cases: true,
        source: true,
        others: [],
      });
    },
  );

  it('can be read, every one', () => {
    expect(READ_FOLDERS.flatMap(({ problems }) => problems)).toEqual([]);
  });

  it('have each an id of its own: that of the folder, but for the two that are older than the folders', () => {
    const ids = READ_FOLDERS.map(({ tariff }) => tariff?.document.id ?? '');
    expect(ids.filter((id, index) => ids.indexOf(id) < index)).toEqual([]);
    const renamed = READ_FOLDERS.filter(({ folder, tariff }) => tariff?.document.id !== folder.name);
    expect(renamed.map(({ tariff }) => tariff?.document.id)).toEqual(['tarumira-domestic', 'tarumira-shop']);
  });

  it('say that they are invented where they are: all of Tarumira, and no other', () => {
    for (const { folder, tariff, cases: worked } of READ_FOLDERS) {
      const isInvented = folder.country === 'tarumira';
      const name = told(folder.country, folder.name);
      expect([name, tariff?.document.invented ?? false]).toEqual([name, isInvented]);
      expect([name, /^Invented\b/m.test(folder.source ?? '')]).toEqual([name, isInvented]);
      const kinds = (worked?.cases ?? []).map(({ kind }) => kind === 'invented');
      expect([name, new Set(kinds)]).toEqual([name, new Set([isInvented])]);
    }
  });
});

describe('the worked cases', () => {
  it('have each an id of its own in their folder, and elsewhere too unless they are invented', () => {
    const ids = cases.map(({ country, folder, one }) =>
      one.kind === 'invented' ? `${told(country, folder)} ${one.id}` : one.id,
    );
    expect(ids.filter((id, index) => ids.indexOf(id) < index)).toEqual([]);
  });

  it('name a source where a figure or a rule was read in one', () => {
    const silent = cases.filter(
      ({ one }) => ['published', 'constructed'].includes(one.kind) && one.source === undefined,
    );
    expect(silent.map(({ one }) => one.id)).toEqual([]);
  });

  it('say that a value is from memory where it is', () => {
    const silent = cases.filter(
      ({ one }) => one.kind === 'from-memory' && !(one.notes ?? []).some((note) => /from memory/i.test(note)),
    );
    expect(silent.map(({ one }) => one.id)).toEqual([]);
  });

  it('say what they show', () => {
    expect(cases.filter(({ one }) => (one.rules ?? []).length === 0).map(({ one }) => one.id)).toEqual([]);
  });
});

describe('the comparison', () => {
  const [first] = cases;
  if (first === undefined) throw new Error('no cases');
  const [period, ...rest] = first.one.periods;
  if (period === undefined) throw new Error('no period');

  it('fails on a figure that differs, on a period without a bill, and where nothing is expected', () => {
    const changed = { ...first.one, periods: [{ ...period, expected: { payable: '0.01' } }] };
    const wrong = runWorked({ ...first, one: changed });
    expect(wrong.problems).toEqual([expect.stringMatching(/^period 1, payable: expected 0\.01, got /)]);
    const reversed = { ...first.one, periods: [period, ...rest, { ...period, expected: {} }] };
    expect(runWorked({ ...first, one: reversed }).problems).toEqual([
      expect.stringContaining('a period that begins on'),
    ]);
    const silent = { ...first.one, periods: [{ ...period, expected: {} }] };
    expect(runWorked({ ...first, one: silent }).problems).toEqual(['nothing is expected']);
    expect(workedDocument([wrong])).toMatchObject({ total: 1, reproduced: 0 });
    expect(workedText([wrong])).toContain('0 of 1 worked cases');
  });

  it('reads a broken folder as a problem, not as one without cases', () => {
    const folder = { country: 'x', name: 'y', tariff: '{}', cases: '{', source: '', others: [] };
    const { tariff, cases: worked, problems } = readFolder(folder);
    expect([tariff, worked]).toEqual([null, null]);
    expect(problems.some((problem) => problem.startsWith('x/y/tariff.json:1: '))).toBe(true);
    expect(problems.some((problem) => problem.startsWith('x/y/cases.json'))).toBe(true);
  });
});
