import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDay, type DayNumber } from '../../quantity/index.ts';
import { countOfRates, datedInternalRates, internalRates } from './internal-rates.ts';

const day = (text: string): DayNumber => {
  const found = parseDay(text);
  if (found === null) throw new Error(text);
  return found;
};

/** The flows of (x − a) × (x − b) × … by whole numbers, x = 1 + rate in parts of a whole. */
function flowsWith(growths: readonly bigint[], part: bigint): readonly number[] {
  const product = growths.reduce<readonly bigint[]>(
    (flows, growth) => [...flows, 0n].map((flow, at) => flow * part - (flows[at - 1] ?? 0n) * growth),
    [1n],
  );
  return product.map((flow) => Number(flow));
}

const places = (rates: readonly number[], digits: number) => rates.map((rate) => rate.toFixed(digits));

describe('internal rates of return', () => {
  it('are all of them, ascending', () => {
    expect(internalRates([-100, 125]).rates).toEqual([0.25]);
    expect(internalRates([-1.6, 10, -10]).rates).toEqual([0.25, 4]);
    expect(internalRates([-100, 50]).rates).toEqual([-0.5]);
    expect(internalRates([-100, 50, 50]).rates).toEqual([0]);
  });

  it('are none where there is none, never NaN', () => {
    expect(internalRates([1000, -3000, 2500]).rates).toEqual([]);
    for (const flows of [[], [0, 0], [-5], [100, 50, 50], [-1, -1]])
      expect(internalRates(flows).rates).toEqual([]);
  });

  it('are one where flows only touch 0', () => {
    expect(internalRates([1000, -3000, 2250]).rates).toEqual([0.5]);
  });

  it('do not depend on the unit of money, nor on years without a flow before the first', () => {
    const flows = [-1.6, 10, -10];
    expect(internalRates(flows.map((flow) => flow * 2 ** 900)).rates).toEqual([0.25, 4]);
    expect(internalRates(flows.map((flow) => flow * -(2 ** -900))).rates).toEqual([0.25, 4]);
    expect(internalRates([0, 0, ...flows, 0]).rates).toEqual([0.25, 4]);
  });

  it('are found close together', () => {
    // 10 %, 11 %, 12 %, 13 %.
    const { rates } = internalRates(flowsWith([110n, 111n, 112n, 113n], 100n));
    expect(places(rates, 7)).toEqual(['0.1000000', '0.1100000', '0.1200000', '0.1300000']);
  });

  it('are those the flows were made of, and no others', () => {
    const growths = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(growths, (tenths) => {
        const sorted = [...tenths].sort((a, b) => a - b);
        const { rates } = internalRates(flowsWith(sorted.map(BigInt), 10n));
        expect(places(rates, 4)).toEqual(sorted.map((one) => (one / 10 - 1).toFixed(4)));
      }),
    );
  });

  it('are those of the flows alone where a factor without a real rate is put to them', () => {
    const growths = fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 0, maxLength: 4 });
    fc.assert(
      fc.property(growths, (tenths) => {
        const sorted = [...tenths].sort((a, b) => a - b);
        const flows = flowsWith(sorted.map(BigInt), 10n);
        // Times x² − 2 x + 2, which is never 0.
        const times = [...flows, 0, 0].map(
          (flow, at) => flow - 2 * (flows[at - 1] ?? 0) + 2 * (flows[at - 2] ?? 0),
        );
        expect(places(internalRates(times).rates, 4)).toEqual(sorted.map((one) => (one / 10 - 1).toFixed(4)));
      }),
    );
  });

  it('are finite, above -100 % and ascending for any flows', () => {
    const flow = fc.oneof(
      fc.integer({ min: -1e6, max: 1e6 }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
    );
    fc.assert(
      fc.property(fc.array(flow, { maxLength: 30 }), (flows) => {
        const { rates } = internalRates(flows);
        expect(rates.every((rate) => Number.isFinite(rate) && rate > -1)).toBe(true);
        expect([...rates].sort((a, b) => a - b)).toEqual(rates);
      }),
    );
  });

  it('refuse what is no number', () => {
    expect(() => internalRates([-1, NaN])).toThrow('a flow must be finite, found NaN');
    expect(() => internalRates([-1, Infinity])).toThrow(RangeError);
  });
});

describe('internal rates of dated flows', () => {
  it('count years of 365 days, in any order', () => {
    const flows = [
      { day: day('2023-12-31'), amount: 80 },
      { day: day('2021-12-31'), amount: -100 },
      { day: day('2023-12-31'), amount: 145 },
    ];
    expect(datedInternalRates(flows).rates).toEqual([0.5]);
    expect(datedInternalRates([]).rates).toEqual([]);
  });

  it('are several where they are', () => {
    const flows = [0, 365, 730].map((at, index) => ({
      day: at as DayNumber,
      amount: [-1.6, 10, -10][index] ?? 0,
    }));
    expect(datedInternalRates(flows).rates).toEqual([0.25, 4]);
  });

  it('refuse what is no number', () => {
    expect(() => datedInternalRates([{ day: 0 as DayNumber, amount: NaN }])).toThrow(RangeError);
    expect(() => datedInternalRates([{ day: NaN as DayNumber, amount: 1 }])).toThrow('a day must be finite');
  });
});

it('says how many there are', () => {
  expect([[], [0.1], [0.1, 0.2]].map((rates) => countOfRates({ rates }))).toEqual(['none', 'one', 'several']);
});
