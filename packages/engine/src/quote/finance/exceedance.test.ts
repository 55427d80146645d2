import { expect, it } from 'vitest';
import {
  chanceOfShortfall,
  combinedSigma,
  EXCEEDANCE_CHANCES,
  exceedanceFactor,
  exceededYield,
} from './exceedance.ts';

// The quantiles of tables of the normal distribution to four decimals (from memory).
it('lies below the middle by a number of sigma', () => {
  expect(EXCEEDANCE_CHANCES.map((chance) => exceedanceFactor(chance).toFixed(4))).toEqual([
    '0.6745',
    '1.2816',
    '1.6449',
    '2.3263',
  ]);
  expect(exceedanceFactor(50)).toBe(0);
  expect(exceedanceFactor(10).toFixed(4)).toBe('-1.2816');
});

it('takes sigma off the middle', () => {
  // 1000 × (1 − 1.28155 × 0.1).
  expect(exceededYield({ middle: 1000, sigma: 0.1 }, 90).toFixed(1)).toBe('871.8');
  expect(exceededYield({ middle: 1000, sigma: 0.1 }, 50)).toBe(1000);
  expect(exceededYield({ middle: 1000, sigma: 0 }, 99)).toBe(1000);
});

it('tells how often a year falls short', () => {
  // One sigma below: 15.87 %; two: 2.28 %.
  expect(chanceOfShortfall(0.05, 0.05).toFixed(4)).toBe('0.1587');
  expect(chanceOfShortfall(0.1, 0.05).toFixed(4)).toBe('0.0228');
  expect(chanceOfShortfall(0, 0.05)).toBe(0.5);
});

it('puts independent doubts together', () => {
  expect(combinedSigma([3, 4])).toBe(5);
  expect(combinedSigma([])).toBe(0);
});

it('refuses chances and doubts that are none', () => {
  expect(() => exceedanceFactor(0)).toThrow(RangeError);
  expect(() => exceedanceFactor(100)).toThrow(RangeError);
  expect(() => chanceOfShortfall(0.1, 0)).toThrow('sigma must be above 0, found 0');
  expect(() => chanceOfShortfall(NaN, 0.1)).toThrow('a shortfall must be finite');
});
