import { describe, expect, it } from 'vitest';
import { normalBelow, normalQuantile } from './normal-distribution.ts';

describe('the normal distribution', () => {
  // Handbook of Mathematical Functions, Table 26.1, Abramowitz and Stegun, NBS, 1964 (from memory).
  it.each([
    [0, '0.500000000000'],
    [1, '0.841344746069'],
    [2, '0.977249868052'],
    [3, '0.998650101968'],
    [-1, '0.158655253931'],
    [-2, '0.022750131948'],
  ])('below %s lies %s', (z, part) => {
    expect(normalBelow(z).toFixed(12)).toBe(part);
  });

  // The check values of algorithm AS 241, Wichura, Applied Statistics, 1988 (from memory), to 15 digits.
  it.each([
    [0.25, '-0.674489750196082'],
    [0.001, '-3.09023230616781'],
    [1e-20, '-9.26234008979841'],
  ])('the quantile of %s is %s', (part, z) => {
    expect(normalQuantile(part).toPrecision(15)).toBe(z);
  });

  it('is the same on both sides', () => {
    for (const part of [0.01, 0.05, 0.1, 0.25, 0.4]) {
      expect(normalQuantile(1 - part).toFixed(12)).toBe((-normalQuantile(part)).toFixed(12));
      expect(normalBelow(normalQuantile(part)).toFixed(12)).toBe(part.toFixed(12));
    }
  });

  it('is all or nothing far out', () => {
    expect([normalBelow(-8), normalBelow(8)]).toEqual([0, 1]);
    expect([normalBelow(-7), normalBelow(7)].map((part) => part.toFixed(11))).toEqual([
      '0.00000000000',
      '1.00000000000',
    ]);
  });

  it('refuses parts that are none', () => {
    for (const part of [0, 1, -0.1, 1.1, NaN]) expect(() => normalQuantile(part)).toThrow(RangeError);
    expect(() => normalBelow(NaN)).toThrow('a number of sigma must be finite');
  });
});
