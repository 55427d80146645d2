import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVENING_HOUSE, yearOf } from '../../../../../tests/support/quote-profile.ts';
import { parseDay } from '../../quantity/index.ts';
import { blockClock } from '../../energy/index.ts';
import { makeLifeUnits, unitColumns, type LifeUnits } from '../life-columns.ts';
import type { OwnUse } from './own-use.ts';
import { ProfileUse } from './profile-use.ts';
import { readProfile } from './read-profile.ts';

const BLOCKS = {
  clause: 'T 1',
  blocks: [
    { id: 'night', label: 'Night' },
    { id: 'day', label: 'Day' },
    { id: 'peak', label: 'Peak' },
  ],
  calendar: [
    { block: 'day', from: '06:00', to: '18:00' },
    { block: 'peak', from: '18:00', to: '22:00' },
    { block: 'night', from: '22:00', to: '06:00' },
  ],
};

function ruleOf(step: number, hasBlocks = false): OwnUse {
  const profile = readProfile(yearOf(EVENING_HOUSE), (minutes) =>
    hasBlocks ? blockClock(BLOCKS, minutes) : null,
  ).value;
  if (profile === null) throw new Error('no profile');
  return new ProfileUse({ profile, offset: 3, step });
}

function taken(rule: OwnUse, made: readonly number[], used: readonly number[]): LifeUnits {
  const units = makeLifeUnits(made.length, unitColumns(rule.blocks).length);
  units.generation.set(made);
  units.use.set(used);
  rule.take(units);
  return units;
}

const period = (from: string, to: string) => {
  const [first, last] = [parseDay(from), parseDay(to)];
  if (first === null || last === null) throw new RangeError('no such day');
  return { from: first, to: last };
};

describe('own use by a profile', () => {
  it('is the smaller of use and generation in each hour', () => {
    // Of 240 units used in April a fifth is used in the 8 hours of sun, 48: all of it where 300 are made.
    const { selfUse, withPlant, withoutPlant } = taken(ruleOf(1000), [300_000, 12_000], [240_000, 240_000]);
    // 12 units made are less than the 48 of those hours.
    expect([...selfUse]).toEqual([48_000, 12_000]);
    expect([...withPlant.subarray(0, 3)]).toEqual([192_000, 252_000, 300_000]);
    expect([...withPlant.subarray(4, 7)]).toEqual([228_000, 0, 12_000]);
    expect([withoutPlant[0], withoutPlant[4]]).toEqual([240_000, 240_000]);
  });

  it('of a period is that of its months by days', () => {
    const rule = ruleOf(1000);
    expect(rule.kept(period('2025-04-01', '2025-05-01'), 300_000, 240_000)).toBe(48_000);
    expect(rule.kept(period('2025-04-16', '2025-05-17'), 300_000, 240_000)).toBe(48_000);
    expect(rule.kept(period('2025-04-16', '2025-05-17'), 12_000, 240_000)).toBe(12_000);
  });

  it('is the same for draws', () => {
    const rule = ruleOf(1000);
    expect(rule.forDraws()).toBe(rule);
  });
});

describe('time blocks', () => {
  it('have what was used, made, taken and given in their hours', () => {
    const { withPlant, withoutPlant } = taken(ruleOf(1000, true), [300_000], [240_000]);
    // Of 8 kWh a day, night has 8 × 0.2, day 12 × 0.2 and peak 4: a fifth, three tenths and a half of 240.
    expect([...withoutPlant]).toEqual([240_000, 0, 0, 0, 48_000, 72_000, 120_000, 0, 0, 0, 0, 0, 0]);
    // By day 48 of the 72 are used as they are made.
    expect([...withPlant]).toEqual([
      192_000, 252_000, 300_000, 0, 48_000, 24_000, 120_000, 0, 252_000, 0, 0, 300_000, 0,
    ]);
  });

  const units = fc.integer({ min: 0, max: 900 }).map((one) => one * 1000);

  it('sum to the month, and none takes more than it uses or gives more than it makes', () => {
    const rule = ruleOf(1000, true);
    const sum = (values: Float64Array, from: number) =>
      values.subarray(from, from + 3).reduce((a, b) => a + b, 0);
    fc.assert(
      fc.property(units, units, (made, used) => {
        const { withPlant, withoutPlant } = taken(rule, [made], [used]);
        expect([4, 7, 10].map((from) => sum(withPlant, from))).toEqual([...withPlant.subarray(0, 3)]);
        expect(sum(withoutPlant, 4)).toBe(used);
        for (let block = 0; block < 3; block += 1) {
          expect(withPlant[4 + block]).toBeLessThanOrEqual(withoutPlant[4 + block] ?? NaN);
          expect(withPlant[7 + block]).toBeLessThanOrEqual(withPlant[10 + block] ?? NaN);
        }
      }),
    );
  });
});
