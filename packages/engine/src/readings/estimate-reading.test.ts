import { dayOf } from '../../../../tests/support/make.ts';
import { describe, expect, it } from 'vitest';
import {
  editRow,
  estimateByMean,
  makeRegister,
  readingByDays,
  undoEdit,
  withoutEdits,
  type ReadingRow,
} from '../index.ts';

const register = makeRegister({ id: 'import', digits: '5', decimals: '1', multiplyingFactor: '1' });
const known = { before: 12_480_000, after: 13_257_000, from: dayOf('2025-04-01'), to: dayOf('2025-05-31') };

describe('a reading estimated by days', () => {
  it('is cut to the last digit of the register', () => {
    // 777 units in 60 days: 12.95 a day; 1 day 12.9, 30 days 388.5, 59 days 764.0 (764.05 cut).
    expect(
      ['2025-04-01', '2025-04-02', '2025-05-01', '2025-05-30', '2025-05-31'].map((day) =>
        readingByDays(register, known, dayOf(day)),
      ),
    ).toEqual([12_480_000, 12_492_900, 12_868_500, 13_244_000, 13_257_000]);
  });

  it('has a day between the two', () => {
    expect(() => readingByDays(register, known, dayOf('2025-06-01'))).toThrow(RangeError);
    expect(() => readingByDays(register, { ...known, after: 1 }, dayOf('2025-05-01'))).toThrow(RangeError);
  });
});

describe('a reading estimated by a daily mean', () => {
  // Revised VEE Monthly Rules, working group of the California Public Utilities Commission, 1990s (a proposal):
  // the rule is theirs, the numbers are worked out by hand.
  it('rounds the mean half up to two decimals, and cuts the advance to whole units', () => {
    expect(estimateByMean('4521', { units: '1004', days: 31 }, 30, '40')).toEqual({
      perDay: '32.39',
      units: '971.70',
      advance: '24',
      reading: '4545',
    });
    // 10.035 ÷ 3 = 3.345: half goes up.
    expect(estimateByMean('0', { units: '10.035', days: 3 }, 1, '1').perDay).toBe('3.35');
  });
});

describe('an edited reading', () => {
  const row: ReadingRow = { date: '2025-05-01', import: '12910', export: '8310', status: 'estimated' };
  const edited = editRow(row, { register: 'import', value: '12892', method: 'own-reading', note: 'photo' });

  it('keeps what stood there, with the method, and says what is still estimated', () => {
    expect(edited).toEqual({
      date: '2025-05-01',
      import: '12892',
      export: '8310',
      estimated: ['export', 'generation'],
      edits: [{ register: 'import', raw: '12910', wasEstimated: true, method: 'own-reading', note: 'photo' }],
    });
    const byDays = editRow(row, { register: 'export', value: '8588', method: 'by-days' });
    expect(byDays.estimated).toEqual(['import', 'generation', 'export']);
  });

  it('is undone edit by edit', () => {
    const twice = editRow(edited, { register: 'import', value: '12890', method: 'typed-again' });
    expect(undoEdit(twice, 'import')).toEqual(edited);
    expect(undoEdit(row, 'import')).toBe(row);
    expect(withoutEdits(twice)).toEqual({
      date: '2025-05-01',
      import: '12910',
      export: '8310',
      estimated: ['export', 'generation', 'import'],
    });
  });

  it('can be a register of a rate', () => {
    const rates: ReadingRow = { date: '2025-05-01', rates: { import: { '1': '5', '2': '6' } } };
    const changed = editRow(rates, { register: 'import-2', value: '7', method: 'typed-again' });
    expect(changed.rates).toEqual({ import: { '1': '5', '2': '7' } });
    expect(withoutEdits(changed)).toEqual(rates);
  });
});
