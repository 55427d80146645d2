import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, lineOf, tariffOf, tryBill, valueOf } from '../../../../tests/support/make.ts';
import { roundLargeQuotient, wholeToDecimal } from '../quantity/index.ts';
import type { Charge } from '../tariff/index.ts';
import { AmountTooLarge } from './index.ts';

const perUnit = (rate: string, rounding: Charge['rounding']): Charge => ({
  id: 'energy',
  label: 'Energy charge',
  clause: 'T 4.2',
  kind: 'per-unit',
  on: 'billed',
  rate,
  ...(rounding === undefined ? {} : { rounding }),
});

const ALL_NINES = '99999999.999';

describe('amounts that doubles cannot hold on the way', () => {
  it('are not rounded up from just below a half', () => {
    // 99999999999 × 500000001 = 50000000099499999999, of 10^11: 500000000.994 999 999 99
    const rounding = { step: '0.01', mode: 'half-up' } as const;
    expect(lineOf(tariffOf([perUnit('5.00000001', rounding)]), { billed: ALL_NINES })).toBe('500000000.99');
  });

  it('are not cut up to the next step from just below it', () => {
    // 99999999999 × 300000001 = 30000000099699999999, of 10^11: 300000000.996 999 999 99
    const rounding = { step: '0.000001', mode: 'down' } as const;
    expect(lineOf(tariffOf([perUnit('3.00000001', rounding)]), { billed: ALL_NINES })).toBe(
      '300000000.996999',
    );
  });

  it('are exact below 0, too', () => {
    const rounding = { step: '0.01', mode: 'half-up' } as const;
    expect(lineOf(tariffOf([perUnit('-5.00000001', rounding)]), { billed: ALL_NINES })).toBe('-500000000.99');
  });
});

describe('a rounding so fine that doubles do not even hold a fixed amount on the way', () => {
  it('leaves a minimum and what rests on it as they are', () => {
    const rounding = { step: '0.0001', mode: 'half-up' } as const;
    const words = { label: 'Charge', clause: 'T 4' } as const;
    const tariff = tariffOf(
      [
        { ...words, id: 'fixed', kind: 'fixed', amount: '6.97' },
        { ...words, id: 'least', kind: 'minimum', amount: '258', of: ['fixed'], as: 'floor' },
        { ...words, id: 'tax', kind: 'percentage', of: ['least'], percent: '8.6479' },
        { ...words, id: 'duty', kind: 'percentage', of: ['tax'], percent: '0.2939' },
      ],
      { rounding: { clause: 'T 2', line: rounding, total: 'none' } },
    );
    // 258 × 8.6479 % = 22.311 582, and 0.2939 % of 22.3116 = 0.065 573 7…
    expect(amountsOf(billOf(tariff, {}))).toEqual([
      ['fixed', '6.97'],
      ['least', '258'],
      ['tax', '22.3116'],
      ['duty', '0.0656'],
    ]);
  });
});

describe('amounts that are too large to count', () => {
  const rounding = { step: '0.01', mode: 'half-up' } as const;

  it('are refused from the first hundredth that a whole number cannot count', () => {
    // 2^53 − 1 = 9007199254740991 hundredths: 90071992.547 units at 1000000.00 are 90071992547000.00.
    const tariff = tariffOf([perUnit('1000000', rounding)]);
    expect(lineOf(tariff, { billed: '90071992.547' })).toBe('90071992547000');
    const { value, findings } = tryBill(tariff, { billed: '90071992.548' });
    expect(value).toBeNull();
    expect(findings.map(({ code, values }) => [code, values['charge']])).toEqual([
      ['bill/too-large', 'Energy charge'],
    ]);
  });

  it('are refused in their sum', () => {
    const twice = [perUnit('600000', rounding), { ...perUnit('600000', rounding), id: 'again' }];
    const { value, findings } = tryBill(tariffOf(twice), { billed: ALL_NINES });
    expect([value, findings.map((finding) => finding.code)]).toEqual([null, ['bill/too-large']]);
  });

  it('are named by line in the error that the evaluator throws', () => {
    const error = new AmountTooLarge(2);
    expect([error.line, error.message]).toEqual([2, 'the amount of line 2 is beyond 9007199254740991']);
  });
});

/** A rate with eight decimals, as whole hundred-millionths. */
const anyRate = fc.integer({ min: -(10 ** 9), max: 10 ** 9 });
const anySlabs = fc.record({
  limits: fc.uniqueArray(
    fc.oneof(fc.integer({ min: 1, max: 10 ** 6 }), fc.integer({ min: 1, max: 10 ** 11 })),
    {
      maxLength: 4,
    },
  ),
  rates: fc.array(anyRate, { minLength: 5, maxLength: 5 }),
  percent: fc.integer({ min: -1000, max: 10_000 }),
});

describe('telescopic slabs and a tax on them', () => {
  it('equal the same sums in whole numbers of any size, or are refused where those are too large', () => {
    const units = fc.oneof(fc.nat(1_000_000), fc.integer({ min: 0, max: 10 ** 11 - 1 }));
    fc.assert(
      fc.property(anySlabs, units, ({ limits, rates, percent }, billed) => {
        const ascending = limits.sort((a, b) => a - b);
        const slabs = [...ascending.map((limit) => ({ upTo: wholeToDecimal(limit, 3) })), {}].map(
          (slab, index) => ({ ...slab, rate: wholeToDecimal(rates[index] ?? 0, 8) }),
        );
        const charge = { id: 'energy', label: 'E', clause: 'T 1', kind: 'slabs', on: 'billed' } as const;
        const tax = { id: 'tax', label: 'X', clause: 'T 2', kind: 'percentage', of: ['energy'] } as const;
        const tariff = tariffOf([
          { ...charge, method: 'telescopic', slabs },
          { ...tax, of: ['energy'], percent: wholeToDecimal(percent, 2) },
        ]);
        const exact = [...ascending, Infinity].reduce((sum, limit, index) => {
          const part = Math.max(0, Math.min(billed, limit) - (ascending[index - 1] ?? 0));
          return sum + BigInt(part) * BigInt(rates[index] ?? 0);
        }, 0n);
        const energy = roundLargeQuotient(exact, 10n ** 9n, 'half-up');
        const taxed = roundLargeQuotient(energy * BigInt(percent), 10_000n, 'half-up');
        const bill = tryBill(tariff, { billed: wholeToDecimal(billed, 3) }).value;
        const isCountable = [energy, taxed, energy + taxed].every(
          (amount) => amount <= 9007199254740991n && amount >= -9007199254740991n,
        );
        expect(bill !== null).toBe(isCountable);
        if (bill === null) return;
        expect(bill.lines.map(({ figure }) => valueOf(figure))).toEqual(
          [energy, taxed].map((cents) => wholeToDecimal(cents, 2).replace(/\.?0+$/, '')),
        );
        expect(BigInt(bill.sum.numerator) * 100n).toBe((energy + taxed) * BigInt(bill.sum.denominator));
      }),
      { numRuns: 1000 },
    );
  });
});
