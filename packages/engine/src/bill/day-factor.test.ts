import { describe, expect, it } from 'vitest';
import { lineOf, periodOf, tariffOf } from '../../../../tests/support/make.ts';
import type { Charge, DayRule } from '../tariff/index.ts';
import { dayFactor } from './day-factor.ts';

const THIRTIETHS: DayRule = { rule: 'days-over', clause: 'T 4.3', divisor: '30' };
const MONTHS: DayRule = { rule: 'calendar-months', rounded: 'sum', clause: 'T 4.3' };
const HUNDREDTHS = { step: '0.01', mode: 'half-up' } as const;

/** A period from 1 April 2025 of so many days. */
const daysFrom = (days: number) => {
  const { from } = periodOf('2025-04-01', '2025-04-02');
  return { from, to: (from + days) as typeof from };
};

describe('the factor of days over a divisor', () => {
  it.each([
    [30, 1, 1],
    [31, 31, 30],
    [15, 1, 2],
    [38, 19, 15],
    [61, 61, 30],
  ])('is %i days as %i/%i', (days, numerator, denominator) => {
    expect(dayFactor(THIRTIETHS, daysFrom(days))).toEqual({ numerator, denominator });
  });

  it('is 1 inside the span that is left alone, both ends included', () => {
    const rule: DayRule = { ...THIRTIETHS, unscaledFrom: '27', unscaledThrough: '33' };
    const factors = [26, 27, 33, 34].map((days) => dayFactor(rule, daysFrom(days)));
    expect(factors).toEqual([
      { numerator: 13, denominator: 15 },
      { numerator: 1, denominator: 1 },
      { numerator: 1, denominator: 1 },
      { numerator: 17, denominator: 15 },
    ]);
  });

  it('is rounded as the rule says: 31/30 is 1.03 half-up and 1.04 up', () => {
    expect(dayFactor({ ...THIRTIETHS, factor: HUNDREDTHS }, daysFrom(31))).toEqual({
      numerator: 103,
      denominator: 100,
    });
    const up = { step: '0.01', mode: 'up' } as const;
    expect(dayFactor({ ...THIRTIETHS, factor: up }, daysFrom(31))).toEqual({
      numerator: 26,
      denominator: 25,
    });
  });
});

describe('the factor of calendar months', () => {
  it.each([
    ['a whole month', '2025-01-01', '2025-02-01', 1, 1],
    ['two months of different length', '2025-01-01', '2025-03-01', 2, 1],
    ['12 of 31 days', '2025-01-01', '2025-01-13', 12, 31],
    // 11/31 + 10/28 = 618/868
    ['parts of two months', '2025-01-21', '2025-02-11', 309, 434],
    // 11/31 + 10/29 = 629/899
    ['parts of two months in a leap year', '2024-01-21', '2024-02-11', 629, 899],
    // 16/31 + 28/28 + 15/31
    ['the 16th to the 16th', '2025-01-16', '2025-03-16', 2, 1],
  ])('counts %s: %s to %s', (_, from, to, numerator, denominator) => {
    expect(dayFactor(MONTHS, periodOf(from, to))).toEqual({ numerator, denominator });
  });

  it('is 1 inside the span that is left alone', () => {
    const rule: DayRule = { ...MONTHS, unscaledFrom: '28', unscaledThrough: '31' };
    expect(dayFactor(rule, periodOf('2025-01-21', '2025-02-21'))).toEqual({ numerator: 1, denominator: 1 });
    // 32 days: 11/31 + 21/28 = 959/868 = 137/124
    expect(dayFactor(rule, periodOf('2025-01-21', '2025-02-22'))).toEqual({
      numerator: 137,
      denominator: 124,
    });
  });

  it('rounds the part of each month, or their sum', () => {
    // 11/31 = 0.354… and 10/28 = 0.357…: 0.4 + 0.4, or 0.711… as 0.7.
    const factor = { step: '0.1', mode: 'half-up' } as const;
    const period = periodOf('2025-01-21', '2025-02-11');
    expect(dayFactor({ ...MONTHS, factor, rounded: 'each-month' }, period)).toEqual({
      numerator: 4,
      denominator: 5,
    });
    expect(dayFactor({ ...MONTHS, factor, rounded: 'sum' }, period)).toEqual({
      numerator: 7,
      denominator: 10,
    });
  });
});

describe('limits under a day rule', () => {
  const slabs: Charge = {
    id: 'energy',
    label: 'Energy charge',
    clause: 'T 4.2',
    kind: 'slabs',
    on: 'billed',
    method: 'telescopic',
    slabs: [{ upTo: '100', rate: '3' }, { upTo: '200', rate: '5' }, { rate: '10' }],
    scaledBy: 'month',
  };
  const bill = (rule: DayRule, billed: string): string =>
    lineOf(tariffOf([slabs], { dayRules: { month: rule } }), { period: daysFrom(31), billed });

  it('are scaled exactly where no rounding is stated: 103 1/3 and 206 2/3', () => {
    // 310 + 103 1/3 × 5 + 1 1/3 × 10
    expect(bill(THIRTIETHS, '208')).toBe('840');
    // 310 + 102 2/3 × 5
    expect(bill(THIRTIETHS, '206')).toBe('823.33');
  });

  it('are scaled by the factor as it was rounded: 1.03 months make 103 and 206', () => {
    const rule: DayRule = { ...THIRTIETHS, factor: HUNDREDTHS };
    expect(bill(rule, '103')).toBe('309');
    expect(bill(rule, '104')).toBe('314');
    expect(bill(rule, '206')).toBe('824');
    expect(bill(rule, '207')).toBe('834');
  });

  it('are rounded where the rule rounds them: 103 and 207', () => {
    const rule: DayRule = { ...THIRTIETHS, limits: { step: '1', mode: 'half-up' } };
    expect(bill(rule, '207')).toBe('829'); // 309 + 104 × 5
    expect(bill(rule, '208')).toBe('839');
    const down: DayRule = { ...THIRTIETHS, limits: { step: '0.5', mode: 'down' } };
    expect(bill(down, '207')).toBe('831.5'); // 103 × 3 + 103.5 × 5 + 0.5 × 10
  });

  it('of whole slabs and of tables are scaled, too', () => {
    const whole = tariffOf([{ ...slabs, method: 'whole' }], { dayRules: { month: THIRTIETHS } });
    expect(lineOf(whole, { period: daysFrom(38), billed: '126' })).toBe('378'); // limit 126.66…
    expect(lineOf(whole, { period: daysFrom(38), billed: '127' })).toBe('635');
    const tables: Charge = {
      id: 'energy',
      label: 'Energy charge',
      clause: 'T 4.2',
      kind: 'slab-tables',
      on: 'billed',
      tables: [
        { upTo: '100', slabs: [{ upTo: '30', rate: '1' }, { rate: '3' }] },
        { slabs: [{ rate: '10' }] },
      ],
      scaledBy: 'month',
    };
    const tabled = tariffOf([tables], { dayRules: { month: THIRTIETHS } });
    expect(lineOf(tabled, { period: daysFrom(38), billed: '126' })).toBe('302'); // 38 × 1 + 88 × 3
    expect(lineOf(tabled, { period: daysFrom(38), billed: '127' })).toBe('1270');
  });

  it('of the first units are scaled: 1.50 off on 63 1/3 units is 95.00', () => {
    const subsidy: Charge = {
      id: 'subsidy',
      label: 'Subsidy',
      clause: 'T 5.3',
      kind: 'per-unit',
      on: 'billed',
      rate: '-1.50',
      firstUnits: '50',
      scaledBy: 'month',
    };
    const tariff = tariffOf([subsidy], { dayRules: { month: THIRTIETHS } });
    expect(lineOf(tariff, { period: daysFrom(38), billed: '170' })).toBe('-95');
    expect(lineOf(tariff, { period: daysFrom(38), billed: '63' })).toBe('-94.5');
  });

  it('stay as they are in a charge that no day rule scales', () => {
    const tariff = tariffOf([{ ...slabs, scaledBy: undefined }], { dayRules: { month: THIRTIETHS } });
    expect(lineOf(tariff, { period: daysFrom(61), billed: '208' })).toBe('880'); // 300 + 500 + 80
  });
});
