import { dayText, parseDay, readReadingsDocument, type DayNumber, type Period } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import type { MeterReadingRow } from '../collected/reading-rows.ts';
import { readTableLayout } from '../table/check-layout.ts';
import { proposeTable } from '../table/propose/propose-table.ts';
import { energyText, layoutText, monthsBetween, readingsDocumentText, toReadingRows } from './index.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;
const words = (period: Period | null): string =>
  period === null ? 'none' : `${dayText(period.from)} ${dayText(period.to)}`;

const row = (parts: Partial<MeterReadingRow>): MeterReadingRow => ({
  day: day('2025-04-01'),
  minute: 0,
  values: {},
  estimated: [],
  line: 7,
  ...parts,
});

describe('toReadingRows', () => {
  it('keeps the digits of the file, and leaves out what was not read', () => {
    const values = { import: '001581.120', export: '0' };
    expect(toReadingRows([row({ values })])).toEqual([
      { date: '2025-04-01', import: '001581.120', export: '0' },
    ]);
  });

  it('has a total and its rates beside each other', () => {
    const values = {
      import: '4342',
      rates: { import: { 1: '3042', 2: '1300' }, export: { T1: '900.5' } },
    };
    expect(toReadingRows([row({ values })])).toEqual([
      {
        date: '2025-04-01',
        import: '4342',
        rates: { import: { 1: '3042', 2: '1300' }, export: { T1: '900.5' } },
      },
    ]);
  });

  it('sums up rates of generation, which the engine does not count, unless the total was read', () => {
    const rates = { generation: { 1: '100.25', 2: '7.9' } };
    // 100.25 + 7.90 = 108.15
    expect(toReadingRows([row({ values: { rates } })])).toEqual([
      { date: '2025-04-01', generation: '108.15' },
    ]);
    expect(toReadingRows([row({ values: { generation: '108.2', rates } })])).toEqual([
      { date: '2025-04-01', generation: '108.2' },
    ]);
  });

  it('names each register of which something was estimated once', () => {
    const estimated = ['generation', 'import@1', 'import@2', 'import'];
    expect(toReadingRows([row({ values: { import: '1' }, estimated })])).toEqual([
      { date: '2025-04-01', import: '1', estimated: ['import', 'generation'] },
    ]);
  });
});

describe('readingsDocumentText', () => {
  it('is read back as it was', () => {
    const rows = [
      { date: '2025-04-01', import: '4120.6', rates: { export: { 1: '2' } }, estimated: ['import' as const] },
      { date: '2025-05-01', import: '4342.1' },
    ];
    const read = readReadingsDocument(readingsDocumentText(rows));
    expect(read).toEqual({ value: rows, findings: [] });
  });

  it('has a list without rows, too', () => {
    expect(readReadingsDocument(readingsDocumentText([]))).toEqual({ value: [], findings: [] });
  });
});

describe('monthsBetween', () => {
  const between = (from: string, to: string, cycleDay: number) => {
    const { periods, before, after } = monthsBetween({ from: day(from), to: day(to) }, cycleDay);
    return [words(before), periods.map(words), words(after)];
  };

  it('has whole months, and says what is left at both ends', () => {
    expect(between('2025-01-20', '2025-04-03', 1)).toEqual([
      '2025-01-20 2025-02-01',
      ['2025-02-01 2025-03-01', '2025-03-01 2025-04-01'],
      '2025-04-01 2025-04-03',
    ]);
  });

  it('leaves nothing where the span begins and ends on a cycle day', () => {
    expect(between('2024-12-28', '2025-02-28', 28)).toEqual([
      'none',
      ['2024-12-28 2025-01-28', '2025-01-28 2025-02-28'],
      'none',
    ]);
  });

  it('a day less at the end leaves a whole month over', () => {
    expect(between('2024-12-28', '2025-02-27', 28)).toEqual([
      'none',
      ['2024-12-28 2025-01-28'],
      '2025-01-28 2025-02-27',
    ]);
  });

  it('has no month where no cycle day, or one alone, lies inside', () => {
    expect(between('2025-03-06', '2025-04-05', 5)).toEqual(['2025-03-06 2025-04-05', [], 'none']);
    expect(between('2025-03-05', '2025-04-04', 5)).toEqual(['none', [], '2025-03-05 2025-04-04']);
    expect(between('2025-03-05', '2025-03-05', 5)).toEqual(['none', [], 'none']);
  });

  it.each([0, 29, 1.5])('refuses the day %d', (cycleDay) => {
    expect(() => monthsBetween({ from: day('2025-01-01'), to: day('2025-03-01') }, cycleDay)).toThrow(
      RangeError,
    );
  });

  it('refuses a span that ends before it begins', () => {
    expect(() => monthsBetween({ from: day('2025-03-02'), to: day('2025-03-01') }, 1)).toThrow(RangeError);
  });
});

describe('layoutText', () => {
  const proposed = proposeTable('day;Bezug "columns": [] kWh\n1.5.2025;4342,1\n2.5.2025;4350,0\n');

  it('is refused until a person has confirmed it, and then read as it was proposed', () => {
    const text = layoutText(proposed.layout);
    const { value, findings } = readTableLayout(text);
    expect(value).toBeNull();
    expect(findings.map(({ position }) => text.split('\n')[(position?.line ?? 0) - 1])).toEqual([
      '  "confirmed": false',
    ]);
    const confirmed = readTableLayout(text.replace('"confirmed": false', '"confirmed": true'));
    expect(confirmed).toEqual({ value: { ...proposed.layout, confirmed: true }, findings: [] });
  });
});

describe('energyText', () => {
  it('is exact, without zeros at the end', () => {
    expect([energyText(12500, 3), energyText(0, 3), energyText(100, 0)]).toEqual(['12.5', '0', '100']);
    expect(energyText(-9_007_199_254_740_991n, 15)).toBe('-9.007199254740991');
  });
});
