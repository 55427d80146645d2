import { checkCase, readTariff, type Tariff, type UnitsAccount, type UnitsPeriod } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { blocksOf, page, pages } from './pages.ts';
import { FIGURES } from './regulation-figures.ts';
import { framed, regulationRows, type Framed, type RegulationRow } from './regulation-frame.ts';

const TABLE = regulationRows(page('writing-a-tariff-4.md'));

/** The examples of the reference: each names the key under which it stands behind its fence. */
const EXAMPLES = pages().flatMap(({ name, text }): RegulationRow[] =>
  name.startsWith('reference/tariff')
    ? blocksOf(text).map(({ line, words, text: json }) => ({
        line,
        says: name,
        fragments: [{ place: words.replace('json ', ''), json }],
      }))
    : [],
);
const ROWS = [...TABLE, ...EXAMPLES];

const UNITS = {
  'import@peak': '100',
  'import@off': '200',
  'export@peak': '50',
  'export@off': '450',
  'generation@peak': '60',
  'generation@off': '640',
  'sanctioned-load': '5',
  'plant-capacity': '4',
  shared: '120',
};
/** What differs in the second month. */
const APRIL = { 'import@off': '900' };
const POWERS = { 'maximum-demand': '6', 'inverter-capacity': '3.5', 'import-kvah': '310' };
const WINDOWS = { 'interval-import': '250', 'hour-import': '220', 'day-export': '90' };

/** Two months, the first of which closes what closes on 31 March. */
const PERIODS = [
  ['2026-03-01', '2026-04-01'],
  ['2026-04-01', '2026-05-01'],
] as const;

/** The account and the months of a row: what its measures need is given, registers by their names. */
function asked({ account, period }: Framed, { document }: Tariff) {
  const own = account as UnitsAccount;
  const measures = Object.keys(document.measures ?? {});
  const more = Object.entries({ ...POWERS, ...WINDOWS }).filter(([name]) => measures.includes(name));
  const registers = Object.entries(own.registers ?? {});
  const nameOf = (name: string): string => registers.find(([, counted]) => counted === name)?.[0] ?? name;
  const periods = PERIODS.map(([from, to], index): UnitsPeriod => {
    const given = Object.entries({ ...UNITS, ...(index === 1 ? APRIL : {}) }).concat(more);
    const quantities = Object.fromEntries(given.map(([name, units]) => [nameOf(name), units]));
    return { from, to, quantities, ...(index === 0 ? (period as Partial<UnitsPeriod>) : {}) };
  });
  return { account: own, periods };
}

it('the table has a row for everything that regulations say', () => {
  expect(TABLE.length).toBeGreaterThan(60);
  expect(FIGURES.filter(([says]) => !TABLE.some((row) => row.says === says)).map(([says]) => says)).toEqual(
    [],
  );
  expect(EXAMPLES.length).toBeGreaterThan(30);
});

describe.each(ROWS)('line $line: $says', (row) => {
  const { document } = framed(row);
  const { value, findings } = readTariff(JSON.stringify(document));

  it('has fragments that are sound in their places', () => {
    expect(row.fragments.length).toBeGreaterThan(0);
    expect(findings.map(({ code, path, found }) => `${code} at ${path.join('.')}: ${found}`)).toEqual([]);
  });

  it('bills two months, and comes to what is worked out by hand', () => {
    if (value === null) throw new Error('not read');
    const { account, periods } = asked(framed(row), value);
    const [, ...expected] = FIGURES.find(([says]) => says === row.says) ?? [];
    const checked = checkCase(value, {
      ...{ id: 'row', title: row.says, kind: 'invented', account },
      periods: periods.map((one, index) => ({ ...one, expected: expected[index] ?? {} })),
    });
    expect(checked.findings.map(({ code, found }) => `${code}: ${found}`)).toEqual([]);
    expect(checked.months.length).toBe(2);
    expect(checked.checks.filter(({ isSame }) => !isSame)).toEqual([]);
  });
});
