import { describe, expect, it } from 'vitest';
import { workedQuote } from '../../../../tests/support/demo-quote.ts';
import type { FlyerDocument } from './flyer-document.ts';
import { priceFlags } from './flyer-price-flags.ts';

/** 216,000 less a subsidy of 54,000. */
const DEMO = workedQuote();
const REFUSED = workedQuote({}, false);
const facts = { fixedCharges: null, topRate: null };

const codes = (claims: Omit<FlyerDocument, 'format'>, quote = DEMO) =>
  priceFlags({ flyer: { format: 'unitbook-flyer-1', ...claims }, quote, facts }).map(({ code }) =>
    code.replace('quote/flyer-', ''),
  );

describe('a payback', () => {
  // 162,000 ÷ 44,160 is 3.668…, 216,000 ÷ 44,160 is 4.891…
  it.each([
    ['4', ['no-upkeep', 'subsidy-assumed']],
    ['3.7', ['no-upkeep', 'subsidy-assumed']],
    ['3.67', ['no-upkeep', 'subsidy-assumed']],
    ['3.70', []],
    ['3.6', []],
    ['3.8', []],
    ['4.9', ['no-upkeep']],
  ])('of %s years by a saving of 44,160: %j', (claimedPayback, expected) => {
    expect(codes({ claimedPayback, claimedSaving: '44160' })).toEqual(expected);
  });

  it('by its own prices', () => {
    const claims = { claimedPayback: '5.0', claimedSaving: '30000' };
    expect(codes({ ...claims, netPrice: '150000' })).toEqual(['no-upkeep']);
    expect(codes({ ...claims, price: '204000' })).toEqual(['no-upkeep', 'subsidy-assumed']);
    expect(codes({ ...claims, price: '150000' })).toEqual(['no-upkeep']);
  });

  it('without a saving, or by none, is not looked at', () => {
    expect(codes({ claimedPayback: '3.7' })).toEqual([]);
    expect(codes({ claimedSaving: '44160' })).toEqual([]);
    expect(codes({ claimedPayback: '0', claimedSaving: '0' })).toEqual([]);
  });

  it('of the whole price on both counts takes no subsidy for received', () => {
    // 162,000 ÷ 1,000,000 and 216,000 ÷ 1,000,000 are both 0.2 years.
    expect(codes({ claimedPayback: '0.2', claimedSaving: '1000000' })).toEqual(['no-upkeep']);
  });
});

describe('a net price', () => {
  it.each([
    ['162000', ['subsidy-assumed']],
    ['162000.01', []],
    ['216000', []],
  ])('of %s beside our prices: %j', (netPrice, expected) => {
    expect(codes({ netPrice })).toEqual(expected);
  });

  it('beside its own price', () => {
    expect(codes({ price: '200000', netPrice: '146000' })).toEqual(['subsidy-assumed']);
    expect(codes({ price: '200000', netPrice: '162000' })).toEqual([]);
  });

  it('hangs on no subsidy where the quote has none', () => {
    expect(codes({ netPrice: '216000' }, REFUSED)).toEqual([]);
    expect(codes({ claimedPayback: '4.9', claimedSaving: '44160' }, REFUSED)).toEqual(['no-upkeep']);
  });
});
