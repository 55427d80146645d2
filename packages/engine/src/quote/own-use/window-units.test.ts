import { describe, expect, it } from 'vitest';
import { EVENING_HOUSE, yearOf } from '../../../../../tests/support/quote-profile.ts';
import { parseDay } from '../../quantity/index.ts';
import type { NettingWindow } from '../../energy/index.ts';
import { makeLifeUnits, unitColumns, type LifeUnits } from '../life-columns.ts';
import { lifePeriods } from '../life-periods.ts';
import { BatteryUse } from './battery-use.ts';
import type { OwnUse } from './own-use.ts';
import { ProfileUse } from './profile-use.ts';
import { readProfile } from './read-profile.ts';
import { writeWindows } from './window-units.ts';

const window = (
  of: NettingWindow['of'],
  less: NettingWindow['less'],
  within: NettingWindow['within'],
): NettingWindow => ({ id: `${of}-less-${less}`, of, less, within });

const BOTH = (within: NettingWindow['within']) => [
  window('import', 'export', within),
  window('export', 'import', within),
];

function termsOf(windows: readonly NettingWindow[], step = 1000) {
  const profile = readProfile(yearOf(EVENING_HOUSE), () => null, windows).value;
  if (profile === null) throw new Error('no profile');
  return { profile, offset: 3, step };
}

function taken(rule: OwnUse, made: readonly number[], used: readonly number[]): LifeUnits {
  const units = makeLifeUnits(made.length, unitColumns(rule.blocks, rule.measures).length);
  units.generation.set(made);
  units.use.set(used);
  rule.take(units);
  return units;
}

describe('measures that are netted inside windows', () => {
  it('have columns of their own, after all others', () => {
    const rule = new ProfileUse(termsOf(BOTH('day')));
    expect(unitColumns(rule.blocks, rule.measures).slice(4)).toEqual([
      'import-less-export',
      'export-less-import',
    ]);
  });

  it('are the plain units where windows are intervals, or as long as they are', () => {
    for (const within of ['interval', 'hour'] as const) {
      const { withPlant } = taken(new ProfileUse(termsOf(BOTH(within))), [300_000], [240_000]);
      // 48 of the 240 are used in the sun, 192 are taken and 252 given.
      expect([...withPlant]).toEqual([192_000, 252_000, 300_000, 0, 192_000, 252_000]);
    }
  });

  it('are what each day leaves', () => {
    const rule = new ProfileUse(termsOf(BOTH('day')));
    const { withPlant, withoutPlant } = taken(rule, [300_000, 120_000], [240_000, 240_000]);
    // 8 of 10 kWh meet on each day of April: nothing is left of what is taken, 2 × 30 of what is given.
    expect([...withPlant.subarray(4, 6)]).toEqual([0, 60_000]);
    // May: 120 made, all of them used by midnight, and 120 are taken beyond them.
    expect([...withPlant.subarray(10, 12)]).toEqual([120_000, 0]);
    expect([...withoutPlant]).toEqual([240_000, 0, 0, 0, 240_000, 0, 240_000, 0, 0, 0, 240_000, 0]);
  });

  it('net generation interval by interval, the long way', () => {
    const windows = [
      window('import', 'generation', 'day'),
      window('generation', 'import', 'day'),
      window('generation', 'export', 'day'),
    ];
    const { withPlant, withoutPlant } = taken(new ProfileUse(termsOf(windows)), [300_000], [240_000]);
    // Each day 6.4 are taken and 10 made: 6.4 meet. Of what is made 8.4 are given.
    expect([...withPlant.subarray(4)]).toEqual([0, 300_000 - 192_000, 48_000]);
    expect([...withoutPlant.subarray(4)]).toEqual([240_000, 0, 0]);
  });

  it('are whole thousandths where the quote is in thousandths', () => {
    // Of 241 used and 41 made in a month, in thousandths, all that is made meets by the end of each day.
    const { withPlant } = taken(new ProfileUse(termsOf(BOTH('day'), 1)), [41], [241]);
    expect([...withPlant.subarray(4)]).toEqual([200, 0]);
  });

  it('refuse rows without columns for them', () => {
    const { profile } = termsOf(BOTH('day'));
    expect(() => {
      writeWindows(profile, makeLifeUnits(1), 0, new Float64Array(2));
    }).toThrow('rows of 4 columns have no room for 2 measures');
  });
});

describe('a battery beside windows', () => {
  const start = parseDay('2025-04-01');
  if (start === null) throw new Error('no such day');
  const twelve = (units: number): readonly number[] => Array<number>(12).fill(units);
  const rule = (within: NettingWindow['within']) =>
    new BatteryUse({
      ...termsOf(BOTH(within), 1),
      periods: lifePeriods({ start, years: 1 }),
      use: twelve(240_000),
      generation: twelve(300_000),
      battery: { capacity: 5000, power: 3000, way: 1 },
    });
  const [made, used] = [
    [300_000, 310_000],
    [240_000, 248_000],
  ] as const;

  it('leaves to them what it does not take in or give out', () => {
    // In May the battery takes 5 of the 8.4 that are left over each day and gives them back; 1.4 are taken on each of
    // 31 days, 3.4 given, and 1.4 of those meet.
    const { withPlant } = taken(rule('day'), made, used);
    expect([...withPlant.subarray(6, 8)]).toEqual([31 * 1400, 31 * 3400]);
    expect([...withPlant.subarray(10)]).toEqual([0, 31 * 2000]);
  });

  it('has plain units where each interval is a window', () => {
    const { withPlant } = taken(rule('hour'), made, used);
    expect([...withPlant.subarray(10)]).toEqual([31 * 1400, 31 * 3400]);
  });

  it('has the same in the tables of draws, on their levels', () => {
    const [all, day] = [Array<number>(12).fill(300_000), Array<number>(12).fill(240_000)];
    const [exact, table] = [taken(rule('day'), all, day), taken(rule('day').forDraws(), all, day)];
    // But for the first month: the battery of the life begins empty.
    expect([...table.withPlant.subarray(6)]).toEqual([...exact.withPlant.subarray(6)]);
  });
});
