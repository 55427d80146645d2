import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { parseDay, type DayNumber, type Period } from '../index.ts';
import type { Constants } from './constants.ts';
import { evaluate } from './evaluate.ts';
import { billColumns, evaluateColumns, type ColumnRaises } from './evaluate-columns.ts';
import { evaluateRaised } from './evaluate-raised.ts';
import { preparedFor, prepareTariff } from './prepare.ts';
import type { ExactFactor } from './raised.ts';

const UNKNOWN = 0 as DayNumber;

/** April 2025 under the demo tariff: fixed, energy, minimum, fuel, tax, subsidy. */
function april(): Constants {
  const prepared = prepareTariff(demoTariff());
  const whole: Period = { from: parseDay('2025-04-01') ?? UNKNOWN, to: parseDay('2025-05-01') ?? UNKNOWN };
  const version = prepared.tariff.versions.at(-1);
  if (version === undefined) throw new Error('no version');
  return preparedFor(prepared, { version, period: whole }, whole, { energyScale: 1 }).constants;
}

const CONSTANTS = april();
const { lines, used, shape } = CONSTANTS;
const RISING = shape.lines.map(({ id }) => ['fixed', 'energy', 'minimum', 'fuel'].includes(id));

/** A rise of so many thousandths of the rates; ties on the half are common with them. */
const factorOf = (thousandths: number): ExactFactor => ({
  numerator: BigInt(thousandths),
  denominator: 1000n,
});

/** Bills of a run: what rates are times, in thousandths, and what is billed in each, in units. */
interface Run {
  readonly factor: number;
  readonly units: readonly number[];
}

/** Billed units in thousandths, a load of 4 kW. */
const quantity = (name: string, units: number): number => (name === 'billed' ? units * 1000 : 4000);

function totalsInColumns(runs: readonly Run[], isRaised = true): readonly number[] {
  const units = runs.flatMap((run) => run.units);
  const names = used.map((place) => shape.quantities.names[place] ?? '');
  const given = names.map((name) => Float64Array.from(units, (one) => quantity(name, one)));
  const columns = billColumns(CONSTANTS, units.length, given);
  const starts = [0];
  for (const run of runs) starts.push((starts.at(-1) ?? 0) + run.units.length);
  const doubles = Float64Array.from(runs, ({ factor }) => factor / 1000);
  const rowOf = (bill: number): Run => runs[starts.findLastIndex((start) => start <= bill)] as Run;
  const raises: ColumnRaises = {
    starts: Int32Array.from(starts),
    factors: RISING.map((rises) => (rises ? doubles : null)),
    exact: (_, bill) => factorOf(rowOf(bill).factor),
  };
  evaluateColumns(columns, isRaised ? raises : null);
  return [...columns.totals];
}

/** The same bills, one after the other. */
function totalsOneByOne(runs: readonly Run[], isRaised = true): readonly number[] {
  const vector = new Float64Array(shape.quantities.names.length);
  const amounts = new Float64Array(lines.length);
  return runs.flatMap(({ factor, units }) =>
    units.map((one) => {
      used.forEach((place) => (vector[place] = quantity(shape.quantities.names[place] ?? '', one)));
      vector[shape.quantities.names.indexOf('one')] = 1000;
      if (!isRaised) return evaluate(CONSTANTS, vector, amounts);
      const factors = Float64Array.from(RISING, (rises) => (rises ? factor / 1000 : 1));
      return evaluateRaised(CONSTANTS, vector, amounts, { factors, exact: () => factorOf(factor) });
    }),
  );
}

const RUNS: fc.Arbitrary<Run[]> = fc.array(
  fc.record({
    factor: fc.oneof(fc.constant(1000), fc.integer({ min: 900, max: 3000 })),
    units: fc.array(fc.nat({ max: 900 }), { minLength: 1, maxLength: 12 }),
  }),
  { minLength: 1, maxLength: 6 },
);

describe('bills in columns', () => {
  it('are those of the bills one by one, whatever the rates of each run have risen to', () => {
    fc.assert(
      fc.property(RUNS, fc.boolean(), (runs, isRaised) => {
        expect(totalsInColumns(runs, isRaised)).toEqual(totalsOneByOne(runs, isRaised));
      }),
      { numRuns: 2000 },
    );
  });

  it('round a half up where the nearest double lies below it, and go on with the bill after it', () => {
    // 1 unit: fixed 240.00 and energy 3.00 × 1.005 = 241.20 and 3.015, half-up 3.02; no shortfall to 150.75;
    // fuel 0.40 × 1.005 = 0.40; tax 6 % of 3.02 = 0.18; subsidy −1.50: 241.20 + 3.02 + 0.40 + 0.18 − 1.50.
    // 0 units: 241.20 alone.
    expect(totalsInColumns([{ factor: 1005, units: [1, 1, 0] }])).toEqual([24_330, 24_330, 24_120]);
  });

  it('are left to the long way where a quantity is beyond what doubles hold', () => {
    const [large, plain] = totalsInColumns([{ factor: 1020, units: [100_000_000_000, 1] }]);
    expect(large).toBeNaN();
    // 240.00 and 3.00 × 1.02 = 244.80 and 3.06, 0.40 × 1.02 = 0.41, 6 % of 3.06 = 0.18, −1.50.
    expect(plain).toBe(24_480 + 306 + 41 + 18 - 150);
  });
});
