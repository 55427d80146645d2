import { expect, it } from 'vitest';
import { plantOf } from '../../../../../tests/support/plant-days.ts';
import { RANDOM_TABLE, randomYear } from '../../../../../tests/support/random-plant.ts';
import { plantDays } from './plant-days.ts';

const PLANT = plantOf({ capacity: [{ kWp: '6' }], expected: { monthly: [...RANDOM_TABLE] } });

/** The same with 500 years is a long test. */
it('random weather, ± 40 % from day to day, gives no finding in 40 healthy years', () => {
  const seeds = Array.from({ length: 40 }, (_, seed) => 5000 + seed);
  const found = seeds.filter((seed) => plantDays(randomYear(seed), PLANT).findings.length > 0);
  expect(found).toEqual([]);
});

it('half of the plant out is found in each of 10 such years', () => {
  const seeds = Array.from({ length: 10 }, (_, seed) => 6000 + seed);
  const codes = seeds.map((seed) =>
    plantDays(
      randomYear(seed, (day) => (day < 200 ? 1 : 0.5)),
      PLANT,
    ).findings.map(({ code }) => code),
  );
  expect(codes).toEqual(seeds.map(() => ['plant/step-down']));
});
