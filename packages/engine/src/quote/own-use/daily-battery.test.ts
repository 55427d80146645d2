import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDay } from '../../quantity/index.ts';
import { makeLifeUnits } from '../life-columns.ts';
import { lifePeriods } from '../life-periods.ts';
import { DailyBatteryUse, dailyStored } from './daily-battery.ts';
import { ShareUse } from './share-use.ts';

const IDEAL = { capacity: 5000, power: 2500, way: 1 };
const LOSSY = { ...IDEAL, way: 0.9 };
const start = parseDay('2025-04-01');
if (start === null) throw new Error('no such day');
const periods = lifePeriods({ start, years: 1 });

describe('dailyStored', () => {
  it('is what the battery holds each day where that is least', () => {
    expect(dailyStored(IDEAL, 30, { surplus: 240_000, lack: 300_000 })).toBe(150_000);
  });

  it('is what comes in where surplus is least, and what is asked for where use is', () => {
    // 100 × 0.9 are stored; 90 ÷ 0.9 have to be.
    expect(dailyStored(LOSSY, 30, { surplus: 100_000, lack: 300_000 })).toBe(90_000);
    expect(dailyStored(LOSSY, 30, { surplus: 240_000, lack: 90_000 })).toBe(100_000);
    expect(dailyStored(LOSSY, 30, { surplus: 0, lack: 300_000 })).toBe(0);
  });

  it('is what power moves in and out again within 24 hours where that is least', () => {
    // 0.1 kW: 1.2 kWh in 12 hours, and 12 hours to take them out.
    expect(dailyStored({ ...IDEAL, power: 100 }, 30, { surplus: 240_000, lack: 300_000 })).toBe(36_000);
  });
});

const wholeUnits = fc.integer({ min: 0, max: 900 }).map((units) => units * 1000);
const month = fc.record({ made: wholeUnits, used: wholeUnits, share: fc.integer({ min: 0, max: 100 }) });

function firstMonth(
  capacity: number,
  way: number,
  { made, used, share }: { readonly made: number; readonly used: number; readonly share: number },
) {
  const terms = { share: { numerator: share, denominator: 100 }, step: 1000 };
  const units = makeLifeUnits(1);
  [units.generation[0], units.use[0]] = [made, used];
  new DailyBatteryUse(terms, { capacity, power: 2500, way }, periods).take(units);
  const [own = NaN, [taken = NaN, given = NaN]] = [units.selfUse[0], units.withPlant];
  return { own, taken, given };
}

describe('a battery of the mean day', () => {
  it('adds to the share: April with 30 days', () => {
    // 38 % of 510 are 194; 316 are left over and 326 are asked for, and 30 × 5 = 150 are stored.
    const ideal = firstMonth(5000, 1, { made: 510_000, used: 520_000, share: 38 });
    expect(ideal).toEqual({ own: 344_000, taken: 176_000, given: 166_000 });
    // 150 × 0.9 = 135 come out, 150 ÷ 0.9 = 166.7 go in.
    const lossy = firstMonth(5000, 0.9, { made: 510_000, used: 520_000, share: 38 });
    expect(lossy).toEqual({ own: 329_000, taken: 191_000, given: 149_000 });
  });

  it('never takes more than is used, nor more than is made; less comes out than goes in', () => {
    fc.assert(
      fc.property(month, fc.integer({ min: 1, max: 40_000 }), (one, capacity) => {
        const { own, taken, given } = firstMonth(capacity, 0.9, one);
        expect(own).toBeLessThanOrEqual(Math.min(one.used, one.made));
        expect([taken, own + taken]).toEqual([one.used - own, one.used]);
        expect(given).toBeGreaterThanOrEqual(0);
        expect(own).toBeLessThanOrEqual(one.made - given);
      }),
    );
  });

  it('adds no less the more it holds', () => {
    fc.assert(
      fc.property(
        month,
        fc.integer({ min: 1, max: 20_000 }),
        fc.integer({ min: 0, max: 20_000 }),
        (one, capacity, more) => {
          const small = firstMonth(capacity, 0.9, one).own;
          expect(firstMonth(capacity + more, 0.9, one).own).toBeGreaterThanOrEqual(small);
          const terms = { numerator: one.share, denominator: 100 };
          expect(small).toBeGreaterThanOrEqual(new ShareUse(terms, 1000).kept(null, one.made, one.used));
        },
      ),
    );
  });
});
