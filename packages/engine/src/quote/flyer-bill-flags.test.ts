import { describe, expect, it } from 'vitest';
import { firstYearQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import { billFlags } from './flyer-bill-flags.ts';
import type { FlyerDocument } from './flyer-document.ts';
import type { FlyerFacts } from './flyer-ground.ts';
import type { Quote } from './quote.ts';

const DEMO = workedQuote();
const FACTS: FlyerFacts = { fixedCharges: 288_000, topRate: '8.00', surplusRate: '2.60' };

type Claims = Omit<FlyerDocument, 'format'>;
const flags = (claims: Claims, facts = FACTS, quote = DEMO) =>
  billFlags({ flyer: { format: 'unitbook-flyer-1', ...claims }, quote, facts });
const codes = (claims: Claims, facts = FACTS, quote = DEMO) =>
  flags(claims, facts, quote).map(({ code }) => code.replace('quote/flyer-', ''));

describe('a saving', () => {
  // Bills of 38,931.60, fixed charges of 2,880.00, surplus of 1,079.00: 37,130.60 and 40,010.60.
  it.each([
    ['0', []],
    ['37130.60', []],
    ['37130.61', ['fixed-charges']],
    ['40010.60', ['fixed-charges']],
    ['40010.61', ['saving-above-bills', 'fixed-charges']],
  ])('of %s: %j', (claimedSaving, expected) => {
    expect(codes({ claimedSaving })).toEqual(expected);
  });

  it('is held against bills alone where no surplus is paid', () => {
    const quote = firstYearQuote(DEMO, { surplus: 0 });
    const [finding] = flags({ claimedSaving: '38931.61' }, FACTS, quote);
    expect(finding?.expected).toBe('at most the bills of a year without the plant, 38931.60');
  });

  it('is not asked about fixed charges where there are none', () => {
    expect(codes({ claimedSaving: '40010.61' }, { ...FACTS, fixedCharges: 0 })).toEqual([
      'saving-above-bills',
    ]);
  });
});

describe('the bill of a month', () => {
  // 2,880.00 ÷ 12.
  it.each([
    ['240', []],
    ['239.99', ['fixed-charges']],
    ['0', ['fixed-charges']],
  ])('of %s: %j', (monthlyBillAfter, expected) => {
    expect(codes({ monthlyBillAfter })).toEqual(expected);
  });

  it('is asked about beside a saving and words', () => {
    const claims = { claimedSaving: '37130.61', monthlyBillAfter: '0', words: 'Nil bills, free' };
    expect(flags(claims)[0]?.found).toBe(
      'a saving of 37130.61 a year, a bill of 0 a month, the words "nil bills"',
    );
    expect(flags({ monthlyBillAfter: '0' })).toMatchObject([
      { found: 'a bill of 0 a month', path: ['monthlyBillAfter'] },
    ]);
  });
});

describe('the highest rate', () => {
  it.each([
    // 5,520 × 8 is 44,160; 4,000 × 8 is 32,000.
    ['the units of the quote', { claimedSaving: '44160.00' }, true],
    ['one coin more', { claimedSaving: '44160.01' }, false],
    ['its own units', { claimedSaving: '32000', claimedGeneration: '4000.0' }, true],
    ['units that do not fit', { claimedSaving: '44160', claimedGeneration: '5519' }, false],
    ['the rate itself', { claimedRate: '8' }, true],
    ['another rate', { claimedRate: '7.999' }, false],
    ['no units and no saving', { claimedSaving: '0', claimedGeneration: '0' }, false],
  ])('is seen by %s', (_, claims, isSeen) => {
    expect(codes(claims).includes('top-rate')).toBe(isSeen);
  });

  it('says which units it was applied to, and where', () => {
    expect(flags({ claimedRate: '8', claimedGeneration: '5600.5' })[0]).toMatchObject({
      path: ['claimedRate'],
      found: 'every one of 5600.5 units at 8.00, the highest rate of the tariff',
    });
  });
});

describe('surplus', () => {
  const claims = { claimedRate: '2.61' };
  const year = (surplus: number, generation: number): Quote =>
    firstYearQuote(DEMO, { surplus, generation, use: 5_300_000 });

  it.each([
    ['2.60', []],
    ['2.61', ['surplus-at-retail']],
  ])('at %s, where 2.60 is paid: %j', (claimedRate, expected) => {
    expect(codes({ claimedRate })).toEqual(expected);
  });

  it('is not asked about where there is none', () => {
    expect(codes(claims, FACTS, year(0, 5_300_000))).toEqual([]);
    expect(codes(claims, FACTS, year(1, 5_300_000))).toEqual(['surplus-at-retail']);
    expect(codes(claims, FACTS, year(0, 5_300_001))).toEqual(['surplus-at-retail']);
  });

  // 220 units beyond the use of the year: at 2.61 they would bring 574.20.
  it.each([
    [57_420, []],
    [57_419, ['surplus-at-retail']],
    [0, ['surplus-at-retail']],
  ])('whose rate is not known goes by what it brings: %i coins', (surplus, expected) => {
    const facts = { fixedCharges: 288_000, topRate: '8.00' };
    expect(codes(claims, facts, year(surplus, 5_520_000))).toEqual(expected);
  });

  it('whose rate is not known is not asked about where all could be used', () => {
    expect(codes(claims, { ...FACTS, surplusRate: null }, year(100, 5_300_000))).toEqual([]);
  });

  it('names its rate only where it is known', () => {
    const [finding] = flags(claims, { ...FACTS, surplusRate: null }, year(0, 5_520_000));
    expect(finding).toMatchObject({
      path: ['claimedRate'],
      expected: 'surplus at what is paid for it: 0.00 in the first year by this quote',
    });
  });
});
