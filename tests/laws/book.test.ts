import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayText, keepBook, type Book, type Figure, type ReadingRow, type Tariff } from '@unitbook/engine';
import { accountOf, demoTariff, goodTariff } from '../support/demo.ts';
import { dayOf, tariffOf, valueOf } from '../support/make.ts';
import { passbookOf } from '../support/passbook.ts';
import { unexplained } from '../support/recompute.ts';

/** One month's use in tenths of a unit. */
interface Month {
  readonly days: number;
  readonly imported: number;
  readonly exported: number;
  readonly ownUse: number;
}

const month = fc.record({
  days: fc.integer({ min: 21, max: 64 }),
  imported: fc.integer({ min: 1, max: 6000 }),
  exported: fc.integer({ min: 1, max: 2500 }),
  // At least two units: less could vanish where readings are cut to whole units.
  ownUse: fc.integer({ min: 20, max: 1500 }),
});
const year = fc.array(month, { minLength: 1, maxLength: 14 });

const tenths = (value: number): string => `${String(Math.trunc(value / 10))}.${String(value % 10)}`;

/** Readings that count those months from 5 January 2024. */
function readingsOf(months: readonly Month[]): ReadingRow[] {
  let [day, imported, exported, generation] = [dayOf('2024-01-05'), 10_000, 20_000, 30_000];
  const row = (): ReadingRow => ({
    date: dayText(day),
    import: tenths(imported),
    export: tenths(exported),
    generation: tenths(generation),
  });
  const rows = [row()];
  for (const one of months) {
    day = (day + one.days) as typeof day;
    imported += one.imported;
    exported += one.exported;
    generation += one.exported + one.ownUse;
    rows.push(row());
  }
  return rows;
}

const account = accountOf({ sanctionedLoad: '9', plantCapacity: '20' });

function bookOf(months: readonly Month[], tariff: Tariff): Book {
  const { value, findings } = keepBook({ account, tariff, readings: readingsOf(months) });
  expect(findings.filter((finding) => finding.severity === 'error')).toEqual([]);
  expect(value.months).toHaveLength(months.length);
  return value;
}

const units = (figure: Figure): number => figure.numerator as number;

/** The demo tariff, and the same with caps, lapses and a bank that closes every period. */
const TARIFFS: readonly Tariff[] = [
  demoTariff(),
  demoTariff([
    '"surplus": "paid",\n        "rate": "2.60",\n        "inBill": "next",',
    '"surplus": "lapses",',
  ]),
  demoTariff([
    '"carry": { "clause": "NMR-2021 r. 7.2" },',
    '"carry": { "clause": "NMR-2021 r. 7.2" }, "cap": { "clause": "NMR-2021 r. 7.9", "percent": "90", "of": "import", "excess": "lapses" },',
  ]),
  demoTariff([
    '"carry": { "clause": "NMR-2021 r. 7.2" },',
    '"carry": { "clause": "NMR-2021 r. 7.2" }, "cap": { "clause": "NMR-2021 r. 7.9", "percent": "62.5", "of": "total-use", "excess": "carried" },',
  ]),
];

const anyTariff = fc.constantFrom(...TARIFFS);

describe('the passbook', () => {
  it('balances in every period, and hands on what it closes with', () => {
    fc.assert(
      fc.property(year, anyTariff, (months, tariff) => {
        let closing = 0;
        for (const passbook of bookOf(months, tariff).months.map(passbookOf)) {
          expect(units(passbook.opening)).toBe(closing);
          const { opening, imported, exported, setOff, creditUsed, billed, paid, lapsed } = passbook;
          closing = units(passbook.closing);
          expect(units(opening) + units(exported)).toBe(
            units(setOff) + units(paid) + units(lapsed) + closing,
          );
          expect(units(imported)).toBe(units(setOff) + units(billed));
          for (const figure of [creditUsed, billed, paid, lapsed, passbook.closing]) {
            expect(units(figure)).toBeGreaterThanOrEqual(0);
            expect(unexplained(figure)).toEqual([]);
          }
        }
      }),
    );
  });

  it('never loses a unit by a unit more given to the grid', () => {
    fc.assert(
      fc.property(year, fc.nat({ max: 13 }), anyTariff, (months, at, tariff) => {
        const index = at % months.length;
        const more = months.map((one, place) =>
          place === index ? { ...one, exported: one.exported + 10 } : one,
        );
        const before = bookOf(months, tariff).months;
        const after = bookOf(more, tariff).months;
        const total = (book: typeof before, column: 'billed' | 'paid' | 'lapsed'): number =>
          book.reduce((sum, one) => sum + units(passbookOf(one)[column]), 0);
        const kept = (book: typeof before): number => {
          const last = book.at(-1);
          return (
            (last === undefined ? 0 : units(passbookOf(last).closing)) +
            total(book, 'paid') +
            total(book, 'lapsed')
          );
        };
        // A unit more is a unit less to pay for, or a unit more banked, paid or (by rule) lapsed.
        expect(kept(after) - kept(before) + total(before, 'billed') - total(after, 'billed')).toBe(1000);
        expect(total(after, 'billed')).toBeLessThanOrEqual(total(before, 'billed'));
      }),
    );
  });
});

describe('the saving', () => {
  it('is what own use and export saved together, to the coin, and unfolds to the registers', () => {
    fc.assert(
      fc.property(year, anyTariff, (months, tariff) => {
        for (const { bill, withoutSolar, savings } of bookOf(months, tariff).months) {
          if (withoutSolar === null || savings === null) throw new Error('no saving');
          const { saving, fromSelfConsumption, fromExport } = savings;
          expect(units(fromSelfConsumption) + units(fromExport)).toBe(units(saving));
          expect(units(withoutSolar.payable) - units(bill.payable)).toBe(units(saving));
          expect([saving, fromSelfConsumption, fromExport].flatMap(unexplained)).toEqual([]);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('a period split in two', () => {
  const flat = tariffOf([
    { id: 'energy', label: 'Energy', clause: 'T 7', kind: 'per-unit', on: 'import', rate: '4.75' },
    { id: 'fee', label: 'Fee on export', clause: 'T 7', kind: 'per-unit', on: 'export', rate: '0.1152' },
  ]);
  const unrounded = JSON.stringify({
    ...flat.document,
    units: { ...flat.document.units, decimals: '1' },
    rounding: { clause: 'T 2', line: 'none', total: 'none' },
  });
  const tariff = goodTariff(unrounded);

  it('costs the same where no rule depends on it', () => {
    fc.assert(
      fc.property(year, (months) => {
        const whole: Month = months.reduce((sum, one) => ({
          days: sum.days + one.days,
          imported: sum.imported + one.imported,
          exported: sum.exported + one.exported,
          ownUse: sum.ownUse + one.ownUse,
        }));
        const parts = bookOf(months, tariff).months.map(({ bill }) => bill.payable);
        const together = bookOf([whole], tariff).months[0]?.bill.payable;
        if (together === undefined) throw new Error('no bill');
        const sum = parts.reduce((total, part) => total + units(part) * (10_000_000 / part.denominator), 0);
        expect(sum).toBe(units(together) * (10_000_000 / together.denominator));
        expect(valueOf(together)).not.toBe('0');
      }),
    );
  });
});
