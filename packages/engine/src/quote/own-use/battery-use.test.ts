import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVENING_HOUSE, yearOf, type Moment } from '../../../../../tests/support/quote-profile.ts';
import { parseDay } from '../../quantity/index.ts';
import { makeLifeUnits, type LifeUnits } from '../life-columns.ts';
import { lifePeriods } from '../life-periods.ts';
import { BatteryUse } from './battery-use.ts';
import type { OwnUse } from './own-use.ts';
import { ProfileUse } from './profile-use.ts';
import { readProfile } from './read-profile.ts';

const start = parseDay('2025-04-01');
if (start === null) throw new Error('no such day');
const periods = lifePeriods({ start, years: 3 });
const twelve = (units: number): readonly number[] => Array<number>(12).fill(units);

/** Another day each day: clouds, and a house that is not always at home. */
const CHANGING = (moment: Moment) => {
  const { use, generation } = EVENING_HOUSE(moment);
  return {
    use: Math.floor((use * (2 + ((moment.day * 7) % 5))) / 4),
    generation: Math.floor((generation * (1 + ((moment.day * 11) % 7))) / 4),
  };
};

const PROFILES = [EVENING_HOUSE, CHANGING].map((shape) => readProfile(yearOf(shape), () => null).value);

function rule(battery: { readonly capacity: number; readonly way: number }, step = 1000, which = 0) {
  const profile = PROFILES[which];
  if (profile == null) throw new Error('no profile');
  const terms = { profile, offset: 3, step };
  const levels = { use: twelve(240_000), generation: twelve(300_000) };
  return {
    plain: new ProfileUse(terms),
    own: new BatteryUse({ ...terms, periods, ...levels, battery: { power: 3000, ...battery } }),
  };
}

function taken(own: OwnUse, made: readonly number[], used: readonly number[]): LifeUnits {
  const units = makeLifeUnits(made.length);
  units.generation.set(made);
  units.use.set(used);
  own.take(units);
  return units;
}

describe('a battery beside a profile', () => {
  it('carries what is left of a day to its evening, and of the last one into the next month', () => {
    // 8 kWh are used a day, 1.6 of them in the sun, and 10 made. 8.4 are left over, and the battery of 5 is full each
    // evening: 4.8 are asked for by midnight, and the last 0.2 in the morning. So April, whose first night finds the
    // battery empty, hands its last 0.2 on to May.
    const { own } = rule({ capacity: 5000, way: 1 }, 1);
    const { selfUse, withPlant } = taken(own, [300_000, 310_000], [240_000, 248_000]);
    expect([...selfUse]).toEqual([30 * 6600 - 200, 31 * 6600]);
    // What goes in is not given: 30 × 5 in April; in May as much.
    expect([withPlant[1], withPlant[5]]).toEqual([30 * 3400, 31 * 3400]);
  });

  it('loses on the way in and out', () => {
    // 5 stored are 4 out, before midnight, and 6.25 in, on each of 31 days of May: 31 × 5.6 = 173.6 are used at home,
    // and 310 − 31 × 1.6 − 31 × 6.25 = 66.65 are given: 310 less 243.35, which are 243 whole units.
    const { own } = rule({ capacity: 5000, way: 0.8 });
    const { selfUse, withPlant } = taken(own, [300_000, 310_000], [240_000, 248_000]);
    expect([selfUse[1], withPlant[5]]).toEqual([174_000, 67_000]);
  });

  const units = fc.integer({ min: 0, max: 900 }).map((one) => one * 1000);
  const life = fc.array(fc.tuple(units, units), { minLength: 36, maxLength: 36 });

  it('never lowers own use, takes no more than is used and gives no more than is made', () => {
    fc.assert(
      fc.property(life, fc.integer({ min: 1, max: 20_000 }), (months, capacity) => {
        const { plain, own } = rule({ capacity, way: 0.9 }, 1000, 1);
        const [made, used] = [months.map(([one]) => one), months.map(([, one]) => one)];
        const [without, having] = [taken(plain, made, used), taken(own, made, used)];
        having.selfUse.forEach((one, at) => {
          expect(one).toBeGreaterThanOrEqual(without.selfUse[at] ?? NaN);
          expect(one).toBeLessThanOrEqual(used[at] ?? NaN);
          const given = having.withPlant[at * 4 + 1] ?? NaN;
          expect(given).toBeGreaterThanOrEqual(0);
          expect(given).toBeLessThanOrEqual(without.withPlant[at * 4 + 1] ?? NaN);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('adds no less the more it holds, in any month', () => {
    fc.assert(
      fc.property(
        life,
        fc.integer({ min: 1, max: 10_000 }),
        fc.integer({ min: 1, max: 10_000 }),
        (months, capacity, more) => {
          const [made, used] = [months.map(([one]) => one), months.map(([, one]) => one)];
          const ownUse = (size: number) =>
            taken(rule({ capacity: size, way: 0.9 }, 1000, 1).own, made, used).selfUse;
          const [small, large] = [ownUse(capacity), ownUse(capacity + more)];
          large.forEach((one, at) => {
            expect(one).toBeGreaterThanOrEqual(small[at] ?? NaN);
          });
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('the tables of draws', () => {
  const near = fc.array(fc.tuple(fc.integer({ min: 60, max: 140 }), fc.integer({ min: 60, max: 140 })), {
    minLength: 36,
    maxLength: 36,
  });

  it('are off by less than 1 in a hundred units in a month, and by what the battery holds', () => {
    const { own } = rule({ capacity: 5000, way: 0.9 }, 1, 1);
    const fast = own.forDraws();
    fc.assert(
      fc.property(near, (percents) => {
        const made = percents.map(([percent]) => percent * 3000);
        const used = percents.map(([, percent]) => percent * 2400);
        const [exact, table] = [taken(own, made, used), taken(fast, made, used)];
        exact.selfUse.forEach((one, at) => {
          expect(Math.abs((table.selfUse[at] ?? NaN) - one)).toBeLessThan(one / 100 + 5000);
        });
      }),
      { numRuns: 30 },
    );
  });

  it('are exact on their levels, in a month that follows on one alike', () => {
    const { own } = rule({ capacity: 5000, way: 0.9 }, 1, 1);
    const [made, used] = [Array<number>(36).fill(300_000), Array<number>(36).fill(240_000)];
    const [exact, table] = [taken(own, made, used), taken(own.forDraws(), made, used)];
    // But for the first month: the battery of the life begins empty.
    expect([...table.selfUse.subarray(1)]).toEqual([...exact.selfUse.subarray(1)]);
  });

  it('beyond their last level run the month itself', () => {
    const { own } = rule({ capacity: 5000, way: 0.9 }, 1, 1);
    const [made, used] = [Array<number>(24).fill(1_500_000), Array<number>(24).fill(240_000)];
    const [exact, table] = [taken(own, made, used), taken(own.forDraws(), made, used)];
    expect([...table.selfUse.subarray(1)]).toEqual([...exact.selfUse.subarray(1)]);
  });

  it('hold for a month in which nothing is made or used', () => {
    const { own } = rule({ capacity: 5000, way: 0.9 }, 1, 1);
    expect([...taken(own.forDraws(), [0, 300_000], [240_000, 0]).selfUse]).toEqual([0, 0]);
  });
});
