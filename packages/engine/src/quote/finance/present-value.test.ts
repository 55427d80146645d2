import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDay, type DayNumber } from '../../quantity/index.ts';
import { datedPresentValue, presentValue, spreadsheetPresentValue } from './present-value.ts';

const day = (text: string): DayNumber => {
  const found = parseDay(text);
  if (found === null) throw new Error(text);
  return found;
};

describe('the present value', () => {
  it('leaves the first flow as it is', () => {
    // 100 ÷ 1.25 = 80; 125 ÷ 1.5625 = 80.
    expect(presentValue(0.25, [-100, 100, 125])).toBe(60);
    expect(presentValue(0.25, [7])).toBe(7);
    expect(presentValue(0.25, [])).toBe(0);
  });

  it('is the sum at a rate of 0, and more than it below', () => {
    expect(presentValue(0, [-100, 60, 60])).toBe(20);
    expect(presentValue(-0.5, [0, 10, 10])).toBe(60);
  });

  it('with the first flow at the end of a period is that of a flow of 0 before it', () => {
    expect(spreadsheetPresentValue(0.25, [100, 125])).toBe(160);
    const rates = fc.double({ min: -0.9, max: 9, noNaN: true });
    const flows = fc.array(fc.integer({ min: -1e9, max: 1e9 }), { maxLength: 40 });
    fc.assert(
      fc.property(rates, flows, (rate, list) => {
        expect(spreadsheetPresentValue(rate, list) + 0).toBe(presentValue(rate, [0, ...list]) + 0);
      }),
    );
  });

  it('refuses a rate of -100 %', () => {
    expect(() => presentValue(-1, [1])).toThrow(RangeError);
    expect(() => spreadsheetPresentValue(-1, [1])).toThrow(RangeError);
    expect(() => datedPresentValue(-1, [])).toThrow(RangeError);
  });
});

describe('the present value of dated flows', () => {
  it('counts years of 365 days, whether they are leap years or not', () => {
    const start = { day: day('2022-01-01'), amount: -100 };
    expect(datedPresentValue(0.25, [start, { day: day('2023-01-01'), amount: 125 }])).toBe(0);
    expect(datedPresentValue(0.25, [start, { day: day('2023-12-31'), amount: 125 }]).toFixed(2)).not.toBe(
      '0.00',
    );
    const leap = { day: day('2024-01-01'), amount: 0 };
    expect(datedPresentValue(0.25, [leap, { day: day('2024-12-31'), amount: 125 }])).toBe(100);
  });

  it('is that on the day of the first flow listed: earlier ones grow', () => {
    const flows = [
      { day: day('2023-01-01'), amount: 10 },
      { day: day('2022-01-01'), amount: 10 },
    ];
    expect(datedPresentValue(0.25, flows)).toBe(22.5);
    expect(datedPresentValue(0.25, [])).toBe(0);
  });
});
