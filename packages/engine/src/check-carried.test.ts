import { describe, expect, it } from 'vitest';
import { parseDay, type DayNumber } from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import { makeRegister } from './readings/index.ts';
import { quotientOf, type BillFacts, type Figures } from './audit/index.ts';
import { carriedFacts } from './check-carried.ts';

const tariff = {
  units: { clause: '', decimals: '0', rounding: 'down', roundedAt: 'reading' },
} as unknown as TariffDocument;

const register = (id: 'import' | 'export', factor = '1') =>
  makeRegister({ id, digits: '5', decimals: '1', multiplyingFactor: factor });

const day = (text: string): DayNumber => parseDay(text) as DayNumber;

/** The base month of the project reference "causes", 2.1 (2026), in thousandths. */
function facts(changes: Partial<BillFacts> = {}): BillFacts {
  return {
    tariff,
    period: { from: day('2025-05-01'), to: day('2025-05-31') },
    registers: {
      import: { register: register('import'), previous: 12_480_000, present: 12_892_000, passed: false },
      export: { register: register('export'), previous: 8_310_000, present: 8_588_000, passed: false },
    },
    units: { import: 412_000, export: 278_000 },
    powers: {},
    opening: { credit: 35_000 },
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
    ...changes,
  };
}

const printed = (figures: Readonly<Record<string, string>>): Figures =>
  new Map(Object.entries(figures).map(([name, value]) => [name, quotientOf(value)]));

describe('what the books hand on', () => {
  it('is nothing else where the bill before printed what is right, or nothing of it', () => {
    const right = {
      'reading.import.present': '12480',
      'reading.export.present': '8310.0',
      'closing.credit': '35',
    };
    expect(carriedFacts(facts(), printed(right))).toBeNull();
    expect(carriedFacts(facts(), printed({ payable: '613' }))).toBeNull();
    expect(carriedFacts(facts(), null)).toBeNull();
  });

  it('is the reading that it printed, with the units from there', () => {
    // Cause C06: 12,060 in place of 12,480 makes 832 of 412.
    const carried = carriedFacts(facts(), printed({ 'reading.import.present': '12060' }));
    expect(carried?.registers['import']?.previous).toBe(12_060_000);
    expect(carried?.units).toEqual({ import: 832_000, export: 278_000 });
    expect(carried?.opening).toEqual({ credit: 35_000 });
  });

  it('counts decimals and factor as the tariff does', () => {
    const registers = {
      import: { register: register('import', '20'), previous: 1_210_500, present: 1_236_000, passed: false },
    };
    const shop = facts({ registers, units: { import: 510_000 } });
    // 1,236.0 × 20 = 24,720 less 1,200.5 × 20 = 24,010.
    const carried = carriedFacts(shop, printed({ 'reading.import.present': '1200.5' }));
    expect(carried?.units).toEqual({ import: 710_000 });
  });

  it('is the credit that it printed', () => {
    const carried = carriedFacts(facts(), printed({ 'closing.credit': '0' }));
    expect(carried?.opening).toEqual({ credit: 0 });
    expect(carried?.units).toEqual({ import: 412_000, export: 278_000 });
  });

  it('runs no register back: an estimate above the actual reading is put right otherwise', () => {
    expect(carriedFacts(facts(), printed({ 'reading.import.present': '12960' }))).toBeNull();
  });

  it('passes the full scale where the right chain does', () => {
    // 99,870 → 00,212 are 342; from 99,800 they are 412. From 00,100, printed behind it, 112.
    const registers = {
      import: { register: register('import'), previous: 99_870_000, present: 212_000, passed: true },
    };
    const units = (present: string) =>
      carriedFacts(
        facts({ registers, units: { import: 342_000 } }),
        printed({ 'reading.import.present': present }),
      )?.units;
    expect(units('99800')).toEqual({ import: 412_000 });
    expect(units('100')).toEqual({ import: 112_000 });
  });

  it('moves the units of a time block with those of its register', () => {
    const peak = makeRegister({
      id: 'import',
      digits: '5',
      decimals: '0',
      multiplyingFactor: '1',
      rate: '1',
      block: 'peak',
    });
    const registers = { 'import-1': { register: peak, previous: 100_000, present: 150_000, passed: false } };
    const blocks = facts({
      registers,
      units: { import: 90_000, 'import@peak': 50_000, 'import@rest': 40_000 },
    });
    const carried = carriedFacts(blocks, printed({ 'reading.import-1.present': '80' }));
    expect(carried?.units).toEqual({ import: 110_000, 'import@peak': 70_000, 'import@rest': 40_000 });
  });
});
