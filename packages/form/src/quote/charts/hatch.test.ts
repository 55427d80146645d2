import { expect, it } from 'vitest';
import { boxOf, hatchPath } from './hatch.ts';

const numbers = (path: string): number[][] =>
  [...path.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x = '', y = '']) => [Number(x), Number(y)]);

it('keeps within a box', () => {
  const points = numbers(hatchPath(boxOf([10, 20], [19, 50]), 6));
  expect(points.length > 4).toBe(true);
  for (const [x = 0, y = 0] of points) {
    expect(x >= 10 && x <= 19).toBe(true);
    expect(y >= 20 && y <= 50).toBe(true);
  }
});

it('leaves out what a shape leaves out', () => {
  // A notch from above, 4 wide, down to 6 of 10: the line through (2, 8) and (10, 0) stops at its sides.
  const notched = [
    [0, 0],
    [4, 0],
    [4, 6],
    [8, 6],
    [8, 0],
    [12, 0],
    [12, 10],
    [0, 10],
  ] as const;
  expect(hatchPath(notched, 10)).toBe('M0 10L4 6M8 2L10 0M10 10L12 8');
});

it('draws nothing over nothing', () => {
  expect(hatchPath([], 6)).toBe('');
  expect(hatchPath(boxOf([5, 5], [5, 20]), 6)).toBe('');
});
