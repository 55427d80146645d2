import { wholeToDecimal } from '@unitbook/engine';
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { irr, npv, pmt, PaymentDueTime } from 'financial';
import { describe, expect, it } from 'vitest';
import {
  internalRates,
  levelPayment,
  loanSchedule,
  type LoanLine,
  presentValue,
  spreadsheetPresentValue,
} from '../../packages/engine/src/quote/finance/index.ts';

// The npm package financial 0.2.4, L. Mammino, 2025: a port of numpy-financial, independent of ours.

const amounts = fc.integer({ min: -1_000_000, max: 1_000_000 });
const rate = fc.integer({ min: -500, max: 5000 }).map((whole) => whole / 10_000);

const sizeOf = (flows: readonly number[]): number => flows.reduce((sum, flow) => sum + Math.abs(flow), 0);

/** Two numbers that are the same up to a part of 10^-10 of a size. */
const isSame = (a: number, b: number, size: number): boolean => Math.abs(a - b) <= 1e-10 * size;

describe('where the peer is right, both agree', () => {
  it('on the present value with the first flow now', () => {
    fc.assert(
      fc.property(rate, fc.array(amounts, { minLength: 1, maxLength: 40 }), (at, flows) => {
        // At rates below 0 late flows grow.
        const size = sizeOf(flows) * Math.max(1, (1 + at) ** -flows.length);
        expect(isSame(presentValue(at, flows), npv(at, flows), size)).toBe(true);
      }),
    );
  });

  it('on the level payment, at the end and at the begin', () => {
    const periods = fc.integer({ min: 1, max: 360 });
    fc.assert(
      fc.property(rate, periods, amounts, amounts, (yearly, count, amount, saved) => {
        const [monthly, size] = [yearly / 12, Math.abs(amount) + Math.abs(saved)];
        for (const [paid, when] of [
          ['end', PaymentDueTime.End],
          ['begin', PaymentDueTime.Begin],
        ] as const) {
          const own = levelPayment({ rate: monthly, periods: count, amount, saved, paid });
          expect(isSame(own, -pmt(monthly, count, amount, saved, when), size * 10)).toBe(true);
        }
      }),
    );
  });

  it('on the internal rate of an outlay and what it brings', () => {
    const gains = fc.array(fc.integer({ min: 500, max: 50_000 }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(fc.integer({ min: 10_000, max: 100_000 }), gains, (outlay, received) => {
        const flows = [-outlay, ...received];
        const peer = irr(flows);
        // Its steps from 10 % can lead below -100 %, or away for good: see below.
        fc.pre(Number.isFinite(peer) && peer > -1 && Math.abs(npv(peer, flows)) < 1e-6 * outlay);
        expect(internalRates(flows).rates.map((one) => Math.abs(one - peer) < 1e-4)).toEqual([true]);
      }),
    );
  });
});

describe('where the peer is wrong, ours is not', () => {
  it('calls the lack of a rate -Infinity, or NaN', () => {
    expect(irr([1000, -3000, 2500])).toBe(-Infinity);
    expect(internalRates([1000, -3000, 2500]).rates).toEqual([]);
    for (const flows of [
      [100, 50, 50],
      [-100, -50, -50],
    ]) {
      expect(irr(flows)).toBeNaN();
      expect(internalRates(flows).rates).toEqual([]);
    }
  });

  it('tells one rate of several, and not that there are more', () => {
    // The strip mine: 25 % and 400 %; the textbook problem: 1/4, 1/3, 3/7, 2/3 (quote-finance-rows.ts).
    expect(irr([-1.6, 10, -10]).toFixed(9)).toBe('0.250000000');
    expect(internalRates([-1.6, 10, -10]).rates.length).toBe(2);
    expect(irr([-252, 1431, -3035, 2850, -1000]).toFixed(9)).toBe('0.250000000');
    expect(internalRates([-252, 1431, -3035, 2850, -1000]).rates.length).toBe(4);
    expect(irr([-39_800, 63_800, -12_800]).toFixed(4)).toBe('0.3679');
    expect(internalRates([-39_800, 63_800, -12_800]).rates.length).toBe(2);
  });

  it('finds a rate below -100 %, or none, for a loss', () => {
    // 1 + r of -70000, 12000, 15000 is (12 + √4344) ÷ 140 = 0.556493, a loss of 44.35 %; the peer takes the other root.
    expect(irr([-70_000, 12_000, 15_000]) < -1).toBe(true);
    expect(internalRates([-70_000, 12_000, 15_000]).rates.map((one) => one.toFixed(4))).toEqual(['-0.4435']);
    // 100 x² = x + 1: x = (1 + √401) ÷ 200 = 0.105125.
    expect(irr([-100, 1, 1])).toBe(Infinity);
    expect(internalRates([-100, 1, 1]).rates.map((one) => one.toFixed(6))).toEqual(['-0.894875']);
  });

  it('stops short of a rate that the curve only touches', () => {
    // 1000 x² − 3000 x + 2250 = 1000 (x − 1.5)².
    expect(irr([1000, -3000, 2250]).toFixed(6)).not.toBe('0.500000');
    expect(internalRates([1000, -3000, 2250]).rates).toEqual([0.5]);
  });

  it('counts the first flow now where spreadsheets count it at the end of a period', () => {
    const flows = [-10_000, 3000, 4200, 6800];
    expect(npv(0.1, flows).toFixed(2)).toBe('1307.29');
    expect(spreadsheetPresentValue(0.1, flows).toFixed(2)).toBe('1188.44');
  });
});

/** A schedule in decimal.js with 80 digits, by the formula of a reducing loan, without our fractions. */
function decimalSchedule(amount: string, yearlyPercent: string, months: number): readonly string[] {
  const Exact = Decimal.clone({ precision: 80, rounding: Decimal.ROUND_HALF_UP });
  const rate = new Exact(yearlyPercent).div(1200);
  const grown = rate.plus(1).pow(months);
  const instalment = rate.isZero()
    ? new Exact(amount).div(months)
    : new Exact(amount).mul(rate).mul(grown).div(grown.minus(1));
  const paise = (value: Decimal): Decimal => value.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);
  let balance: Decimal = new Exact(amount);
  return Array.from({ length: months }, (_, index) => {
    // Divided last: a rate cut to 80 digits would lie below a half that is met exactly.
    const interest = paise(balance.mul(yearlyPercent).div(1200));
    const owed = balance.plus(interest);
    const payment = index === months - 1 ? owed : Decimal.min(owed, paise(instalment));
    balance = owed.minus(payment);
    return [payment, interest, payment.minus(interest), balance].map((one) => one.toFixed(2)).join('|');
  });
}

describe('a second calculation in decimal.js agrees', () => {
  const paise = (whole: number): string => wholeToDecimal(whole, 2);
  const line = ({ payment, interest, principal, balance }: LoanLine): string =>
    [payment, interest, principal, balance].map(paise).join('|');
  const ROUNDING = { step: '0.01', mode: 'half-up' } as const;

  it('on the example of three months', () => {
    expect(decimalSchedule('1000', '12', 3)).toEqual([
      '340.02|10.00|330.02|669.98',
      '340.02|6.70|333.32|336.66',
      '340.03|3.37|336.66|0.00',
    ]);
  });

  it('on every line of loans drawn at random', () => {
    const amount = fc.integer({ min: 100, max: 500_000_000 }).map(paise);
    const percent = fc.integer({ min: 0, max: 3600 }).map(paise);
    fc.assert(
      fc.property(amount, percent, fc.integer({ min: 1, max: 240 }), (lent, yearlyPercent, months) => {
        const terms = { amount: lent, yearlyPercent, months, kind: 'reducing', rounding: ROUNDING } as const;
        const { lines, places } = loanSchedule({ ...terms, fees: ['0.01'] });
        expect([places, lines.map(line)]).toEqual([2, decimalSchedule(lent, yearlyPercent, months)]);
      }),
      { numRuns: 60, examples: [['4075366.66', '30.40', 138]] },
    );
  });
});
