import { checkCase, readCases, readTariff } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { unexplained } from '../support/recompute.ts';
import { blocksOf, pages } from './pages.ts';

/** A cases file of a page with the tariff that stands on the same page: `NAME.json` and `NAME-cases.json`. */
const PAIRS = pages().flatMap(({ name, text }) => {
  const files = new Map(
    blocksOf(text).flatMap(({ words, text: file }) => {
      const [, path] = /^json file (\S+)$/.exec(words) ?? [];
      return path === undefined ? [] : [[path, file] as const];
    }),
  );
  return [...files].flatMap(([path, cases]) => {
    const tariff = files.get(path.replace('-cases.json', '.json'));
    return path.endsWith('-cases.json') && tariff !== undefined ? [{ name, path, tariff, cases }] : [];
  });
});

it('finds the walk', () => {
  expect(PAIRS.map(({ name }) => name)).toContain('writing-a-tariff-3.md');
});

describe.each(PAIRS)('docs/$name, $path', ({ tariff, cases }) => {
  const read = readTariff(tariff);
  const list = readCases(cases);

  it('can be read', () => {
    expect([...read.findings, ...list.findings]).toEqual([]);
  });

  it.each(list.value?.cases ?? [])('$id comes out, and every figure says how', (one) => {
    if (read.value === null) throw new Error('not read');
    const { checks, findings, isReproduced, months } = checkCase(read.value, one);
    expect(findings).toEqual([]);
    expect(checks.filter(({ isSame }) => !isSame)).toEqual([]);
    expect(isReproduced).toBe(true);
    const lines = months.flatMap(({ bill }) => bill.lines.map(({ figure }) => figure));
    expect(lines.flatMap((figure) => unexplained(figure))).toEqual([]);
  });
});
