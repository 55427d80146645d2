import { expect, it } from 'vitest';
import { compoundedRate, effectiveRate, nominalRate, periodRate, realRate } from './rate-conversions.ts';

it('compounds', () => {
  // 1.25 × 1.25; half of 0.5 twice is the same.
  expect(compoundedRate(0.25, 2).toFixed(12)).toBe('0.562500000000');
  expect(effectiveRate(0.5, 2).toFixed(12)).toBe('0.562500000000');
  expect(compoundedRate(0, 12)).toBe(0);
  expect(effectiveRate(0.07, 1).toFixed(15)).toBe('0.070000000000000');
});

it('goes back to the rate of a period', () => {
  expect(periodRate(0.5625, 2).toFixed(12)).toBe('0.250000000000');
  expect(periodRate(effectiveRate(0.09, 12), 12).toFixed(15)).toBe('0.007500000000000');
});

it('takes inflation out and puts it back', () => {
  expect(realRate(0.5, 0.25)).toBe(0.2);
  expect(nominalRate(0.5, 0.25)).toBe(0.875);
  expect(realRate(0.05, 0.05)).toBe(0);
  expect(nominalRate(realRate(0.08, 0.05), 0.05).toFixed(15)).toBe('0.080000000000000');
});

it('refuses rates of -100 % and no periods', () => {
  expect(() => compoundedRate(-1, 2)).toThrow(RangeError);
  expect(() => effectiveRate(-2, 2)).toThrow(RangeError);
  expect(() => effectiveRate(0.1, 0)).toThrow('0 periods are no year');
  expect(() => periodRate(0.1, 0)).toThrow('0 periods are no year');
  expect(() => compoundedRate(0.1, NaN)).toThrow('NaN periods are no year');
  expect(() => realRate(-1, 0)).toThrow(RangeError);
  expect(() => realRate(0, -1)).toThrow(RangeError);
  expect(() => nominalRate(-1, 0)).toThrow(RangeError);
});
