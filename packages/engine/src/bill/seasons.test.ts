import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, periodOf, tariffOf } from '../../../../tests/support/make.ts';
import type { TariffDocument } from '../tariff/index.ts';

const perUnit = (id: string, rate: string, season?: string) =>
  ({
    id,
    label: id,
    clause: 'T 1',
    kind: 'per-unit',
    on: 'import',
    rate,
    ...(season === undefined ? {} : { season }),
  }) as const;

const SPLIT: Partial<TariffDocument> = {
  versionChange: { rule: 'split-by-days', clause: 'T 3', units: 'exact', factor: 'days-of-part' },
};

const season = (from: string, through: string): Partial<TariffDocument> => ({
  ...SPLIT,
  seasons: { warm: { clause: 'T 9', from, through } },
});

describe('a season', () => {
  it('is charged on the days that fall in it', () => {
    const tariff = tariffOf([perUnit('warm', '2', 'warm')], season('06-11', '09-30'));
    // 1 to 30 June: ten days before it, twenty in it: 20/30 of 300 units at 2.
    const bill = billOf(tariff, { import: '300', period: periodOf('2025-06-01', '2025-07-01') });
    expect(amountsOf(bill)).toEqual([['warm', '400']]);
  });

  it('that begins on 29 February begins on 1 March where there is none', () => {
    const tariff = tariffOf([perUnit('warm', '2', 'warm')], season('02-29', '08-31'));
    // 19 February to 10 March 2025: ten days before it, ten in it: half of 200 units at 2.
    const bill = billOf(tariff, { import: '200', period: periodOf('2025-02-19', '2025-03-11') });
    expect(amountsOf(bill)).toEqual([['warm', '200']]);
  });

  it('runs over the new year where it ends before it begins', () => {
    const tariff = tariffOf([perUnit('cold', '2', 'warm'), perUnit('rest', '1')], season('12-16', '01-10'));
    const cold = (from: string, to: string) =>
      amountsOf(billOf(tariff, { import: '310', period: periodOf(from, to) }));
    // December has sixteen cold days of 31; January ten.
    expect(cold('2024-12-01', '2025-01-01')).toEqual([
      ['rest', '150'],
      ['cold', '320'],
      ['rest', '160'],
    ]);
    expect(cold('2025-01-01', '2025-02-01')).toEqual([
      ['cold', '200'],
      ['rest', '100'],
      ['rest', '210'],
    ]);
  });

  it.each([
    ['begins', '2025-06-11', '2025-07-11'],
    ['ends', '2025-09-01', '2025-10-01'],
  ])('does not split a period that %s with it', (_, from, to) => {
    const tariff = tariffOf([perUnit('warm', '2', 'warm')], season('06-11', '09-30'));
    expect(amountsOf(billOf(tariff, { import: '10', period: periodOf(from, to) }))).toEqual([['warm', '20']]);
  });

  it('splits off one day, the first of it or the last', () => {
    const tariff = tariffOf([perUnit('warm', '2', 'warm')], season('06-11', '09-30'));
    const warm = (from: string, to: string) =>
      amountsOf(billOf(tariff, { import: '100', period: periodOf(from, to) }));
    expect(warm('2025-06-02', '2025-06-12')).toEqual([['warm', '20']]);
    expect(warm('2025-09-30', '2025-10-10')).toEqual([['warm', '20']]);
    expect(warm('2025-06-01', '2025-06-11')).toEqual([]);
    expect(warm('2025-10-01', '2025-10-11')).toEqual([]);
  });

  it('that ends on 29 February ends with February in every year', () => {
    const tariff = tariffOf([perUnit('cold', '2', 'warm')], season('11-01', '02-29'));
    const cold = (from: string, to: string) =>
      amountsOf(billOf(tariff, { import: '100', period: periodOf(from, to) }));
    // 19 to 28 February, and ten days of March; in a leap year one day more of twenty-one.
    expect(cold('2025-02-19', '2025-03-11')).toEqual([['cold', '100']]);
    expect(cold('2024-02-19', '2024-03-10')).toEqual([['cold', '110']]);
  });
});
