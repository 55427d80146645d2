import { expect, it } from 'vitest';
import { printedSizes, usualSizes } from './quote-usual-sizes.ts';

const sizesOf = (watts: number): readonly number[] => {
  const { from, step, count } = usualSizes(watts);
  return Array.from({ length: count }, (_, at) => from + at * step);
};

it.each([
  // A twentieth of 4,000 is 200: 19 × 200 below, 20 × 200 above.
  [4000, 200, 200, 8000],
  // A twentieth of 3,300 is 165, the round number below it 150: 3,300 − 2,850, and 3,300 + 3,000.
  [3300, 450, 150, 6300],
  // A twentieth of 5,000 is 250.
  [5000, 250, 250, 10_000],
  // A twentieth of 12,345 is 617.25: 600; 12,345 − 11,400, and 12,345 + 12,000.
  [12_345, 945, 600, 24_345],
  // A twentieth of 150 is 7.5, whole watts: 7; 150 − 133, and 150 + 140.
  [150, 17, 7, 290],
  // Nothing is smaller than a watt.
  [1, 1, 1, 40],
])('sets %i W among forty sizes from %i W on, %i W apart, up to %i W', (watts, from, step, last) => {
  const sizes = sizesOf(watts);
  expect(sizes).toHaveLength(40);
  expect([sizes[0], (sizes[1] ?? 0) - (sizes[0] ?? 0), sizes.at(-1)]).toEqual([from, step, last]);
  expect(sizes).toContain(watts);
});

it('prints every fourth, the quoted one among them', () => {
  const points = sizesOf(4000).map((watts) => ({ watts }));
  expect(printedSizes(points, 4000).map(({ watts }) => watts)).toEqual([
    800, 1600, 2400, 3200, 4000, 4800, 5600, 6400, 7200, 8000,
  ]);
});

it('prints from the first on where the quoted size could not be billed', () => {
  const points = [1, 2, 3, 4, 5].map((watts) => ({ watts }));
  expect(printedSizes(points, 9).map(({ watts }) => watts)).toEqual([1, 5]);
});
