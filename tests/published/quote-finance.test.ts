import { describe, expect, it } from 'vitest';
import { FINANCE_ROWS, type FinanceRow } from './quote-finance-rows.ts';
import { SOURCES, type FinanceSource } from './quote-finance-sources.ts';

const decimals = (text: string): number => text.split('.')[1]?.length ?? 0;

/** A value as it was published: to the same decimals, or as published where it is within the tolerance. */
function asPublished(value: ReturnType<FinanceRow['got']>[number], text: string, within?: number): string {
  if (typeof value !== 'number') return String(value);
  if (within === undefined) return value.toFixed(decimals(text));
  return Math.abs(value - Number(text)) <= within ? text : String(value);
}

const sourceText = (source: FinanceSource): string =>
  [source.title, source.publisher, source.year, source.note ?? ''].filter((part) => part !== '').join(', ');

describe('reference values of finance', () => {
  it.each(FINANCE_ROWS.map((one) => [one.row, one.of, sourceText(SOURCES[one.source]), one] as const))(
    'row %i, %s (%s)',
    (_row, _of, _source, { got, expected, within }) => {
      const values = got();
      expect(values.map((value, at) => asPublished(value, expected[at] ?? '', within))).toEqual(expected);
    },
  );
});

describe('the list of them', () => {
  // The rows of the first section of the reference values, whose numbering leaves some out, and those of
  // later sections that a quote is made with.
  const fromTo = (first: number, last: number): number[] =>
    Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const LISTED = [
    ...fromTo(1, 19),
    ...fromTo(22, 29),
    ...fromTo(31, 44),
    ...fromTo(48, 52),
    ...fromTo(54, 56),
    59,
    ...fromTo(72, 75),
    ...fromTo(83, 86),
    138,
  ];

  it('leaves out none', () => {
    expect([...new Set(FINANCE_ROWS.map(({ row }) => row))].sort((a, b) => a - b)).toEqual(LISTED);
  });

  it('names title, publisher and year of each, and every source is used', () => {
    const sources: readonly FinanceSource[] = Object.values(SOURCES);
    expect(sources.filter(({ title, publisher, year }) => [title, publisher, year].includes(''))).toEqual([]);
    const used = new Set<string>(FINANCE_ROWS.map(({ source }) => source));
    expect(Object.keys(SOURCES).filter((name) => !used.has(name))).toEqual([]);
  });
});

describe('the comparison', () => {
  it('fails on one digit', () => {
    expect(asPublished(0.28096, '0.28095')).not.toBe('0.28095');
    expect(asPublished(0.37336252, '0.373362535', 1e-8)).not.toBe('0.373362535');
    expect(asPublished(null, '4')).not.toBe('4');
  });
});
