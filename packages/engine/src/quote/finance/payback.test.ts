import { describe, expect, it } from 'vitest';
import { discountedPayback, simplePayback } from './payback.ts';

describe('the simple payback', () => {
  it('is interpolated within its year', () => {
    expect(simplePayback([-100, 60, 80])).toEqual({
      cumulative: [-100, -40, 40],
      crossings: [{ at: 1.5, recovered: true }],
      first: 1.5,
      last: 1.5,
    });
  });

  it('at the end of a year is that year', () => {
    expect(simplePayback([-100, 50, 50, 50]).first).toBe(2);
  });

  it('has a first and a last where a part is replaced', () => {
    // -100, 0, -50, 0: recovered after 1, owed again at once, recovered at 3.
    const { crossings, first, last } = simplePayback([-100, 100, -50, 50]);
    expect(crossings).toEqual([
      { at: 1, recovered: true },
      { at: 1, recovered: false },
      { at: 3, recovered: true },
    ]);
    expect([first, last]).toEqual([1, 3]);
  });

  it('does not last where more is owed at the end', () => {
    // -10, 10, -10: halfway through the first year, owed again halfway through the second.
    expect(simplePayback([-10, 20, -20])).toMatchObject({ first: 0.5, last: null });
  });

  it('is null where nothing comes back', () => {
    expect(simplePayback([-100, 30, 30])).toMatchObject({ crossings: [], first: null, last: null });
    expect(simplePayback([-100])).toMatchObject({ first: null, last: null });
  });

  it('is at once where nothing is laid out', () => {
    expect(simplePayback([0, 10])).toMatchObject({ first: 0, last: 0 });
    // 5, -5, 5: owed at ½, recovered at 1½.
    expect(simplePayback([5, -10, 10])).toMatchObject({ first: 0, last: 1.5 });
    expect(simplePayback([])).toEqual({ cumulative: [], crossings: [], first: 0, last: 0 });
  });

  it('refuses what is no whole number, or sums to none', () => {
    expect(() => simplePayback([-0.5, 1])).toThrow('must be whole, found -0.5');
    expect(() => simplePayback([NaN])).toThrow(RangeError);
    expect(() => simplePayback([Number.MAX_SAFE_INTEGER, 1])).toThrow(RangeError);
  });
});

describe('the discounted payback', () => {
  it('is of discounted flows', () => {
    // 50 ÷ 1.25 = 40, 150 ÷ 1.5625 = 96: 60 of 96 in the second year.
    expect(discountedPayback(0.25, [-100, 50, 150])).toEqual({
      cumulative: [-100, -60, 36],
      crossings: [{ at: 1.625, recovered: true }],
      first: 1.625,
      last: 1.625,
    });
  });

  it('is the simple one at a rate of 0, and may never come where that does', () => {
    expect(discountedPayback(0, [-100, 60, 80])).toEqual(simplePayback([-100, 60, 80]));
    // 80 + 16 of 100, where 100 + 25 were enough.
    expect(discountedPayback(0.25, [-100, 100, 25]).first).toBeNull();
    expect(simplePayback([-100, 100, 25]).first).toBe(1);
  });

  it('refuses a rate of -100 %', () => {
    expect(() => discountedPayback(-1, [-1, 1])).toThrow(RangeError);
  });
});
