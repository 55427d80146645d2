import { describe, expect, it } from 'vitest';
import { periodOf, tariffOf } from '../../../../tests/support/make.ts';
import { priceAt } from './price-at.ts';
import type { Price } from './price-schema.ts';

const clause = 'T 1';
const cents = { step: '0.01', mode: 'half-up' } as const;
const series = (parts: Partial<Price & { is: 'series' }> = {}): Price => ({
  is: 'series',
  clause,
  inForce: 'first-day',
  values: [
    { from: '2025-01-01', rate: '2' },
    { from: '2025-03-01', rate: '3.5', clause: 'T 2' },
  ],
  ...parts,
});
const mean = (through: 'this-month' | 'month-before', months: string, rounding = cents): Price => ({
  is: 'mean',
  clause,
  of: 'base',
  months,
  through,
  rounding,
});

/** What the price "asked" comes to beside a series "base". */
function asked(price: Price, [from, to]: readonly [string, string], base = series()): string {
  const { document } = tariffOf([{ id: 'fixed', label: 'Fixed', clause, kind: 'fixed', amount: '1' }], {
    prices: { base, asked: price },
  });
  const found = priceAt(document, 'asked', periodOf(from, to));
  return 'problem' in found ? found.problem : `${found.text} ${found.clause}`;
}

describe('a price of a series', () => {
  it.each([
    ['on its first day', ['2025-01-01', '2025-02-01'], '2 T 1'],
    ['a day before it', ['2024-12-31', '2025-02-01'], 'the price "asked" is not in force on 2024-12-31'],
    ['a day before a change', ['2025-02-28', '2025-03-31'], '2 T 1'],
    ['on the day of a change', ['2025-03-01', '2025-04-01'], '3.5 T 2'],
    ['long after', ['2035-03-01', '2035-04-01'], '3.5 T 2'],
  ] as const)('is that of the first day: %s', (_, days, expected) => {
    expect(asked(series(), days)).toBe(expected);
  });

  it('is that of the last day, which is the one before the next period', () => {
    const last = series({ inForce: 'last-day' });
    expect(asked(last, ['2025-02-01', '2025-03-01'])).toBe('2 T 1');
    expect(asked(last, ['2025-02-01', '2025-03-02'])).toBe('3.5 T 2');
    expect(asked(last, ['2024-12-31', '2025-01-02'])).toBe('2 T 1');
  });

  it('ends with its last day', () => {
    const ended = series({ through: '2025-05-31' });
    expect(asked(ended, ['2025-05-31', '2025-06-30'])).toBe('3.5 T 2');
    expect(asked(ended, ['2025-06-01', '2025-07-01'])).toBe(
      'the price "asked" is not in force on 2025-06-01',
    );
  });
});

describe('a mean of months', () => {
  it('is of the first days of so many months, through that of the last day or the one before', () => {
    // February to May: 2, 3.5, 3.5, 3.5; January to April: 2, 2, 3.5, 3.5
    const may = ['2025-04-20', '2025-05-21'] as const;
    expect(asked(mean('this-month', '4'), may)).toBe('3.13 T 1');
    expect(asked(mean('month-before', '4'), may)).toBe('2.75 T 1');
    // The period ends with 30 April: its month is April.
    expect(asked(mean('this-month', '4'), ['2025-04-01', '2025-05-01'])).toBe('2.75 T 1');
  });

  it('runs over the new year, and is refused where a month has no price', () => {
    const missing = 'the price "base" is not in force on 2024-12-01';
    expect(asked(mean('this-month', '1'), ['2025-01-01', '2025-02-01'])).toBe('2 T 1');
    expect(asked(mean('this-month', '2'), ['2025-01-01', '2025-02-01'])).toBe(missing);
    expect(asked(mean('month-before', '1'), ['2025-01-01', '2025-02-01'])).toBe(missing);
  });
});

describe('a price made of others', () => {
  const april = ['2025-04-01', '2025-05-01'] as const;
  const of = (is: 'sum' | 'difference' | 'product' | 'least' | 'greatest', ...names: string[]): Price => ({
    is,
    clause,
    of: names,
  });

  it.each([
    [of('sum', 'base', '0.25'), '3.75 T 1'],
    [of('difference', '3', 'base', '1'), '-1.5 T 1'],
    [of('product', 'base', '-0.5'), '-1.75 T 1'],
    [of('least', 'base', '3.49', '4'), '3.49 T 1'],
    [of('greatest', 'base', '3.49', '-4'), '3.5 T 1'],
    [{ is: 'percent', clause, percent: '62.5', of: ['base', '0.5'] }, '2.5 T 1'],
  ] as const)('%j', (price, expected) => {
    expect(asked(price as Price, april)).toBe(expected);
  });

  it('is rounded where it says so, and refused where it does not end within eight decimals', () => {
    const tiny = of('product', '0.0001', '0.0001', '3');
    expect(asked(tiny, april)).toBe('0.00000003 T 1');
    const tinier = of('product', '0.0001', '0.0001', '0.3');
    expect(asked(tinier, april)).toBe('the price "asked" does not end within 8 decimals');
    expect(asked({ ...tinier, rounding: cents } as Price, april)).toBe('0 T 1');
    expect(asked({ ...of('sum', '-0.005'), rounding: cents } as Price, april)).toBe('-0.01 T 1');
  });

  it('is refused where there is none of its name', () => {
    const { document } = tariffOf([{ id: 'fixed', label: 'Fixed', clause, kind: 'fixed', amount: '1' }]);
    const none = { problem: 'there is no price "fuel"' };
    expect(priceAt(document, 'fuel', periodOf(...april))).toEqual(none);
  });
});
