import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  collectRanges,
  gapsWithin,
  mergedRanges,
  minutesWithin,
  withoutRanges,
  type MinuteRange,
} from './minute-ranges.ts';

const END = 60;
const range = fc
  .tuple(fc.integer({ min: 0, max: END - 1 }), fc.integer({ min: 1, max: 9 }))
  .map(([from, length]) => ({ from, to: Math.min(END, from + length) }));
const ranges = fc.array(range, { maxLength: 12 });

/** The minutes of ranges, one by one. */
const minutesOf = (all: readonly MinuteRange[]): Set<number> =>
  new Set(all.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, index) => from + index)));

const isTidy = (all: readonly MinuteRange[]): boolean =>
  all.every(({ from, to }, index) => from < to && (index === 0 || from > (all[index - 1] as MinuteRange).to));

const collected = (all: readonly MinuteRange[]) => {
  const collector = collectRanges();
  for (const { from, to } of all) collector.add(from, to);
  return collector;
};

describe('ranges of minutes', () => {
  it('cover the minutes of all of them, in order, none touching the next', () => {
    fc.assert(
      fc.property(ranges, (all) => {
        const merged = collected(all).ranges();
        expect(minutesOf(merged)).toEqual(minutesOf(all));
        expect(isTidy(merged)).toBe(true);
        expect(merged).toEqual(mergedRanges(all));
      }),
    );
  });

  it('count the minutes that are covered again', () => {
    fc.assert(
      fc.property(ranges, (all) => {
        const sum = all.reduce((total, { from, to }) => total + to - from, 0);
        expect(collected(all).doubled()).toBe(sum - minutesOf(all).size);
      }),
    );
  });

  it('leave gaps that are all of the rest', () => {
    fc.assert(
      fc.property(ranges, range, (all, window) => {
        const merged = mergedRanges(all);
        const gaps = gapsWithin(merged, window);
        const own = minutesOf(all);
        const rest = [...minutesOf([window])].filter((minute) => !own.has(minute));
        expect([...minutesOf(gaps)]).toEqual(rest);
        expect(minutesWithin(merged, window)).toBe(window.to - window.from - rest.length);
      }),
    );
  });

  it('can be taken from others', () => {
    fc.assert(
      fc.property(ranges, ranges, (all, removed) => {
        const left = withoutRanges(mergedRanges(all), mergedRanges(removed));
        const gone = minutesOf(removed);
        expect(minutesOf(left)).toEqual(new Set([...minutesOf(all)].filter((minute) => !gone.has(minute))));
      }),
    );
  });

  it('are merged in time when very many come in no order', () => {
    // Every other minute of 20,000, from the last to the first, then those between.
    const collector = collectRanges();
    for (let minute = 19_998; minute >= 0; minute -= 2) collector.add(minute, minute + 1);
    expect(collector.ranges()).toHaveLength(10_000);
    for (let minute = 1; minute < 20_000; minute += 2) collector.add(minute, minute + 1);
    expect([collector.ranges(), collector.doubled()]).toEqual([[{ from: 0, to: 20_000 }], 0]);
  });
});
