import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, figureOf, tariffOf } from '../../../../tests/support/make.ts';
import type { SurplusPayment } from '../settlement/index.ts';
import type { TariffDocument } from '../tariff/index.ts';

const FIXED = { id: 'fixed', label: 'Fixed charge', clause: 'T 1', kind: 'fixed', amount: '240' } as const;

const paymentOf = (units: string, rate: string): SurplusPayment => ({
  units: figureOf('paid', units),
  rate,
  clause: 'T 6',
  label: 'Surplus',
  inBill: 'next',
});

/** What a bill of 240.00 pays for surplus units, in each payment. */
function paid(payments: readonly SurplusPayment[], line: TariffDocument['rounding']['line']) {
  const rounding = { clause: 'T 2', line, total: 'none' } as const;
  return amountsOf(billOf(tariffOf([FIXED], { rounding }), { payments }))
    .slice(1)
    .map(([, amount]) => amount);
}

const TO_HUNDREDTHS = { step: '0.01', mode: 'half-up' } as const;

describe('what a bill pays for surplus units', () => {
  it.each([
    ['640', '2.60', '-1664'],
    ['60', '2.25', '-135'],
    ['1', '2.605', '-2.61'], // a half goes away from 0
    ['1', '2.6049', '-2.6'],
    ['0.5', '2.25', '-1.13'],
  ])('is %s units × %s, rounded as lines are: %s', (units, rate, amount) => {
    expect(paid([paymentOf(units, rate)], TO_HUNDREDTHS)).toEqual([amount]);
  });

  it('is exact where lines are not rounded', () => {
    expect(paid([paymentOf('0.5', '2.2501')], 'none')).toEqual(['-1.12505']);
  });

  it('can be two payments, one due from the bill before', () => {
    expect(paid([paymentOf('640', '2.60'), paymentOf('10', '2')], TO_HUNDREDTHS)).toEqual(['-1664', '-20']);
  });

  it('is exact for the largest surplus at the finest rate', () => {
    // 99999999999 × 500000001 = 50000000099499999999, of 10^11: 500000000.994 999 999 99
    expect(paid([paymentOf('99999999.999', '5.00000001')], TO_HUNDREDTHS)).toEqual(['-500000000.99']);
  });

  it('shows its rounding with the clause of the rounding', () => {
    const rounding = { clause: 'T 2', line: TO_HUNDREDTHS, total: 'none' } as const;
    const { lines } = billOf(tariffOf([FIXED], { rounding }), { payments: [paymentOf('1', '2.605')] });
    expect(lines[1]?.figure).toMatchObject({
      clause: 'T 6',
      rounding: { step: '0.01', mode: 'half-up', clause: 'T 2' },
    });
  });
});
