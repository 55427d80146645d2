import { describe, expect, it } from 'vitest';
import { workedQuote } from '../../../../tests/support/demo-quote.ts';
import { firstYear, savingLimits } from './first-year.ts';

describe('the first year', () => {
  it('is the first of the life', () => {
    expect(firstYear({ years: ['one', 'two'] })).toBe('one');
    expect(() => firstYear({ years: [] })).toThrow('a quote has at least one year');
  });
});

describe('what bills can be lowered by', () => {
  const quote = workedQuote();

  // Bills of 38,931.60 without the plant; fixed charges of 4 kW × 60.00 × 12 = 2,880.00.
  it('is the bills less the fixed charges', () => {
    expect(savingLimits(quote, { fixedCharges: 288_000 })).toEqual({
      bills: 3_893_160,
      fixed: 288_000,
      most: 3_605_160,
      basis: 'the fixed charges',
    });
  });

  it('goes by the smallest bill where they are not known', () => {
    expect(savingLimits(quote, { fixedCharges: null })).toMatchObject({
      fixed: 288_000,
      basis: 'twelve times the smallest bill',
    });
    const credited = { ...quote, measures: { ...quote.measures, smallestBill: -5 } };
    expect(savingLimits(credited, { fixedCharges: null })).toMatchObject({ fixed: 0, most: 3_893_160 });
  });
});
