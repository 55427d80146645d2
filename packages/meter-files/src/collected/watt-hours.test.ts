import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wholeWattHours } from './watt-hours.ts';

describe('whole watt-hours', () => {
  it('are the values where a kWh has three decimals', () => {
    const values = new Float64Array([1, 2]);
    expect(wholeWattHours(values, 3)).toEqual({ values, carried: 0, left: 0 });
  });

  it('carry what is finer to the next value', () => {
    // 0.6, 0.6, 0.6 and 1 Wh: 0, 1 (0.2 over), 0 (0.8 over), 1 (0.8 over)
    const { values, carried, left } = wholeWattHours(new Float64Array([6, 6, 6, 10]), 4);
    expect([Array.from(values), carried, left]).toEqual([[0, 1, 0, 1], 3, 8]);
  });

  it('are exact next to 2^53', () => {
    // 9007199254740991 of 10^-9 kWh: 9007199254 Wh and 740991 millionths; twice 1481982.
    const { values, left } = wholeWattHours(new Float64Array([9007199254740991, 9007199254740991]), 9);
    expect([Array.from(values), left]).toEqual([[9007199254, 9007199255], 481982]);
  });

  it('are never a whole watt-hour away from what was metered', () => {
    const some = fc.array(fc.maxSafeInteger(), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(some, fc.integer({ min: 4, max: 18 }), (given, places) => {
        const unit = 10n ** BigInt(places - 3);
        const { values, left } = wholeWattHours(Float64Array.from(given), places);
        let metered = 0n;
        let counted = 0n;
        given.forEach((value, row) => {
          metered += BigInt(value);
          counted += BigInt(values[row] ?? NaN) * unit;
          expect(metered - counted >= 0n && metered - counted < unit).toBe(true);
        });
        expect(BigInt(left)).toBe(metered - counted);
      }),
    );
  });
});
