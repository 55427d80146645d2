import { expect, it } from 'vitest';
import { sortedQuantile } from './sorted-quantile.ts';

const VALUES = Float64Array.of(10, 20, 40, 80, 160);

it('lies on the line between two values', () => {
  expect([0, 0.25, 0.5, 0.75, 1].map((part) => sortedQuantile(VALUES, part))).toEqual([10, 20, 40, 80, 160]);
  // Place 0.125 × 4 = 0.5 and 0.875 × 4 = 3.5.
  expect([0.125, 0.875].map((part) => sortedQuantile(VALUES, part))).toEqual([15, 120]);
});

it('takes a single value and refuses none', () => {
  expect(sortedQuantile(Float64Array.of(7), 0.9)).toBe(7);
  expect(() => sortedQuantile(new Float64Array(0), 0.5)).toThrow('no values have no quantile');
  for (const part of [-0.1, 1.1, NaN]) expect(() => sortedQuantile(VALUES, part)).toThrow(RangeError);
});
