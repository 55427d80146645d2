import { describe, expect, it } from 'vitest';
import { workedQuote } from '../../../../tests/support/demo-quote.ts';
import type { FlyerDocument } from './flyer-document.ts';
import { commonRate, isAllAt, unitsReckoned, type FlyerGround } from './flyer-ground.ts';

const quote = workedQuote();
const ground = (claims: Omit<FlyerDocument, 'format'>, topRate: string | null = '8'): FlyerGround => ({
  flyer: { format: 'unitbook-flyer-1', ...claims },
  quote,
  facts: { fixedCharges: null, topRate },
});

describe('what a flyer reckons with', () => {
  it('are its own units, else those of the quote', () => {
    expect(unitsReckoned(ground({ claimedGeneration: '6000' }))).toEqual({
      numerator: 6000n,
      denominator: 1n,
    });
    expect(unitsReckoned(ground({}))).toEqual({ numerator: 5_520_000n, denominator: 1000n });
  });

  it('is one rate where its saving is just its units at it', () => {
    expect(isAllAt(ground({ claimedSaving: '44160' }), '8.0')).toBe(true);
    expect(isAllAt(ground({ claimedSaving: '44160' }), '8.01')).toBe(false);
    expect(isAllAt(ground({}), '8')).toBe(false);
    expect(isAllAt(ground({ claimedSaving: '0' }), '0')).toBe(false);
  });

  it('is the rate it names, else the highest, else none', () => {
    expect(commonRate(ground({ claimedRate: '7', claimedSaving: '44160' }))).toBe('7');
    expect(commonRate(ground({ claimedSaving: '44160' }))).toBe('8');
    expect(commonRate(ground({ claimedSaving: '44161' }))).toBeNull();
    expect(commonRate(ground({ claimedSaving: '44160' }, null))).toBeNull();
  });
});
