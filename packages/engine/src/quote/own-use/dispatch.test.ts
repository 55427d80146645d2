import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dispatch, emptyBattery, type Dispatched, type DispatchTerms } from './dispatch.ts';

const PLAIN: DispatchTerms = { perUse: 1, perMade: 1, most: Infinity, block: null };

function run(
  pairs: readonly (readonly [use: number, generation: number])[],
  battery: { readonly capacity: number; readonly way: number },
  terms: Partial<DispatchTerms> = {},
): Dispatched {
  const result = emptyBattery(2);
  const intervals = {
    use: Float64Array.from(pairs, ([use]) => use),
    generation: Float64Array.from(pairs, ([, made]) => made),
  };
  dispatch(intervals, { power: 0, ...battery }, { ...PLAIN, ...terms }, result);
  return result;
}

const all = (values: Float64Array): number => values.reduce((sum, one) => sum + one, 0);

describe('dispatch', () => {
  it('is limited by power, in and out', () => {
    const { charged, discharged, content, taken, given } = run(
      [
        [0, 5000],
        [4000, 0],
      ],
      { capacity: 9000, way: 1 },
      { most: 2000 },
    );
    expect([charged, discharged, content, all(taken), all(given)]).toEqual([2000, 2000, 0, 2000, 3000]);
  });

  it('tells what each interval took and gave, where that is wanted', () => {
    // 3,000 go in and 2,000 are left over; then 3,000 come out and 1,000 are missing; then nothing is either.
    const each = { taken: Float64Array.of(9, 9, 9), given: Float64Array.of(9, 9, 9) };
    const hours = [
      [0, 5000],
      [4000, 0],
      [500, 500],
    ] as const;
    run(hours, { capacity: 3000, way: 1 }, { each });
    expect([[...each.taken], [...each.given]]).toEqual([
      [0, 1000, 0],
      [2000, 0, 0],
    ]);
  });

  it('goes on with what the battery holds', () => {
    const result = emptyBattery(1);
    const battery = { capacity: 3000, power: 0, way: 1 };
    const day = { use: Float64Array.of(0), generation: Float64Array.of(5000) };
    const night = { use: Float64Array.of(4000), generation: Float64Array.of(0) };
    dispatch(day, battery, PLAIN, result);
    expect([result.content, result.charged]).toEqual([3000, 3000]);
    dispatch(night, battery, PLAIN, result);
    expect([result.content, result.charged, result.discharged, result.taken[0]]).toEqual([0, 0, 3000, 1000]);
  });

  it('tells what is taken and given by time block', () => {
    const pairs = [
      [0, 5000],
      [4000, 0],
      [0, 700],
    ] as const;
    const { taken, given } = run(
      pairs,
      { capacity: 1000, way: 1 },
      { most: 500, block: Uint16Array.of(0, 1, 1) },
    );
    // 500 go in and 500 out; 500 more go in from the last 700.
    expect([[...taken], [...given]]).toEqual([
      [0, 3500],
      [4500, 200],
    ]);
  });

  it('loses a way in and a way out', () => {
    // 1,000 in are 900 stored, and 810 out.
    const { content } = run([[0, 1000]], { capacity: 9000, way: 0.9 });
    expect(content).toBe(900);
    const { discharged } = run(
      [
        [0, 1000],
        [5000, 0],
      ],
      { capacity: 9000, way: 0.9 },
    );
    expect(discharged).toBe(810);
  });

  const wattHours = fc.integer({ min: 0, max: 5000 });
  const pairs = fc.array(fc.tuple(wattHours, wattHours), { minLength: 1, maxLength: 60 });
  const limits = fc.record({
    capacity: fc.integer({ min: 1, max: 20_000 }),
    most: fc.integer({ min: 1, max: 5000 }),
  });

  it('balances: made is used, charged or given; used is made, discharged or taken', () => {
    // Without losses every number is whole, and the sums are exact.
    fc.assert(
      fc.property(pairs, limits, (own, { capacity, most }) => {
        const { direct, charged, discharged, content, taken, given } = run(
          own,
          { capacity, way: 1 },
          { most },
        );
        const [used, made] = [0, 1].map((at) => own.reduce((sum, pair) => sum + (pair[at] ?? 0), 0));
        expect(direct + charged + all(given)).toBe(made);
        expect(direct + discharged + all(taken)).toBe(used);
        expect(charged - discharged).toBe(content);
        expect(direct).toBe(own.reduce((sum, pair) => sum + Math.min(...pair), 0));
      }),
    );
  });

  it('balances with losses but for last digits', () => {
    fc.assert(
      fc.property(pairs, limits, fc.integer({ min: 1, max: 100 }), (own, { capacity, most }, percent) => {
        const way = Math.sqrt(percent / 100);
        const { direct, charged, discharged, content, given } = run(own, { capacity, way }, { most });
        const made = own.reduce((sum, pair) => sum + pair[1], 0);
        // Sums of at most sixty doubles below a million: a millionth of a Wh is far more than they can be off.
        expect(Math.abs(direct + charged + all(given) - made) < 1e-6).toBe(true);
        expect(Math.abs(charged * way - discharged / way - content) < 1e-6).toBe(true);
        expect(content >= 0 && content <= capacity).toBe(true);
      }),
    );
  });

  it('discharges no less the more the battery holds', () => {
    fc.assert(
      fc.property(pairs, limits, fc.integer({ min: 0, max: 20_000 }), (own, { capacity, most }, more) => {
        const small = run(own, { capacity, way: 1 }, { most }).discharged;
        expect(run(own, { capacity: capacity + more, way: 1 }, { most }).discharged).toBeGreaterThanOrEqual(
          small,
        );
      }),
    );
  });
});
