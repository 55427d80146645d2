import { describe, expect, it } from 'vitest';
import { plantOf } from '../../../../../tests/support/plant-days.ts';
import { RANDOM_TABLE, randomYear } from '../../../../../tests/support/random-plant.ts';
import { makeRandom } from '../../../../../tests/support/random.ts';
import { plantDays } from './plant-days.ts';

const PLANT = plantOf({ capacity: [{ kWp: '6' }], expected: { monthly: [...RANDOM_TABLE] } });

const codes = (seed: number, part?: (day: number) => number): readonly string[] =>
  plantDays(randomYear(seed, part), PLANT).findings.map(({ code }) => code);

describe('random weather, ± 40 % from day to day', () => {
  it('gives no step and no slide in 500 healthy years', () => {
    const years = Array.from({ length: 500 }, (_, seed) => seed).filter((seed) => codes(seed).length > 0);
    expect(years).toEqual([]);
  });

  it('hides at most 5 in 100 falls by a quarter, two months or more from either end', () => {
    const days = makeRandom(4);
    const missed = Array.from({ length: 300 }, (_, seed) => seed).filter((seed) => {
      const from = 60 + days.below(246);
      return !codes(1000 + seed, (day) => (day < from ? 1 : 0.75)).includes('plant/step-down');
    });
    // 5 of 300 were missed when this was written; of falls by an eighth, 254.
    expect(missed.length).toBeLessThanOrEqual(15);
  });
});
