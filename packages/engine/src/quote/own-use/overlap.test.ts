import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Overlap, type Intervals } from './overlap.ts';

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

function overlapOf(use: readonly number[], generation: readonly number[]): Overlap {
  const intervals: Intervals = { use: Float64Array.from(use), generation: Float64Array.from(generation) };
  return new Overlap(intervals, { use: sum(use), generation: sum(generation) });
}

/** The sum of the smaller of both, interval by interval and in whole numbers: written another way. */
function byHand(
  use: readonly number[],
  generation: readonly number[],
  { made, used, step }: { readonly made: number; readonly used: number; readonly step: number },
): number {
  const [allUse, allMade] = [BigInt(sum(use)), BigInt(sum(generation))];
  if (allUse === 0n || allMade === 0n) return 0;
  let top = 0n;
  use.forEach((one, at) => {
    const ofUse = BigInt(one) * BigInt(used) * allMade;
    const ofMade = BigInt(generation[at] ?? 0) * BigInt(made) * allUse;
    top += ofUse < ofMade ? ofUse : ofMade;
  });
  const bottom = allUse * allMade * BigInt(step);
  return Number.parseInt(((2n * top + bottom) / (2n * bottom)).toString(), 10) * step;
}

const wattHours = fc.oneof(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 2 ** 26 - 1 }));
const intervals = fc.array(fc.tuple(wattHours, wattHours), { minLength: 1, maxLength: 40 });
const units = fc.integer({ min: 0, max: 2000 });

describe('an overlap', () => {
  it('of six steps is what they overlap by', () => {
    const overlap = overlapOf([1, 1, 1, 1, 2, 2], [0, 0, 4, 4, 0, 0]);
    expect(overlap.own(8, 8, 1)).toBe(2);
    // Twice the use: 2 of 4 in each of the two steps. Half the generation: 1 of 2.
    expect([overlap.own(8, 16, 1), overlap.own(4, 8, 1)]).toEqual([4, 2]);
    // A plant of a tenth: all it makes is used.
    expect(overlap.own(8, 80, 1)).toBe(8);
  });

  it('rounds halves up, exactly', () => {
    // Half of all use is by day, where everything is made: 0.5 of 1, 2.5 of 5.
    const overlap = overlapOf([1, 1], [1, 0]);
    expect([overlap.own(1000, 1, 1), overlap.own(1000, 5, 1)]).toEqual([1, 3]);
    expect(overlap.own(900_000, 481_000, 1000)).toBe(241_000);
  });

  it('is nothing where nothing is made or used, in the month or in its shape', () => {
    expect(overlapOf([1, 1], [1, 0]).own(0, 5, 1)).toBe(0);
    expect(overlapOf([1, 1], [1, 0]).own(5, 0, 1)).toBe(0);
    expect(overlapOf([1, 1], [0, 0]).own(5, 5, 1)).toBe(0);
    expect(overlapOf([0, 0], [1, 0]).own(5, 5, 1)).toBe(0);
  });

  it('is the sum over intervals of the smaller of both, to the last step', () => {
    fc.assert(
      fc.property(intervals, units, units, fc.constantFrom(1, 1000), (pairs, made, used, step) => {
        const [use, generation] = [pairs.map(([one]) => one), pairs.map(([, one]) => one)];
        const terms = { made: made * step, used: used * step, step };
        expect(overlapOf(use, generation).own(terms.made, terms.used, step)).toBe(
          byHand(use, generation, terms),
        );
      }),
      { numRuns: 500 },
    );
  });

  it('is all of the smaller one where use and generation have one shape', () => {
    const shape = fc.array(wattHours, { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(shape, units, units, (own, made, used) => {
        fc.pre(own.some((value) => value > 0));
        expect(overlapOf(own, own).own(made * 1000, used * 1000, 1000)).toBe(Math.min(made, used) * 1000);
      }),
    );
  });

  it('is no more than is used, and no more than is made', () => {
    fc.assert(
      fc.property(intervals, units, units, (pairs, made, used) => {
        const own = overlapOf(
          pairs.map(([one]) => one),
          pairs.map(([, one]) => one),
        ).own(made * 1000, used * 1000, 1000);
        expect(own).toBeLessThanOrEqual(Math.min(made, used) * 1000);
        expect(own).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
