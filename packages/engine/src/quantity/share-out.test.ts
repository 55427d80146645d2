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
