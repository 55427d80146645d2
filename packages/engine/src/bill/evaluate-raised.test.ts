import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { parseDay, type DayNumber, type Period } from '../index.ts';
import { evaluateRaised } from './evaluate-raised.ts';
import { preparedFor, prepareTariff } from './prepare.ts';

const UNKNOWN = 0 as DayNumber;

/** April 2025 under the demo tariff: fixed, energy, minimum, fuel, tax, subsidy. */
function aprilOf() {
  const prepared = prepareTariff(demoTariff());
  const whole: Period = { from: parseDay('2025-04-01') ?? UNKNOWN, to: parseDay('2025-05-01') ?? UNKNOWN };
  const version = prepared.tariff.versions.at(-1);
  if (version === undefined) throw new Error('no version');
  return preparedFor(prepared, { version, period: whole }, whole, { energyScale: 1 });
}

interface Factor {
  readonly text: string;
  readonly numerator: bigint;
  readonly denominator: bigint;
}

const thousandths = (text: string, numerator: bigint): Factor => ({ text, numerator, denominator: 1000n });

/** Amounts in coins, for so many units billed and a load of 3 kW, with energy and minimum times a factor. */
function amountsFor(units: number, { text, numerator, denominator }: Factor, asked: number[] = []) {
  const { constants, vector } = aprilOf();
  constants.shape.quantities.names.forEach((name, at) => {
    if (name === 'billed') vector[at] = units * 1000;
    if (name === 'sanctioned-load') vector[at] = 3000;
  });
  const amounts = new Float64Array(constants.lines.length);
  const rising = constants.shape.lines.map(({ id }) => id === 'energy' || id === 'minimum');
  const factor = { numerator, denominator };
  const factors = Float64Array.from(rising, (rises) => (rises ? Number.parseFloat(text) : 1));
  const exact = (line: number) => {
    asked.push(line);
    return factor;
  };
  const total = evaluateRaised(constants, vector, amounts, { factors, exact });
  return { amounts: [...amounts], total, asked };
}

describe('rates that have risen', () => {
  it('round a half up where the nearest double lies below it', () => {
    // 1 unit: 3.00 × 1.005 = 3.015, half-up 3.02; the double of 1.005 is a little less.
    const { amounts, asked } = amountsFor(1, thousandths('1.005', 1005n));
    expect(amounts[1]).toBe(302);
    expect(asked).toContain(1);
  });

  it('do not ask for the exact factor where no rounding is in doubt', () => {
    // 80 units: (150 + 144) × 1.02 = 299.88; fixed and energy are above the minimum of 153 by far.
    const { amounts, asked } = amountsFor(80, thousandths('1.02', 1020n));
    expect([amounts[1], amounts[2]]).toEqual([29_988, 0]);
    expect(asked).toEqual([]);
  });

  it('raise the minimum', () => {
    // Nothing billed: fixed 180.00 against a minimum of 150.00 × 1.5 = 225.00.
    expect(amountsFor(0, thousandths('1.5', 1500n)).amounts[2]).toBe(4500);
  });

  it('work out what no double holds in whole numbers of any size', () => {
    // 10^11 units: all but 300 at 8.00: 10^11 × 8.00 − 300 × 8.00 + 150 + 480 + 975 = 8 × 10^11 − 795; × 2.
    const { amounts } = amountsFor(100_000_000_000, thousandths('2', 2000n));
    expect(amounts[1]).toBe((800_000_000_000 - 795) * 2 * 100);
  });
});
