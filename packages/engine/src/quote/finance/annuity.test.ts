import { expect, it } from 'vitest';
import { capitalRecoveryFactor, singlePresentValueFactor, uniformPresentValueFactor } from './annuity.ts';

it('discounts one amount', () => {
  expect(singlePresentValueFactor(0.25, 2)).toBe(0.64);
  expect(singlePresentValueFactor(0, 30)).toBe(1);
  expect(singlePresentValueFactor(0.25, 0)).toBe(1);
  expect(() => singlePresentValueFactor(-1, 2)).toThrow(RangeError);
  expect(() => singlePresentValueFactor(0.1, Infinity)).toThrow('periods must be finite');
});

it('discounts the same amount every period', () => {
  // 1 ÷ 1.25 + 1 ÷ 1.5625 = 0.8 + 0.64.
  expect(uniformPresentValueFactor(0.25, 2).toFixed(12)).toBe('1.440000000000');
  expect(uniformPresentValueFactor(0, 20)).toBe(20);
  // 1 ÷ 0.5 + 1 ÷ 0.25 at -50 %.
  expect(uniformPresentValueFactor(-0.5, 2).toFixed(12)).toBe('6.000000000000');
  expect(() => uniformPresentValueFactor(-1, 2)).toThrow(RangeError);
});

it('loses no digits at a rate near 0', () => {
  // 25 − 1e-12 × (1 + 2 + … + 25).
  expect(uniformPresentValueFactor(1e-12, 25).toFixed(12)).toBe('24.999999999675');
});

it('spreads an amount over periods', () => {
  // The inverse of 1.44.
  expect(capitalRecoveryFactor(0.25, 2).toFixed(9)).toBe('0.694444444');
  expect(capitalRecoveryFactor(0, 4)).toBe(0.25);
  expect(capitalRecoveryFactor(0.25, 1).toFixed(9)).toBe('1.250000000');
  expect(() => capitalRecoveryFactor(0.25, 0)).toThrow('nothing can be recovered in 0 periods');
  expect(() => capitalRecoveryFactor(-1, 2)).toThrow(RangeError);
});
