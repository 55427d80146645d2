import { addDays, parseDay, type DayNumber, type Quotient, type TariffDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { batchChecker, type BatchRows, type BatchTerms } from '../../packages/engine/src/check-batch.ts';
import { FullCheck } from '../../packages/engine/src/check-batch-full.ts';
import type { CheckedBill } from '../../packages/engine/src/check-bill.ts';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { randomTariff } from '../laws/random-tariff.ts';
import { readDocumentText } from '../laws/twin-comparison.ts';
import { makeRandom, type Random } from '../support/random.ts';

const KNOWN = ['import', 'export', 'generation', 'sanctioned-load', 'plant-capacity'];
const FIXED = ['days', 'load', 'units.import', 'units.self-consumption', 'units.total-use', 'units.billed'];
const TOTALS = ['opening.credit', 'closing.credit', 'arrears', 'sum', 'rounding', 'payable', 'line.surplus'];

/** A tariff that nobody would enact, with a bank that closes in one way or another. */
function tariffOf(random: Random): TariffDocument {
  const document = randomTariff(random, random.chance(20));
  const clause = 'LAW 1';
  const rate = random.pick(['2.60', '0.333', '11']);
  const inBill = random.pick(['same', 'next'] as const);
  const paid = { clause, on: random.pick(['04-01', '07-15']), surplus: 'paid', rate, inBill } as const;
  const close = random.pick([
    paid,
    { ...paid, on: 'every-period' },
    { clause, on: '04-01', surplus: 'lapses' },
  ] as const);
  const isKept = close.on !== 'every-period';
  const excess = isKept ? random.pick(['lapses', 'carried'] as const) : 'lapses';
  const cap = random.chance(30) ? { cap: { clause, of: 'import', percent: '80.5', excess } } : {};
  const carry = isKept ? { carry: { clause } } : {};
  const settlements = document.settlements.map((rule) =>
    rule.scheme === 'unit-netting' ? { ...rule, ...cap, ...carry, close } : rule,
  );
  return { ...document, settlements } as TariffDocument;
}

interface Table {
  readonly rows: BatchRows;
  readonly terms: BatchTerms;
}

/** Accounts of one to four bills, now and then with a gap between them, or with something that is not known. */
function tableOf(random: Random, document: TariffDocument, count: number, isWhole = false): Table {
  const lines = [...new Set(document.versions.flatMap(({ charges }) => charges.map(({ id }) => id)))];
  const names = {
    known: KNOWN,
    opening: ['credit'],
    printed: [...FIXED, ...lines.map((id) => `line.${id}`), ...TOTALS],
  };
  const rows: BatchRows = {
    count,
    from: new Int32Array(count),
    to: new Int32Array(count),
    begins: new Uint8Array(count),
    known: KNOWN.map(() => new Float64Array(count)),
    opening: [new Float64Array(count).fill(NaN)],
    printed: names.printed.map(() => ({
      mantissas: new Float64Array(count).fill(NaN),
      places: new Uint8Array(count),
    })),
  };
  let day = 0;
  for (let row = 0; row < count; row += 1) {
    const isBegun = row === 0 || random.chance(40);
    rows.begins[row] = isBegun ? 1 : 0;
    if (isBegun) day = (parseDay('2024-01-01') ?? 0) + random.below(400);
    if (!isBegun && !isWhole && random.chance(5)) day += 3;
    const isOpened = isBegun || random.chance(10);
    if (isOpened && (isWhole || random.chance(90)))
      (rows.opening[0] as Float64Array)[row] = random.below(300) * 1000;
    rows.from[row] = day;
    day += random.chance(80) ? 28 + random.below(4) : 1 + random.below(70);
    rows.to[row] = day;
    KNOWN.forEach((name, column) => {
      const isHuge = random.chance(2);
      const value = random.below(isHuge ? 2_000_000 : 600) * (random.chance(80) ? 1000 : 1);
      const isLeft = !isWhole && random.chance(name === 'generation' ? 30 : 1);
      (rows.known[column] as Float64Array)[row] = isLeft ? NaN : value;
    });
  }
  return { rows, terms: { tariff: readDocumentText(document), names } };
}

/** Everything by the long way, row by row. */
function allInFull({ rows, terms }: Table): Map<number, CheckedBill> {
  const checked = new Map<number, CheckedBill>();
  const marks = new Uint8Array(rows.count).fill(1);
  const full = new FullCheck({ ...terms, options: { causes: [] } });
  let from = 0;
  for (let row = 1; row <= rows.count; row += 1) {
    if (row < rows.count && rows.begins[row] !== 1) continue;
    full.run(rows, { from, to: row }, marks, (at, found) => checked.set(at, found));
    from = row;
  }
  return checked;
}

/** A figure in decimals, where eight of them are enough. */
function asPrinted({ numerator, denominator }: Quotient): { mantissa: number; places: number } | null {
  for (let places = 0; places <= 8; places += 1) {
    const mantissa = (Number(numerator) * 10 ** places) / denominator;
    if (Number.isInteger(mantissa) && Math.abs(mantissa) < 1e12) return { mantissa, places };
  }
  return null;
}

/** Print right figures into a table, and spoil some of them by the last digit. */
function print({ rows, terms }: Table, checked: ReadonlyMap<number, CheckedBill>, random: Random): void {
  for (const [row, { right }] of checked) {
    terms.names.printed.forEach((name, column) => {
      const figure = right?.figures.get(name);
      const shown = figure === undefined ? null : asPrinted(figure);
      const { mantissas, places } = rows.printed[column] as (typeof rows.printed)[number];
      if (shown === null || random.chance(20)) return;
      mantissas[row] = shown.mantissa + (random.chance(3) ? random.pick([-1, 1, 10]) : 0);
      places[row] = shown.places;
      // The same number with a zero behind it is the same number.
      if (shown.places < 8 && random.chance(10) && Math.abs(shown.mantissa) < 1e11) {
        mantissas[row] = mantissas[row] * 10;
        places[row] = shown.places + 1;
      }
    });
  }
}

/** How the quick way judged a table whose bills the long way judged one by one. */
function compare(table: Table, random: Random) {
  print(table, allInFull(table), random);
  const slow = allInFull(table);
  const looked = new Map<number, CheckedBill>();
  const quickly = batchChecker({ ...table.terms, options: { causes: [] } }).check(table.rows, (row, found) =>
    looked.set(row, found),
  );
  const differences: string[] = [];
  let [right, missed] = [0, 0];
  for (let row = 0; row < table.rows.count; row += 1) {
    const verdict = slow.get(row)?.verdict;
    const found = looked.get(row);
    if ((found?.verdict ?? 'right') !== verdict)
      differences.push(`row ${String(row)}: ${String(found?.verdict)} for ${String(verdict)}`);
    if (verdict === 'right') right += 1;
    if (verdict === 'right' && found !== undefined) missed += 1;
  }
  return { differences, right, missed, quickly };
}

describe('the quick check of a table of bills', () => {
  it('says of every row what checkBill says, under random tariffs', () => {
    const random = makeRandom(20_261);
    let [right, missed, quickly] = [0, 0, 0];
    for (let round = 0; round < 60; round += 1) {
      const found = compare(tableOf(random, tariffOf(random), 40), random);
      expect(found.differences).toEqual([]);
      right += found.right;
      missed += found.missed;
      quickly += found.quickly;
    }
    // Rows that it leaves to the long way although they are right: credit lines, and charges on what is not known.
    expect(quickly).toBeGreaterThan(missed);
    expect(right).toBeGreaterThan(300);
  });

  it('leaves no right row of a usual tariff to the long way', () => {
    const random = makeRandom(7);
    const document = JSON.parse(tariffText) as TariffDocument;
    const found = compare(tableOf(random, document, 400, true), random);
    expect(found.differences).toEqual([]);
    expect(found.right).toBeGreaterThan(150);
    expect(found.missed).toBe(0);
  });

  it('leaves all rows to the long way where more columns are known than a number has bits', () => {
    const document = JSON.parse(tariffText) as TariffDocument;
    const random = makeRandom(5);
    const table = tableOf(random, document, 5, true);
    print(table, allInFull(table), random);
    const quantities = Array.from({ length: 31 - KNOWN.length }, (_, at) => `quantity-${String(at)}`);
    const known = [...KNOWN, ...quantities];
    const empty = quantities.map(() => new Float64Array(table.rows.count).fill(NaN));
    const looked: (CheckedBill['verdict'] | undefined)[] = [];
    const quickly = batchChecker({ ...table.terms, names: { ...table.terms.names, known } }).check(
      { ...table.rows, known: [...table.rows.known, ...empty] },
      (_, { verdict }) => looked.push(verdict),
    );
    expect(quickly).toBe(0);
    expect(looked).toEqual([...allInFull(table).values()].map(({ verdict }) => verdict));
  });

  it('begins at a day of a year that the tariff does not cover with "cannot tell"', () => {
    const document = JSON.parse(tariffText) as TariffDocument;
    const { rows, terms } = tableOf(makeRandom(3), document, 1);
    rows.from[0] = parseDay('2019-01-01') as DayNumber;
    rows.to[0] = addDays(parseDay('2019-01-01') as DayNumber, 31);
    const found: CheckedBill[] = [];
    batchChecker(terms).check(rows, (_, checked) => found.push(checked));
    // The only rule of the tariff on surplus begins in April 2021.
    expect(found.map(({ verdict }) => verdict)).toEqual(['cannot-tell']);
    expect(found[0]?.findings.map(({ code }) => code)).toEqual(['settlement/no-rule-in-force']);
  });
});
