import {
  batteryOf,
  dispatch,
  emptyBattery,
  ownUseOf,
  ownUseShares,
  makeLifeUnits,
  readProfile,
  readQuote,
  type Battery,
  type Dispatched,
  type QuoteInput,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { profileOf } from '../support/quote-profile.ts';

/*
 * Self-consumption and batteries. Sources of the reference values:
 *
 * - "Photovoltaic self-consumption in buildings: A review", Luthander, Widén, Nilsson and Palm, Applied Energy 142,
 *   2015, pages 80-94: what self-consumption and self-sufficiency are (the definitions from memory). The figures of
 *   10, 12 and 6 kWh and of the six steps are own worked examples by those definitions: no publication is behind them.
 *   Its effect of a battery, 13 to 24 percentage points for 0.5 to 1 kWh per kWp, is set against a measured home in
 *   quote-battery-home.test.ts.
 * - "Annual Technology Baseline, battery storage", NREL, 2020: 85 % as a representative round trip. Its even split,
 *   the square root each way, is an own worked example.
 */

const read = readQuote(quoteText).value;
if (read === null) throw new Error('the example cannot be read');
const input: QuoteInput = { ...read, years: 1, unitStep: 1 };

const percent = (quotient: { readonly numerator: number | bigint; readonly denominator: number } | null) =>
  quotient === null ? '' : ((100 * (quotient.numerator as number)) / quotient.denominator).toFixed(2);

/** Own use in the first month of a life whose every month has the shape of some hours. */
function firstMonth(hours: { readonly use: readonly number[]; readonly generation: readonly number[] }) {
  const all = profileOf('2025-01-01', '2026-01-01', {
    shape: ({ day, minute }) => {
      const at = day === 1 ? minute / 60 : Infinity;
      return { use: hours.use[at] ?? 0, generation: hours.generation[at] ?? 0 };
    },
  });
  const profile = readProfile(all, () => null).value;
  const own = ownUseOf({
    input,
    share: { numerator: 0, denominator: 100 },
    profile,
    hasBattery: false,
  });
  const units = makeLifeUnits(12);
  units.use.fill(hours.use.reduce((sum, one) => sum + one, 0));
  units.generation.fill(hours.generation.reduce((sum, one) => sum + one, 0));
  own.take(units);
  const [use = 0, generation = 0, selfUse = 0] = [units.use[0], units.generation[0], units.selfUse[0]];
  return { use, generation, selfUse, imported: units.withPlant[0], exported: units.withPlant[1] ?? NaN };
}

describe('self-consumption', () => {
  it('of 10 kWh made and 12 used of which 6 overlap: 60 and 50 percent, 4 given, 6 taken', () => {
    const own = firstMonth({ use: [6000, 0, 6000], generation: [6000, 4000, 0] });
    expect(own).toMatchObject({ selfUse: 6000, imported: 6000, exported: 4000 });
    const { notExported, delivered, selfSufficiency } = ownUseShares(own);
    expect([notExported, delivered, selfSufficiency].map(percent)).toEqual(['60.00', '60.00', '50.00']);
  });

  it('is counted in the steps of the profile: 25 percent where whole months would claim 100', () => {
    const own = firstMonth({
      use: [1000, 1000, 1000, 1000, 2000, 2000],
      generation: [0, 0, 4000, 4000, 0, 0],
    });
    expect([own.use, own.generation, own.selfUse]).toEqual([8000, 8000, 2000]);
    const { delivered, selfSufficiency } = ownUseShares(own);
    expect([delivered, selfSufficiency].map(percent)).toEqual(['25.00', '25.00']);
  });

  it('from meters: 400 made, 280 given, 150 taken is 120 used of 270, 30 and 44.44 percent', () => {
    const selfUse = 400 - 280;
    const shares = ownUseShares({ use: 150 + selfUse, generation: 400, selfUse, exported: 280 });
    expect([shares.delivered, shares.selfSufficiency].map(percent)).toEqual(['30.00', '44.44']);
  });
});

/** A battery run through hours, in Wh. */
function run(
  hours: { readonly use: readonly number[]; readonly generation: readonly number[] },
  battery: Battery,
): Dispatched {
  const result = emptyBattery(1);
  const intervals = {
    use: Float64Array.from(hours.use),
    generation: Float64Array.from(hours.generation),
  };
  dispatch(intervals, battery, { perUse: 1, perMade: 1, most: Infinity, block: null }, result);
  return result;
}

const kWh = (wattHours: number | undefined): string => ((wattHours ?? NaN) / 1000).toFixed(2);
const ofTrip = (capacity: string, efficiency: string): Battery => {
  const battery = batteryOf({ battery: { capacity, power: '10', efficiency, cost: '0' } });
  if (battery === null) throw new Error('no battery');
  return battery;
};
const SIX_STEPS = { use: [1000, 1000, 1000, 1000, 2000, 2000], generation: [0, 0, 4000, 4000, 0, 0] };

describe('a battery', () => {
  it('with 85 percent round trip stores 9.22 of 10 kWh, delivers 8.50 and loses 1.50', () => {
    const charged = run({ use: [0], generation: [10_000] }, ofTrip('20', '85'));
    expect([kWh(charged.charged), kWh(charged.content)]).toEqual(['10.00', '9.22']);
    const both = run({ use: [0, 20_000], generation: [10_000, 0] }, ofTrip('20', '85'));
    expect([kWh(both.discharged), kWh(both.charged - both.discharged)]).toEqual(['8.50', '1.50']);
  });

  it('without losses on the six steps: charged 5, discharged 4, left 1, taken 2, given 1', () => {
    const { charged, discharged, content, taken, given } = run(SIX_STEPS, ofTrip('5', '100'));
    expect([charged, discharged, content, taken[0], given[0]]).toEqual([5000, 4000, 1000, 2000, 1000]);
  });

  it('with 85 percent on the six steps: 92.79 percent not exported, 75 percent delivered', () => {
    // It holds 5, stored: 5 ÷ √0.85 = 5.42 go in, and 6 − 5.42 = 0.58 are given.
    const { direct, charged, discharged, taken, given } = run(SIX_STEPS, ofTrip('5', '85'));
    expect([kWh(charged), kWh(given[0]), kWh(taken[0])]).toEqual(['5.42', '0.58', '2.00']);
    const [generation, exported] = [8000, given[0] ?? NaN];
    const shares = ownUseShares({ use: 8000, generation, selfUse: direct + discharged, exported });
    expect([shares.notExported, shares.delivered].map(percent)).toEqual(['92.79', '75.00']);
  });
});
