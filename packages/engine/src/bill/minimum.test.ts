import { describe, expect, it } from 'vitest';
import {
  amountsOf,
  billOf,
  periodOf,
  tariffOf,
  valueOf,
  type BillParts,
} from '../../../../tests/support/make.ts';
import type { Charge } from '../tariff/index.ts';

const FIXED: Charge = {
  id: 'fixed',
  label: 'Fixed charge',
  clause: 'T 4.1',
  kind: 'per-kilowatt',
  on: 'sanctioned-load',
  rate: '60',
  scaledBy: 'month',
};
const ENERGY: Charge = {
  id: 'energy',
  label: 'Energy charge',
  clause: 'T 4.2',
  kind: 'per-unit',
  on: 'billed',
  rate: '3',
};
const minimum = {
  id: 'minimum',
  label: 'Minimum charge',
  clause: 'T 4.4',
  kind: 'minimum',
  amount: '150.00',
  of: ['fixed', 'energy'],
  scaledBy: 'month',
} as const;

function billWith(as: 'shortfall' | 'floor', parts: BillParts, more: readonly Charge[] = []) {
  const charge: Charge = { ...minimum, of: [...minimum.of], as };
  return billOf(
    tariffOf([FIXED, ENERGY, charge, ...more], {
      dayRules: { month: { rule: 'days-over', clause: 'T 4.3', divisor: '30' } },
    }),
    parts,
  );
}

const CASES = [
  ['far below', '2', '0', '120', '0', '30', '150'],
  ['one step below', '2.499', '0', '149.94', '0', '0.06', '150'],
  ['exactly on it', '2.5', '0', '150', '0', '0', '150'],
  ['one unit past it', '2', '11', '120', '33', '0', '153'],
  ['above', '4', '0', '240', '0', '0', '240'],
  ['nothing but the minimum', '0', '0', '0', '0', '150', '150'],
] as const;

describe('a minimum as a shortfall', () => {
  it.each(CASES)('adds what is missing: %s', (_, load, billed, fixed, energy, shortfall, sum) => {
    const bill = billWith('shortfall', { 'sanctioned-load': load, billed });
    expect(amountsOf(bill)).toEqual([
      ['fixed', fixed],
      ['energy', energy],
      ['minimum', shortfall],
    ]);
    expect(bill.lines.every((line) => line.counts)).toBe(true);
    expect(valueOf(bill.sum)).toBe(sum);
  });

  it('is multiplied by the day factor', () => {
    const period = periodOf('2025-04-01', '2025-05-09'); // 38 days: 150 × 38/30 = 190, fixed 152
    expect(amountsOf(billWith('shortfall', { 'sanctioned-load': '2', billed: '0', period }))).toEqual([
      ['fixed', '152'],
      ['energy', '0'],
      ['minimum', '38'],
    ]);
  });

  it('is rounded like any line: 150 × 31/30 less 124 is 31.00, × 32/30 less 128 is 32.00', () => {
    const shortfall = (to: string): string | undefined =>
      amountsOf(
        billWith('shortfall', { 'sanctioned-load': '2', billed: '0', period: periodOf('2025-04-01', to) }),
      )[2]?.[1];
    expect([shortfall('2025-05-02'), shortfall('2025-05-03')]).toEqual(['31', '32']);
    // 7 days: the minimum is 35.00 and the fixed charge of 1.001 kW is 14.014, printed 14.01.
    const bill = billWith('shortfall', {
      'sanctioned-load': '1.001',
      billed: '0',
      period: periodOf('2025-04-01', '2025-04-08'),
    });
    expect(amountsOf(bill)[2]?.[1]).toBe('20.99');
  });
});

describe('a minimum as a floor', () => {
  it.each(CASES)('stands in for the lines it names: %s', (_, load, billed, fixed, energy, __, sum) => {
    const bill = billWith('floor', { 'sanctioned-load': load, billed });
    expect(amountsOf(bill)).toEqual([
      ['fixed', fixed],
      ['energy', energy],
      ['minimum', sum],
    ]);
    expect(bill.lines.map((line) => line.counts)).toEqual([false, false, true]);
    expect(valueOf(bill.sum)).toBe(sum);
  });

  it('can be the base of a percentage', () => {
    const tax: Charge = {
      id: 'tax',
      label: 'Tax',
      clause: 'T 5',
      kind: 'percentage',
      percent: '6',
      of: ['minimum'],
    };
    const bill = billWith('floor', { 'sanctioned-load': '2', billed: '0' }, [tax]);
    expect([amountsOf(bill).at(-1), valueOf(bill.sum)]).toEqual([['tax', '9'], '159']);
  });
});
