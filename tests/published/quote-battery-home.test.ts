import { batteryOf, dispatch, emptyBattery } from '@unitbook/engine';
import { expect, it } from 'vitest';
import homeText from './data/homes/home-1-battery-daily.csv?raw';

/*
 * How much more of its generation a home uses with a battery. Sources:
 *
 * - "Photovoltaic self-consumption in buildings: A review", Luthander, Widén, Nilsson and Palm, Applied Energy 142,
 *   2015, pages 80-94: a battery of 0.5 to 1 kWh for each kWp adds 13 to 24 percentage points. Its effect of shifting
 *   loads, 2 to 15 points, is not tested: no measurement at hand says which loads could be shifted.
 * - tests/published/data/homes: a measured home with 11 kWp, day by day; MIT, (c) 2021 Craig A. Hobbs. It has a battery
 *   of 40 kWh, 3.6 for each kWp and so no case of the band: what that gave back is taken and given without it.
 *
 * Days are all that was measured: the surplus of a day is put before its lack. A battery is charged and emptied at most
 * about once a day so, and what it loses over a morning is not seen.
 */

const KWP = 11;

interface Day {
  readonly made: number;
  readonly surplus: number;
  readonly lack: number;
}

const wattHours = (text = ''): number => Math.round(Number(text) * 1000);

/** The days of a year as they would be without the home's own battery, in Wh. */
const daysOf = (year: string): readonly Day[] =>
  homeText
    .trim()
    .split('\n')
    .filter((line) => line.startsWith(year))
    .map((line) => {
      const [, taken, given, made, discharged] = line.split(',');
      // At least what came out of it had gone in: surplus that would have been given.
      const held = wattHours(discharged);
      return { made: wattHours(made), surplus: wattHours(given) + held, lack: wattHours(taken) + held };
    });

/** Percentage points of own use that a battery adds, of so many kWh for each kWp. */
function addedBy(perKilowatt: number, days: readonly Day[], efficiency: string): number {
  const capacity = String(KWP * perKilowatt);
  const battery = batteryOf({ battery: { capacity, power: '20', efficiency, cost: '0' } });
  if (battery === null) throw new Error('no battery');
  const intervals = {
    use: Float64Array.from(days.flatMap(({ lack }) => [0, lack])),
    generation: Float64Array.from(days.flatMap(({ surplus }) => [surplus, 0])),
  };
  const result = emptyBattery(1);
  dispatch(intervals, battery, { perUse: 1, perMade: 1, most: Infinity, block: null }, result);
  return (100 * result.discharged) / days.reduce((sum, { made }) => sum + made, 0);
}

/** The same without a program of a battery: what fits of a day's surplus serves the lack of that day. */
function byTheDay(perKilowatt: number, days: readonly Day[]): number {
  const most = KWP * perKilowatt * 1000;
  const moved = days.reduce((sum, { surplus, lack }) => sum + Math.min(most, surplus, lack), 0);
  return (100 * moved) / days.reduce((sum, { made }) => sum + made, 0);
}

it.each(['2021', '2022'])(
  'adds 13 to 24 points from 0.5 to 1 kWh for each kWp, by the days of %s',
  (year) => {
    const days = daysOf(year);
    expect(days).toHaveLength(365);
    for (const each of [0.5, 1]) {
      const added = addedBy(each, days, '100');
      // What is left over goes to the next day: seldom, and never less.
      expect(added - byTheDay(each, days)).toBeGreaterThanOrEqual(0);
      expect(added - byTheDay(each, days)).toBeLessThan(0.05);
      // The band is published in whole points.
      expect(Math.round(added)).toBeGreaterThanOrEqual(13);
      expect(Math.round(added)).toBeLessThanOrEqual(24);
    }
  },
);

it('adds one or two points less where 15 percent are lost: one of four is then a point below the band', () => {
  const added = ['2021', '2022'].flatMap((year) =>
    [0.5, 1].map((each) => Math.round(addedBy(each, daysOf(year), '85'))),
  );
  expect(added).toEqual([12, 20, 13, 22]);
});

it('tells the home’s own battery, 3.6 kWh for each kWp, from those of the band', () => {
  expect(addedBy(40 / KWP, daysOf('2021'), '100')).toBeGreaterThan(24.5);
});
