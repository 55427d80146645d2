import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOut } from './share-out.ts';

describe('sharing out', () => {
  it.each([
    ['100.00 in three equal parts', 10_000, [1, 1, 1], [3334, 3333, 3333]],
    ['1000.01 by 31, 28 and 31 days', 100_001, [31, 28, 31], [34_445, 31_111, 34_445]],
    ['a debt', -10_000, [1, 1, 1], [-3334, -3333, -3333]],
    ['nothing', 0, [1, 2], [0, 0]],
    ['one unit among many', 1, [1, 1, 1, 1], [1, 0, 0, 0]],
    ['the larger remainder first', 10, [1, 2], [3, 7]],
    ['nothing to a weight of 0', 7, [0, 3, 0], [0, 7, 0]],
    ['all to the only one', 7, [5], [7]],
    ['the largest amount', 9_007_199_254_740_991, [1, 1], [4_503_599_627_370_496, 4_503_599_627_370_495]],
  ] as const)('shares %s', (_, amount, weights, shares) => {
    expect(shareOut(amount, weights)).toEqual(shares);
  });

  it.each([
    ['whole units of watt-hours', 10_001_000, [1, 1, 1], 1000, [3_334_000, 3_334_000, 3_333_000]],
    ['what is finer than a unit not at all', 999, [1, 1], 1000, [0, 0]],
    // 10.5 by 2 to 1 is 7 and 3.5: nothing of ten whole units is left for a half
    ['the part of a unit as remainders see it', 10_500, [2, 1], 1000, [7000, 3000]],
    // 1.9 by 3 to 2 is 1.14 and 0.76; one whole unit in all
    ['no more than the whole units there are', 1900, [3, 2], 1000, [1000, 0]],
    // 2.5 by 1 to 3 is 0.625 and 1.875; 2 alone would be 0.5 and 1.5, and the first name would win the tie
    ['by the remainders of the whole amount', 2500, [1, 3], 1000, [0, 2000]],
    ['a debt in steps', -10_001, [1, 1], 100, [-5000, -5000]],
  ] as const)('shares in steps %s', (_, amount, weights, step, shares) => {
    expect(shareOut(amount, weights, step)).toEqual(shares);
  });

  it.each([
    ['no weight', [], 'weights must be 0 or more with one above 0, found '],
    ['weights of 0 only', [0, 0], 'weights must be 0 or more with one above 0, found 0, 0'],
    ['a weight below 0', [3, -1], 'weights must be 0 or more with one above 0, found 3, -1'],
  ] as const)('refuses %s', (_, weights, message) => {
    expect(() => shareOut(100, weights)).toThrow(new RangeError(message));
  });

  const weighted = fc
    .array(fc.nat(10_000), { minLength: 1, maxLength: 12 })
    .filter((all) => all.some((one) => one > 0));

  it('loses nothing and adds nothing', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), weighted, (amount, weights) => {
        const shares = shareOut(amount, weights);
        expect(shares.reduce((sum, share) => sum + BigInt(share), 0n)).toBe(BigInt(amount));
      }),
    );
  });

  it('gives out all whole steps, and nothing finer', () => {
    fc.assert(
      fc.property(fc.maxSafeNat(), weighted, fc.integer({ min: 1, max: 1000 }), (amount, weights, step) => {
        const shares = shareOut(amount, weights, step);
        expect(shares.every((share) => share % step === 0)).toBe(true);
        expect(shares.reduce((sum, share) => sum + BigInt(share), 0n)).toBe(BigInt(amount - (amount % step)));
      }),
    );
  });

  it('gives everyone the exact share, but for less than one unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), weighted, (amount, weights) => {
        const total = weights.reduce((sum, weight) => sum + weight, 0);
        shareOut(amount, weights).forEach((share, index) => {
          const exact = amount * (weights[index] ?? 0);
          expect(Math.abs(share * total - exact) < total).toBe(true);
        });
      }),
    );
  });
});
