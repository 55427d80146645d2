import { parseDay, readPlant, type DayNumber, type Plant } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { monthViews } from './month-views.ts';
import { bandOf, dayYield, yieldOf } from './yields.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);

function plantOf(parts: object = {}): Plant {
  const capacity = [{ from: '2025-01-01', kWp: '4' }];
  const { value } = readPlant(JSON.stringify({ format: 'unitbook-plant-1', capacity, ...parts }));
  if (value === null) throw new Error('no plant');
  return value;
}

const MONTHLY = { expected: { monthly: Array<string>(12).fill('480') } };
const april = {
  period: { from: day('2025-04-01'), to: day('2025-05-01') },
  wattHours: 396_000,
  generation: null,
};

it('draws yields in ten-thousandths of a unit', () => {
  expect(yieldOf({ numerator: 2, denominator: 3 })).toBe(6667);
  expect(yieldOf(null)).toBeNull();
  expect(dayYield(14_000, day('2025-04-01'), plantOf())).toBe(35_000);
  expect(dayYield(14_000, day('2024-12-31'), plantOf())).toBeNull();
});

it('puts the expectation and one sigma to either side by days in service', () => {
  const [month] = monthViews([april], plantOf(MONTHLY), []);
  // 480 units over 4 kWp and 30 days are 4; one sigma is 10 %.
  expect(month === undefined ? null : bandOf(month, plantOf(MONTHLY))).toEqual({
    ...april.period,
    low: 36_000,
    middle: 40_000,
    high: 44_000,
  });
  const withOutage = plantOf({
    ...MONTHLY,
    diary: [{ date: '2025-04-10', through: '2025-04-24', did: 'outage' }],
  });
  const [half] = monthViews([april], withOutage, []);
  // Half of the days make half of the units: 4 per kWp and day in service all the same.
  expect(half === undefined ? null : bandOf(half, withOutage)?.middle).toBe(40_000);
});

it('has no band where nothing is expected, nor where the plant stood still all the time', () => {
  const [month] = monthViews([april], plantOf(), []);
  expect(month === undefined ? undefined : bandOf(month, plantOf())).toBeNull();
  const still = plantOf({
    ...MONTHLY,
    diary: [{ date: '2025-03-01', through: '2025-06-01', did: 'outage' }],
  });
  const [none] = monthViews([april], still, []);
  expect(none === undefined ? undefined : bandOf(none, still)).toBeNull();
});
