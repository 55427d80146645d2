import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, tariffOf } from '../../../../tests/support/make.ts';
import type { Charge } from '../tariff/index.ts';

const FIXED: Charge = {
  id: 'fixed',
  label: 'Fixed charge',
  clause: 'T 4.1',
  kind: 'fixed',
  amount: '240',
};
const ENERGY: Charge = {
  id: 'energy',
  label: 'Energy charge',
  clause: 'T 4.2',
  kind: 'slabs',
  on: 'billed',
  method: 'telescopic',
  slabs: [
    { upTo: '50', rate: '3.00' },
    { upTo: '150', rate: '4.80' },
    { upTo: '300', rate: '6.50' },
    { rate: '8.00' },
  ],
};
const tax = { id: 'tax', label: 'Tax', clause: 'T 5.2', kind: 'percentage' } as const;

/** The tax on 99 billed units of 412 taken. */
function taxOf(charge: Charge, billed = '99'): string | undefined {
  const tariff = tariffOf([FIXED, ENERGY, charge]);
  return amountsOf(billOf(tariff, { billed, import: '412' })).find(([id]) => id === 'tax')?.[1];
}

describe('a percentage', () => {
  it('is taken of one line or of several', () => {
    expect(taxOf({ ...tax, percent: '6', of: ['energy'] })).toBe('23.11'); // 385.20 × 6 % = 23.112
    expect(taxOf({ ...tax, percent: '5', of: ['fixed', 'energy'] })).toBe('31.26'); // 625.20 × 5 %
    expect(taxOf({ ...tax, percent: '0.125', of: ['fixed'] })).toBe('0.3');
  });

  it('is a rebate where it is below 0', () => {
    expect(taxOf({ ...tax, percent: '-10', of: ['fixed', 'energy'] })).toBe('-62.52');
  });

  it('can be taken of a line charged again on another quantity, which the total does not count', () => {
    const charge: Charge = { ...tax, percent: '6', of: [{ line: 'energy', recomputedOn: 'import' }] };
    const bill = billOf(tariffOf([FIXED, ENERGY, charge]), { billed: '99', import: '412' });
    expect(amountsOf(bill)).toEqual([
      ['fixed', '240'],
      ['energy', '385.2'],
      ['energy on import', '2501'],
      ['tax', '150.06'],
    ]);
    expect(bill.lines.map((line) => line.counts)).toEqual([true, true, false, true]);
    expect(bill.lines[2]?.figure.label).toBe('Energy charge on import');
    expect(bill.sum).toMatchObject({ numerator: 77_526, denominator: 100 }); // 240 + 385.20 + 150.06
  });

  it('charges a line again once, however many lines are based on it', () => {
    const base = [{ line: 'energy', recomputedOn: 'import' }] as const;
    const bill = billOf(
      tariffOf([
        ENERGY,
        { ...tax, percent: '6', of: [...base] },
        { ...tax, id: 'cess', percent: '1', of: [...base, 'tax'] },
      ]),
      { billed: '99', import: '412' },
    );
    expect(amountsOf(bill)).toEqual([
      ['energy', '385.2'],
      ['energy on import', '2501'],
      ['tax', '150.06'],
      ['cess', '26.51'], // (2501 + 150.06) × 1 % = 26.5106
    ]);
  });

  it.each([
    ['0', '0'],
    ['100', '19.5'], // 390.00 × 5 %
    ['101', '35.53'], // 394.80 × 9 % = 35.532
  ])('can depend on the step that %s units reach: %s', (billed, amount) => {
    const steps = [{ upTo: '100', percent: '5' }, { percent: '9' }];
    expect(taxOf({ ...tax, chosenBy: 'billed', steps, of: ['energy'] }, billed)).toBe(amount);
  });

  it('is taken of lines as they were rounded', () => {
    const coarse: Charge = { ...ENERGY, rounding: { step: '1', mode: 'up' } };
    const bill = billOf(tariffOf([coarse, { ...tax, percent: '6', of: ['energy'] }]), { billed: '99' });
    expect(amountsOf(bill)).toEqual([
      ['energy', '386'],
      ['tax', '23.16'],
    ]);
  });
});
