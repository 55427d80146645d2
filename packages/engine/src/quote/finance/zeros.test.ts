import { describe, expect, it } from 'vitest';
import { powerSum } from './power-sum.ts';
import { zerosOf } from './zeros.ts';

const zeros = (...amounts: readonly number[]) =>
  zerosOf(powerSum(amounts.map((amount, time) => ({ time, amount }))));

describe('the zeros of a sum of powers', () => {
  it('are none without a change of sign', () => {
    expect([zeros(), zeros(5), zeros(1, 2, 3), zeros(-1, 0, -3)]).toEqual([[], [], [], []]);
  });

  it('are one with one', () => {
    expect(zeros(-2, 3)).toEqual([1.5]);
    expect(zeros(-4, 0, 9)).toEqual([1.5]);
    expect(zeros(-8, 1)).toEqual([0.125]);
  });

  it('that only touch count once', () => {
    // (2 − 3 ÷ x)² and (1 − 2 ÷ x)³.
    expect(zeros(4, -12, 9)).toEqual([1.5]);
    expect(zeros(1, -6, 12, -8)).toEqual([2]);
    // (1 − 2 ÷ x)² × (1 − 4 ÷ x).
    expect(zeros(1, -8, 20, -16).map((zero) => zero.toFixed(12))).toEqual([
      '2.000000000000',
      '4.000000000000',
    ]);
  });

  it('just above the axis are none, just below two', () => {
    expect(zeros(4, -12, 9.0000001)).toEqual([]);
    // 4 x² − 12 x + 8.99: x = 1.5 ± 0.05.
    expect(zeros(4, -12, 8.99).map((zero) => zero.toFixed(12))).toEqual(['1.450000000000', '1.550000000000']);
  });

  it('beyond what doubles hold are set to the ends', () => {
    expect(zeros(-1e300, 1)).toEqual([2 ** -53]);
    // The root of x is 1e200.
    const terms = [
      { time: 0, amount: -1 },
      { time: 0.5, amount: 1e200 },
    ];
    expect(zerosOf(powerSum(terms))).toEqual([Number.MAX_VALUE]);
    expect(zeros(-1, 1e150)).toEqual([1e150]);
    expect(zeros(-1e-150, 1e150)).toEqual([1e300]);
  });

  it('at times that are no whole numbers', () => {
    // 3 = 2 × x^½ and 2 = x^2.5 − …: the square of 1.5, the root of 2.
    expect(
      zerosOf(
        powerSum([
          { time: 0, amount: -2 },
          { time: 0.5, amount: 3 },
        ]),
      ),
    ).toEqual([2.25]);
    expect(
      zerosOf(
        powerSum([
          { time: 1, amount: -1 },
          { time: 3, amount: 4 },
        ]),
      ),
    ).toEqual([2]);
  });
});
