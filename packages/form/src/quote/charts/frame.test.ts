import { expect, it } from 'vitest';
import { axisOf, plotOf } from './frame.ts';

const margins = { top: 10, right: 5, bottom: 20 };

it('reaches from round number to round number, zero among them', () => {
  const axis = axisOf([3, 9], [100, 0], 4);
  expect(axis.ticks).toEqual([0, 2, 4, 6, 8, 10]);
  expect([0, 5, 10].map(axis.at)).toEqual([100, 50, 0]);
  expect(axisOf([-9, -3], [100, 0], 4).ticks).toEqual([-10, -8, -6, -4, -2, 0]);
});

it('spends no whole step on a little below zero', () => {
  const axis = axisOf([3000, -100], [310, 0], 3);
  expect(axis.ticks).toEqual([0, 1000, 2000, 3000]);
  expect([3000, 0, -100].map(axis.at)).toEqual([0, 300, 310]);
});

it('says zero and no more of nothing but zeros, and of no values', () => {
  const flat = axisOf([0, 0], [100, 0], 4);
  expect([flat.ticks, flat.at(0)]).toEqual([[0], 100]);
  expect(axisOf([], [100, 0], 4).ticks).toEqual([0]);
});

it('leaves as much room at the left as the numbers take', () => {
  const write = (text: string): string => text;
  const small = plotOf([4], 'narrow', margins, write);
  const large = plotOf([4_000_000], 'narrow', margins, write);
  expect(small.frame.left < large.frame.left).toBe(true);
  expect(small.labels).toEqual(['0', '1', '2', '3', '4']);
  expect([small.y.at(0), small.frame.height]).toEqual([200, 220]);
});
