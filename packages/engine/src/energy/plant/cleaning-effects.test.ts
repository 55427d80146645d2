import { describe, expect, it } from 'vitest';
import { dayOf, daysFrom, plantOf } from '../../../../../tests/support/plant-days.ts';
import { cleaningEffects } from './cleaning-effects.ts';
import type { PlantDocument } from './plant-document.ts';

const cleaned = (date: string, more: Partial<PlantDocument> = {}) =>
  plantOf({ diary: [{ date, did: 'cleaning' }], ...more });

/** Seven days before 8 January, the day itself, seven after. */
const around = (before: readonly (number | null)[], after: readonly (number | null)[]) =>
  daysFrom('2025-01-01', [...before, 1, ...after]);

const SEVEN = [18_000, 18_100, 17_900, 18_000, 18_100, 17_900, 18_000];

describe('the effect of a cleaning', () => {
  it('is the mean of 7 days after over that of 7 days before: 126 and 138.6 units, 1.1', () => {
    const [effect] = cleaningEffects(
      around(
        SEVEN,
        SEVEN.map((wattHours) => (wattHours * 11) / 10),
      ),
      cleaned('2025-01-08'),
    );
    expect(effect).toEqual({
      date: dayOf('2025-01-08'),
      before: {
        from: dayOf('2025-01-01'),
        to: dayOf('2025-01-08'),
        days: 7,
        wattHours: 126_000,
        mean: { numerator: 126_000, denominator: 35_000 },
      },
      after: {
        from: dayOf('2025-01-09'),
        to: dayOf('2025-01-16'),
        days: 7,
        wattHours: 138_600,
        mean: { numerator: 138_600, denominator: 35_000 },
      },
      ratio: { numerator: 11, denominator: 10 },
      says: 'more',
    });
  });

  it('says nothing where the weather does as much', () => {
    // Means of 18 and 19.8, but days from 10 to 26.
    const mixed = [10_000, 26_000, 18_000, 12_000, 24_000, 16_000, 20_000];
    const after = mixed.map((wattHours) => wattHours + 1800);
    expect(cleaningEffects(around(mixed, after), cleaned('2025-01-08'))[0]).toMatchObject({
      ratio: { numerator: 11, denominator: 10 },
      says: 'within-the-weather',
    });
  });

  it('may be less', () => {
    const after = SEVEN.map((wattHours) => wattHours / 2);
    expect(cleaningEffects(around(SEVEN, after), cleaned('2025-01-08'))[0]).toMatchObject({
      ratio: { numerator: 1, denominator: 2 },
      says: 'less',
    });
  });

  it('needs four known days on either side', () => {
    const few = [null, null, null, ...SEVEN.slice(3)];
    const says = (before: readonly (number | null)[]) =>
      cleaningEffects(around(before, SEVEN), cleaned('2025-01-08'))[0]?.says;
    expect([says(few), says([null, ...few.slice(1, 6), null])]).toEqual([
      'within-the-weather',
      'cannot-be-told',
    ]);
    expect(cleaningEffects([], cleaned('2025-01-08'))[0]).toMatchObject({
      ratio: null,
      says: 'cannot-be-told',
    });
  });

  it('is of capacity as it was: 3 kWp and 18 units are 6, 6 kWp and 36 units too', () => {
    const plant = cleaned('2025-01-08', { capacity: [{ kWp: '3' }, { from: '2025-01-08', kWp: '6' }] });
    const after = SEVEN.map((wattHours) => wattHours * 2);
    expect(cleaningEffects(around(SEVEN, after), plant)[0]?.ratio).toEqual({ numerator: 1, denominator: 1 });
  });

  it('is there for every cleaning, and for nothing else of the diary', () => {
    const plant = plantOf({
      diary: [
        { date: '2025-02-01', did: 'cleaning' },
        { date: '2025-01-01', did: 'cleaning' },
        { date: '2025-01-05', did: 'repair' },
      ],
    });
    expect(cleaningEffects([], plant).map(({ date }) => date)).toEqual([
      dayOf('2025-01-01'),
      dayOf('2025-02-01'),
    ]);
  });
});
