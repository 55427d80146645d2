import { describe, expect, it } from 'vitest';
import { isNothing, powerSum, signChanges, signedValue, turningSum } from './power-sum.ts';

const listed = (...amounts: readonly number[]) => powerSum(amounts.map((amount, time) => ({ time, amount })));

describe('a sum of powers', () => {
  it('is in order, without what comes to nothing, and near 1', () => {
    const terms = [
      { time: 2.5, amount: 8 },
      { time: 0, amount: -4 },
      { time: 1, amount: 3 },
      { time: 1, amount: -3 },
      { time: 2.5, amount: 2 },
    ];
    expect(powerSum(terms)).toEqual({ times: [0, 2.5], amounts: [-0.5, 1.25] });
    expect(powerSum([])).toEqual({ times: [], amounts: [] });
    // 1e-200 ÷ 2^700 is below the least double.
    expect(listed(1e-200, -(2 ** 700))).toEqual({ times: [1], amounts: [-1] });
    expect(listed(0, 0)).toEqual({ times: [], amounts: [] });
  });

  it('has changes of sign, over zeros too', () => {
    expect([listed(), listed(1, 2), listed(-1, 0, 2), listed(1, -1, 0, 1)].map(signChanges)).toEqual([
      0, 0, 1, 2,
    ]);
  });

  it('has the sign of its value at any growth', () => {
    const sum = listed(-4, 2, 3);
    // −1 + 0.5 ÷ 2 + 0.75 ÷ 4, after the division by 4 in … by 2²; at ½ times ½²: −0.25 + 0.25 + 0.75.
    expect(signedValue(sum, 2)).toBe(-0.5625);
    expect(signedValue(sum, 0.5)).toBe(0.75);
    expect([1e-300, 1e300].map((growth) => Math.sign(signedValue(sum, growth)))).toEqual([1, -1]);
    expect(
      signedValue(
        powerSum([
          { time: 0.5, amount: 1 },
          { time: 2.5, amount: -1 },
        ]),
        2,
      ),
    ).toBe(0.75);
  });

  it('turns with one change of sign fewer', () => {
    for (const flows of [
      [-1, 2],
      [-1, 3, -1],
      [1, -1, 1, -1, 1],
      [-5, 1, 1, -9, 9],
    ]) {
      const sum = listed(...flows);
      expect(signChanges(turningSum(sum))).toBe(signChanges(sum) - 1);
    }
  });

  it('is nothing where it cannot be told from 0', () => {
    // (2 − 3 ÷ 1.5)² = 0.
    expect(isNothing(listed(4, -12, 9), 1.5)).toBe(true);
    expect(isNothing(listed(4, -12, 9.000001), 1.5)).toBe(false);
    expect(isNothing(listed(4, -12, 9), 1.5001)).toBe(false);
  });
});
