import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import {
  amountsOf,
  billOf,
  periodOf,
  tryBill,
  valueOf,
  type BillParts,
} from '../../../../tests/support/make.ts';

/** 15 days under the order of 2023 and 15 under that of 2024. */
const HALF: BillParts = {
  billed: '99',
  'sanctioned-load': '4',
  period: periodOf('2024-03-17', '2024-04-16'),
};

const WHOLE_UNITS = ['"units": "exact"', '"units": "whole"'] as const;
const SHARED_FACTOR = ['"factor": "days-of-part"', '"factor": "share-of-period"'] as const;

/** The rule of the demo, to be put in place of its four lines. */
const inForceOn = (day: 'first' | 'last') =>
  [
    '"rule": "split-by-days",\n    "clause": "TO-2024 cl. 3.2",\n    "units": "exact",\n    "factor": "days-of-part"',
    `"rule": "in-force-on-${day}-day",\n    "clause": "TO-2024 cl. 3.2"`,
  ] as const;

describe('a change of the charges inside a period', () => {
  it('splits units and days exactly: 49.5 units and half a month each', () => {
    const bill = billOf(demoTariff(), HALF);
    expect(bill.lines.map((line) => line.version)).toEqual([
      ...Array<string>(6).fill('TO-2023'),
      ...Array<string>(6).fill('TO-2024'),
    ]);
    expect(amountsOf(bill)).toEqual([
      ['fixed', '100'],
      ['energy', '180.25'], // 25 × 2.80 + 24.5 × 4.50
      ['minimum', '0'],
      ['fuel', '12.38'], // 12.375
      ['tax', '10.82'], // 10.815
      ['subsidy', '-37.5'],
      ['fixed', '120'],
      ['energy', '192.6'], // 25 × 3.00 + 24.5 × 4.80
      ['minimum', '0'],
      ['fuel', '19.8'],
      ['tax', '11.56'], // 11.556
      ['subsidy', '-37.5'],
    ]);
    expect([valueOf(bill.sum), valueOf(bill.payable)]).toEqual(['572.41', '572']);
  });

  it('splits whole units by largest remainder, the earlier part first: 50 and 49', () => {
    const bill = billOf(demoTariff(WHOLE_UNITS), HALF);
    expect(amountsOf(bill).filter(([id]) => id === 'energy' || id === 'fuel')).toEqual([
      ['energy', '182.5'], // 25 × 2.80 + 25 × 4.50
      ['fuel', '12.5'],
      ['energy', '190.2'], // 25 × 3.00 + 24 × 4.80
      ['fuel', '19.6'],
    ]);
    expect([valueOf(bill.sum), valueOf(bill.payable)]).toEqual(['572.16', '572']);
  });

  it('splits units that are not whole, since a credit can have decimals, without losing any', () => {
    const bill = billOf(demoTariff(WHOLE_UNITS), { ...HALF, billed: '98.5' });
    const shares = bill.lines
      .filter(({ figure }) => figure.id === 'fuel')
      .map(({ figure }) => figure.inputs[0]?.numerator as number);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBe(98_500);
  });

  it('scales each part by its own days, or shares the factor of the period', () => {
    // 16 and 15 days: 31 days are left alone, so that the parts are 16/31 and 15/31 of a month.
    const period = periodOf('2024-03-16', '2024-04-16');
    const fixed = (tariff: ReturnType<typeof demoTariff>) =>
      amountsOf(billOf(tariff, { ...HALF, period })).filter(([id]) => id === 'fixed');
    expect(fixed(demoTariff())).toEqual([
      ['fixed', '106.67'], // 200 × 16/30
      ['fixed', '120'], // 240 × 15/30
    ]);
    expect(fixed(demoTariff(SHARED_FACTOR))).toEqual([
      ['fixed', '103.23'], // 200 × 16/31 = 103.2258…
      ['fixed', '116.13'], // 240 × 15/31 = 116.1290…
    ]);
  });

  it('can leave the whole period to the charges of its first or of its last day', () => {
    const first = billOf(demoTariff(inForceOn('first')), HALF);
    expect(valueOf(first.payable)).toBe('532'); // all at the old rates: 531.88
    expect(new Set(first.lines.map((line) => line.version))).toEqual(new Set(['TO-2023']));
    const last = billOf(demoTariff(inForceOn('last')), HALF);
    expect(valueOf(last.payable)).toBe('613');
    expect(new Set(last.lines.map((line) => line.version))).toEqual(new Set(['TO-2024']));
  });

  it('does not concern a period that ends on the day of the change', () => {
    const march = billOf(demoTariff(), { ...HALF, period: periodOf('2024-03-01', '2024-04-01') });
    expect(march.lines.map((line) => line.version)).toEqual(Array<string>(6).fill('TO-2023'));
    const april = billOf(demoTariff(), { ...HALF, period: periodOf('2024-04-01', '2024-05-01') });
    expect(april.lines.map((line) => line.version)).toEqual(Array<string>(6).fill('TO-2024'));
  });
});

describe('a period that cannot be billed', () => {
  it('begins before the charges do', () => {
    const { value, findings } = tryBill(demoTariff(), {
      ...HALF,
      period: periodOf('2023-03-15', '2023-04-14'),
    });
    expect(value).toBeNull();
    expect(findings.map((finding) => finding.code)).toEqual(['bill/no-tariff-in-force']);
    // The days that no charges cover, and no others: from 1 April they are covered.
    expect(findings.map(({ values }) => [values['from'], values['through']])).toEqual([
      ['2023-03-15', '2023-03-31'],
    ]);
  });

  it('begins before the charges do, even where the last day alone counts', () => {
    const early = { ...HALF, period: periodOf('2023-03-15', '2023-04-14') };
    expect(tryBill(demoTariff(inForceOn('first')), early).value).toBeNull();
    expect(tryBill(demoTariff(inForceOn('last')), early).value).not.toBeNull();
  });

  it('is charged on something that is not known', () => {
    const { value, findings } = tryBill(demoTariff(), { 'sanctioned-load': '4' });
    expect(value).toBeNull();
    expect(findings.map((finding) => finding.values)).toEqual([
      { charge: 'Energy charge', quantity: 'billed' },
      { charge: 'Fuel surcharge', quantity: 'billed' },
      { charge: 'Subsidy', quantity: 'billed' },
    ]);
  });
});
