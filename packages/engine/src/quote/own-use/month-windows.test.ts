import { describe, expect, it } from 'vitest';
import { parseDay } from '../../quantity/index.ts';
import { metInside, windowGroups, windowSums, type WindowSpan } from './month-windows.ts';

const DAY = (parseDay('2025-10-25') ?? NaN) * 1440;
/** Starts at some hours of the clock, counted from the midnight of a day. */
const at = (...hours: readonly number[]): Int32Array => Int32Array.from(hours, (hour) => DAY + hour * 60);
const groups = (starts: Int32Array, span: WindowSpan): readonly number[] => [
  ...windowGroups(starts, span).group,
];

describe('the windows of intervals', () => {
  it('are the intervals themselves', () => {
    expect(groups(at(0, 0.5, 1), { within: 'interval' })).toEqual([0, 1, 2]);
  });

  it('are the local hours, the second of the same name for itself', () => {
    expect(groups(at(0, 0.5, 1, 1.5), { within: 'hour' })).toEqual([0, 0, 1, 1]);
    // The clocks go back: the hour from 2 comes twice, half an hour at a time, or in one piece.
    expect(groups(at(2, 2.5, 2, 2.5, 3), { within: 'hour' })).toEqual([0, 0, 1, 1, 2]);
    expect(groups(at(1, 2, 2, 3), { within: 'hour' })).toEqual([0, 1, 2, 3]);
  });

  it('are the local days, an hour that comes twice in its day', () => {
    expect(groups(at(2, 2.5, 2, 23.5, 24, 30), { within: 'day' })).toEqual([0, 0, 0, 0, 1, 1]);
  });

  it('are some hours of each day, with every interval outside them for itself', () => {
    const day: WindowSpan = { within: 'day-hours', from: '07:00', to: '18:00' };
    // 6, 7, 17 and 18 o'clock, and 7 of the next day: from 7 on, before 18.
    expect(groups(at(6, 7, 17, 18, 31), day)).toEqual([0, 1, 1, 2, 3]);
  });

  it('that end before they begin are the first and the last hours of the same day', () => {
    const night: WindowSpan = { within: 'day-hours', from: '22:00', to: '06:00' };
    // 0, 5 and 23 o'clock are one window, with 6 and 12 for themselves; midnight begins another.
    expect(groups(at(0, 5, 6, 12, 23, 24), night)).toEqual([0, 0, 1, 2, 0, 3]);
  });

  it('through midnight at the end of the day', () => {
    expect(groups(at(20, 21, 23), { within: 'day-hours', from: '21:00', to: '24:00' })).toEqual([0, 1, 1]);
  });
});

describe('what meets inside them', () => {
  const two = { group: Uint32Array.of(0, 0, 1, 1), count: 2 };

  it('is the smaller of both in each window', () => {
    // Taken 5 and 1, given 2 and 9: 2 meet in the first window, 1 in the second.
    const [taken, given] = [Float64Array.of(5, 0, 0, 1), Float64Array.of(0, 2, 9, 0)];
    expect([...windowSums(taken, two)]).toEqual([5, 1]);
    expect(metInside(taken, given, two)).toBe(3);
  });

  it('is nothing where each interval is a window', () => {
    const each = { group: Uint32Array.of(0, 1), count: 2 };
    expect(metInside(Float64Array.of(5, 0), Float64Array.of(0, 2), each)).toBe(0);
  });
});
