import {
  bookDocument,
  casesJsonSchema,
  ENGINE_FINDINGS,
  keepBook,
  readAccount,
  readGroup,
  readHousehold,
  readReadingsDocument,
  readTariff,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { BATCH_FINDINGS } from '../../apps/cli/src/batch/index.ts';
import { changed, DEMO_TARIFF, goodTariff } from '../support/demo.ts';
import demoHousehold from '../../tariffs-examples/households/demo.json?raw';
import { blocksOf, page } from './pages.ts';
import { allowedKeys, below, firstCells, severityRows } from './tables.ts';
import { tariffReference } from './tariff-reference.ts';

describe.each(tariffReference())('docs/$name', ({ name, text, rows }) => {
  it('is up to date: node tests/support/run.mjs tests/support/write-tariff-reference.ts', () => {
    expect(page(name)).toBe(text);
  });

  it('says of every field what it means', () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(rows.filter(({ meaning }) => meaning === '')).toEqual([]);
  });
});

describe('docs/reference/findings.md and the pages that go on from it', () => {
  it('have one row for every code of the engine and of the batch, with its severity', () => {
    const ends = ['', '-bills', '-plant', '-quote', '-check', '-batch'];
    const text = ends.map((end) => page(`reference/findings${end}.md`)).join('');
    const kinds = Object.entries({ ...ENGINE_FINDINGS, ...BATCH_FINDINGS });
    const codes = kinds.map(([code, { severity }]) => `${code} ${severity}`);
    expect([...severityRows(text)].sort()).toEqual(codes.sort());
  });
});

describe('docs/reference/account.md', () => {
  const text = page('reference/account.md');
  const account = (at: string): readonly string[] => {
    const register = { digits: '5', decimals: '1', ...(at === 'register' ? { odd: '' } : {}) };
    const common = { serial: '', multiplyingFactor: '1' };
    const grid = { ...common, import: register, export: register, ...(at === 'grid' ? { odd: '' } : {}) };
    const generation = { ...common, generation: register, ...(at === 'generation' ? { odd: '' } : {}) };
    const meters = { grid, generation, ...(at === 'meters' ? { odd: '' } : {}) };
    const document = { meters, ...(at === 'account' ? { odd: '' } : {}) };
    return allowedKeys(readAccount(JSON.stringify(document)).findings);
  };

  it.each([
    ['## The account', account('account')],
    ['### meters', account('meters')],
    ['### meters.grid', account('grid')],
    ['### meters.generation', account('generation')],
    ['### meters.grid.import', account('register')],
    ['## The household', allowedKeys(readHousehold('{"odd":""}').findings)],
  ])('%s: every field, and no other', (heading, keys) => {
    expect([...firstCells(below(text, heading))].sort()).toEqual([...keys].sort());
  });

  it('says rightly that numbers are read as the form saves them', () => {
    const shown = blocksOf(text).find(({ words }) => words === 'json household')?.text ?? '';
    for (const typed of ['3 kW', '3,0']) {
      expect(readHousehold(changed(shown, '"3"', `"${typed}"`)).value.account?.sanctionedLoad).toBe(3000);
    }
  });

  it('shows documents that can be read', () => {
    const shown = (words: string): string =>
      blocksOf(text).find((block) => block.words === words)?.text ?? '';
    expect(readAccount(shown('json account')).findings).toEqual([]);
    const household = readHousehold(shown('json household'));
    expect(household.findings).toEqual([]);
    expect(household.value.readings?.length).toBe(2);
  });
});

interface Shape {
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly items?: Shape;
}

describe('docs/reference/cases.md', () => {
  const text = page('reference/cases.md');
  const file = casesJsonSchema() as Shape;
  const one = file.properties?.['cases']?.items;
  const period = one?.properties?.['periods']?.items;

  it.each([
    ['## The cases file', file],
    ['## A case', one],
    ['### A source of a case', one?.properties?.['source']],
    ['### The account of a case', one?.properties?.['account']],
    ['### A period', period],
    ['### What a period comes to', period?.properties?.['expected']],
  ])('%s: every field, and no other', (heading, shape) => {
    const keys = Object.keys(shape?.properties ?? {});
    expect(keys.length).toBeGreaterThan(2);
    expect([...firstCells(below(text, heading))].sort()).toEqual([...keys].sort());
  });

  it('has a group that can be read, and every field of one', () => {
    const [group] = blocksOf(text).filter(({ words }) => words === 'json group');
    expect(readGroup(group?.text ?? '').findings).toEqual([]);
    const odd = (at: 'group' | 'member') =>
      readGroup(
        JSON.stringify({
          ...(at === 'group' ? { odd: '' } : {}),
          members: [at === 'member' ? { odd: '' } : {}],
        }),
      );
    expect([...firstCells(below(text, '## A group'))].sort()).toEqual(
      [...allowedKeys(odd('group').findings)].sort(),
    );
    expect([...firstCells(below(text, '### A member of a group'))].sort()).toEqual(
      [...allowedKeys(odd('member').findings)].sort(),
    );
  });
});

it('docs/reference/readings.md shows a document that can be read', () => {
  const text = page('reference/readings.md') + page('reference/readings-2.md');
  const documents = blocksOf(text).filter(({ words }) => words.startsWith('json'));
  expect(documents.map((block) => readReadingsDocument(block.text).findings)).toEqual([[], [], [], []]);
});

describe('docs/reference/json.md', () => {
  const text = page('reference/json.md');
  const { account, readings } = readHousehold(demoHousehold).value;
  if (account === null || readings === null) throw new Error('the demo household cannot be read');
  const kept = keepBook({ account, tariff: goodTariff(DEMO_TARIFF), readings });
  const { findings } = readTariff('{');
  const document: unknown = JSON.parse(JSON.stringify(bookDocument(kept.value, findings)));
  const figureKeys = new Set<string>();
  const bookPaths = new Set<string>();

  /** A figure has its own table; everything else is told by its path. */
  const walk = (value: unknown, path: string): void => {
    if (Array.isArray(value))
      value.forEach((one) => {
        walk(one, `${path}[]`);
      });
    if (Array.isArray(value) || typeof value !== 'object' || value === null) return;
    const isFigure = 'operation' in value;
    for (const [key, child] of Object.entries(value) as [string, unknown][]) {
      const isOfLine = key === 'version' || key === 'counts';
      if (isFigure && !isOfLine) figureKeys.add(key);
      else bookPaths.add(path === '' ? key : `${path}.${key}`);
      if (!isFigure && path !== 'findings[]') walk(child, path === '' ? key : `${path}.${key}`);
      if (key === 'inputs') walk(child, path);
    }
  };
  walk(document, '');

  it('names every field of the book, and no other', () => {
    const told = ['## The book', '## A period', '## A bill'].flatMap((heading) =>
      firstCells(below(text, heading)),
    );
    const found = [...bookPaths].filter((path) => !/^(?:findings\[\]|months\[\]\.withoutSolar)\./.test(path));
    expect([...told].sort()).toEqual(found.sort());
  });

  it('names every field of a figure and of a finding', () => {
    const [fields = [], operations = []] = below(text, '## A figure')
      .split(/^\| Operation/m)
      .map(firstCells);
    expect([...fields].sort()).toEqual([...figureKeys].sort());
    expect(new Set(operations).size).toBe(11);
    const keys = ['offer', ...Object.keys(findings[0] ?? {})];
    expect([...firstCells(below(text, '## A finding'))].sort()).toEqual(keys.sort());
  });
});
