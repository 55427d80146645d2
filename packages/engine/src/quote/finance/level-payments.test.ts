import { describe, expect, it } from 'vitest';
import { interestOf, interestPart, levelPayment, principalOf, principalPart } from './level-payments.ts';

// 300 at 100 % in two payments: 400 pays 300 of interest and 100 off; 400 pays 200 and the other 200.
const LOAN = { rate: 1, periods: 2, amount: 300 };
// At the begin: 200 at once leaves 100, which is 200 a period later.
const BEGIN = { ...LOAN, paid: 'begin' } as const;

describe('level payments', () => {
  it('pay an amount off', () => {
    expect(levelPayment(LOAN).toFixed(9)).toBe('400.000000000');
    expect(levelPayment(BEGIN).toFixed(9)).toBe('200.000000000');
    expect(levelPayment({ rate: 0, periods: 12, amount: 1200 }).toFixed(9)).toBe('100.000000000');
  });

  it('gather what is to be saved, or leave something owed', () => {
    // x × 1.25 + x = 2.25 x.
    expect(levelPayment({ rate: 0.25, periods: 2, amount: 0, saved: 225 }).toFixed(9)).toBe('100.000000000');
    expect(levelPayment({ rate: 0, periods: 2, amount: 300, saved: -100 }).toFixed(9)).toBe('100.000000000');
  });

  it('are interest and principal', () => {
    const parts = [1, 2].map((one) => [interestPart(LOAN, one), principalPart(LOAN, one)]);
    expect(parts.map((pair) => pair.map((part) => part.toFixed(9)))).toEqual([
      ['300.000000000', '100.000000000'],
      ['200.000000000', '200.000000000'],
    ]);
  });

  it('at the begin have no interest in the first', () => {
    const parts = [1, 2].map((one) => [interestPart(BEGIN, one), principalPart(BEGIN, one)]);
    expect(parts.map((pair) => pair.map((part) => part.toFixed(9)))).toEqual([
      ['0.000000000', '200.000000000'],
      ['100.000000000', '100.000000000'],
    ]);
  });

  it('add up over a span', () => {
    const all = { from: 1, through: 2 };
    expect([principalOf(LOAN, all), interestOf(LOAN, all)].map((sum) => sum.toFixed(9))).toEqual([
      '300.000000000',
      '500.000000000',
    ]);
    const free = { rate: 0, periods: 4, amount: 100 };
    expect([interestOf(free, { from: 2, through: 3 }), principalOf(free, { from: 2, through: 3 })]).toEqual([
      0, 50,
    ]);
  });

  it('refuse payments that are not there', () => {
    expect(() => levelPayment({ ...LOAN, periods: 0 })).toThrow(RangeError);
    expect(() => levelPayment({ ...LOAN, rate: -1 })).toThrow(RangeError);
    expect(() => principalPart(LOAN, 3)).toThrow('there is no payment 3');
    expect(() => interestPart(LOAN, 0)).toThrow(RangeError);
    expect(() => interestOf(LOAN, { from: 2, through: 1 })).toThrow(RangeError);
  });
});
