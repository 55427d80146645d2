import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareSteps } from './largest-remainder.ts';

function shared(
  total: number,
  step: number,
  weights: readonly number[],
  most: readonly number[] | null = null,
) {
  const into = new Float64Array(weights.length + 1);
  shareSteps(total, step, {
    into,
    from: 1,
    weights: Float64Array.from(weights),
    most: most === null ? null : Float64Array.from(most),
  });
  expect(into[0]).toBe(0);
  return [...into.subarray(1)];
}

describe('shareSteps', () => {
  it('gives what is left over to the largest remainders, the earlier first among equals', () => {
    // 9 by 5, 3 and 2 are 4.5, 2.7 and 1.8: 7 by whole ones, and the 0.8 and the 0.7 are made up.
    expect(shared(9000, 1000, [5, 3, 2])).toEqual([4000, 3000, 2000]);
    expect(shared(10_000, 1000, [1, 1, 1])).toEqual([4000, 3000, 3000]);
    expect(shared(10, 1, [1, 1, 1])).toEqual([4, 3, 3]);
  });

  it('gives nothing out where there is nothing', () => {
    expect(shared(0, 1000, [1, 2])).toEqual([0, 0]);
    expect(shared(0, 1000, [0, 0])).toEqual([0, 0]);
  });

  it('gives no place more than its limit', () => {
    // 2.5 and 2.5: the first has room for 2 alone.
    expect(shared(5000, 1000, [1, 1], [2000, 3000])).toEqual([2000, 3000]);
    expect(shared(5000, 1000, [1, 0], [2000, 9000])).toEqual([2000, 3000]);
  });

  it('sums to the whole, within one step of each exact share', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), weights, (steps, own) => {
        fc.pre(own.some((weight) => weight > 0));
        const sum = own.reduce((all, weight) => all + weight, 0);
        const result = shared(steps * 1000, 1000, own);
        expect(result.reduce((all, one) => all + one, 0)).toBe(steps * 1000);
        result.forEach((one, at) => {
          const exact = (steps * (own[at] ?? 0)) / sum;
          expect(Math.abs(one / 1000 - exact) < 1 + 1e-9).toBe(true);
        });
      }),
    );
  });
});
