import {
  COLLECTED_FINDINGS,
  ESPI_FINDINGS,
  meterFileKind,
  NEM_FINDINGS,
  OBIS_FINDINGS,
  readMeterFile,
  readTableLayout,
  TABLE_FINDINGS,
} from '@unitbook/meter-files';
import { describe, expect, it } from 'vitest';
import { blocksOf, page, pages } from './pages.ts';
import { allowedKeys, below, firstCells, severityRows } from './tables.ts';

describe('the pages of findings about meter files', () => {
  const text = ['', '-2', '-3'].map((number) => page(`reference/findings-meter-files${number}.md`)).join('');

  it('have one row for every code, with its severity', () => {
    const kinds = [COLLECTED_FINDINGS, TABLE_FINDINGS, NEM_FINDINGS, ESPI_FINDINGS, OBIS_FINDINGS];
    const codes = kinds.flatMap((all) =>
      Object.entries(all).map(([code, { severity }]) => `${code} ${severity}`),
    );
    expect([...severityRows(text)].sort()).toEqual(codes.sort());
  });
});

describe('docs/reference/meter-files-2.md', () => {
  const text = page('reference/meter-files-2.md');
  const odd = (document: object): readonly string[] =>
    allowedKeys(readTableLayout(JSON.stringify(document)).findings);

  it('has every field of a layout, and no other', () => {
    expect([...firstCells(below(text, '## The layout'))].sort()).toEqual([...odd({ odd: '' })].sort());
  });

  it('has every field of a column, and everything that it can be', () => {
    const [fields = [], kinds = []] = below(text, '### A column')
      .split(/^\| `is` \| The column holds/m)
      .map(firstCells);
    const columns = kinds.map((is) => odd({ columns: [{ is, odd: '' }] }));
    expect(columns.filter((keys) => !keys.includes('is'))).toEqual([]);
    expect([...fields].sort()).toEqual([...new Set(columns.flat())].sort());
    const { findings } = readTableLayout('{"columns":[{"is":"odd"}]}');
    const wrong = findings.find(({ path }) => path.at(-1) === 'is')?.expected ?? '';
    const named = wrong.match(/"[a-z-]+"/g) ?? [];
    expect([...kinds].sort()).toEqual([...new Set(named.map((one) => one.slice(1, -1)))].sort());
  });
});

/** Files that a page shows: the kind stands behind "meter-file", and the layout of a table on the same page. */
const SHOWN = pages().flatMap(({ name, text }) => {
  const layout = blocksOf(text).find(({ words }) => words === 'json columns')?.text ?? null;
  return blocksOf(text).flatMap(({ words, text: file }) => {
    const [, kind] = / meter-file (\S+)$/.exec(words) ?? [];
    return kind === undefined ? [] : [{ name, kind, file, layout }];
  });
});

it('finds a file of each standard', () => {
  const kinds = SHOWN.map(({ kind }) => kind);
  expect([...kinds].sort()).toEqual(['espi', 'nem12', 'nem13', 'register-list', 'table', 'telegram']);
});

describe.each(SHOWN)('the file of kind $kind in docs/$name', ({ kind, file, layout }) => {
  it('is told as that, and read without a question', () => {
    const columns = layout === null ? null : readTableLayout(layout);
    expect(columns?.findings ?? []).toEqual([]);
    expect(meterFileKind(file).kind).toBe(kind);
    const own = columns?.value == null ? {} : { layout: columns.value };
    const read = readMeterFile(file, own);
    expect(read.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect((read.file?.intervals.length ?? 0) + (read.file?.registers.length ?? 0)).toBeGreaterThan(0);
  });
});
