import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { amountsOf, billOf, periodOf, valueOf } from '../../../../tests/support/make.ts';

const DEMO = demoTariff();
const HOUSE = { 'sanctioned-load': '4' };

describe('bills of the demo tariff', () => {
  it('charge 99 units of a house of 4 kW as the tariff order does', () => {
    const bill = billOf(DEMO, { ...HOUSE, billed: '99' });
    expect(amountsOf(bill)).toEqual([
      ['fixed', '240'],
      ['energy', '385.2'], // 50 × 3.00 + 49 × 4.80
      ['minimum', '0'],
      ['fuel', '39.6'],
      ['tax', '23.11'], // 6 % of 385.20 = 23.112
      ['subsidy', '-75'],
    ]);
    expect([valueOf(bill.sum), valueOf(bill.payable)]).toEqual(['612.91', '613']);
    expect(bill.roundingDifference).toMatchObject({
      label: 'Rounding to the rupee',
      clause: 'TO-2024 cl. 6',
    });
    expect(valueOf(bill.roundingDifference ?? bill.sum)).toBe('0.09');
  });

  it.each([
    ['0', '240'],
    ['24', '290'], // 240 + 72 + 9.60 + 4.32 − 36 = 289.92
    ['134', '805'],
    ['150', '893'],
    ['151', '900'],
    ['239', '1542'],
    ['267', '1746'],
    ['377', '2670'],
    ['412', '2981'],
    ['655', '5139'],
    ['679', '5352'],
    ['99345', '881506'],
    ['99619', '883939'],
    ['116131', '1030566'],
  ])('charge %s units with %s', (billed, payable) => {
    expect(valueOf(billOf(DEMO, { ...HOUSE, billed }).payable)).toBe(payable);
  });

  it('charge 24 units of a house of 3 kW with 230', () => {
    const bill = billOf(DEMO, { 'sanctioned-load': '3', billed: '24' });
    expect(amountsOf(bill)).toEqual([
      ['fixed', '180'],
      ['energy', '72'],
      ['minimum', '0'],
      ['fuel', '9.6'],
      ['tax', '4.32'],
      ['subsidy', '-36'],
    ]);
    expect(valueOf(bill.payable)).toBe('230');
  });

  it('make a house of 2 kW that is billed nothing pay the minimum', () => {
    const bill = billOf(DEMO, { 'sanctioned-load': '2', billed: '0' });
    expect([amountsOf(bill)[2], valueOf(bill.payable)]).toEqual([['minimum', '30'], '150']);
  });

  it('scale slabs, fixed charge and subsidy to 38 and 61 days', () => {
    const long = billOf(DEMO, { ...HOUSE, billed: '170', period: periodOf('2025-04-01', '2025-05-09') });
    expect(amountsOf(long)).toEqual([
      ['fixed', '304'],
      ['energy', '702'], // 63.33… × 3 + 106.66… × 4.80
      ['minimum', '0'],
      ['fuel', '68'],
      ['tax', '42.12'],
      ['subsidy', '-95'],
    ]);
    expect(valueOf(long.payable)).toBe('1021');
    const two = billOf(DEMO, { ...HOUSE, billed: '268', period: periodOf('2025-04-01', '2025-06-01') });
    expect(valueOf(two.payable)).toBe('1612');
  });

  it('scale them to 34 days, and leave 33 days alone', () => {
    const payable = (to: string): string =>
      valueOf(billOf(DEMO, { ...HOUSE, billed: '99', period: periodOf('2025-04-01', to) }).payable);
    expect(payable('2025-05-04')).toBe('613');
    expect(payable('2025-05-05')).toBe('622');
  });

  it('pay for surplus units in the bill they belong to', () => {
    expect(valueOf(billOf(DEMO, { ...HOUSE, billed: '134' }).sum)).toBe('804.99');
    const units = {
      id: 'paid',
      label: 'Units paid',
      unit: 'kWh',
      numerator: 640_000,
      denominator: 1000,
    } as const;
    const payment = {
      units: { ...units, operation: 'given', inputs: [], parameters: [], rounding: null, clause: '' },
      rate: '2.60',
      clause: 'NMR-2021 r. 7.3',
      label: 'Surplus units of the settlement year',
      inBill: 'next',
    } as const;
    const bill = billOf(DEMO, { ...HOUSE, billed: '134', payments: [payment] });
    expect(amountsOf(bill).at(-1)).toEqual(['surplus', '-1664']);
    expect(bill.lines.at(-1)?.figure).toMatchObject({
      label: 'Surplus units of the settlement year',
      clause: 'NMR-2021 r. 7.3',
      operation: 'product',
      parameters: [{ name: 'rate', text: '-2.60', unit: 'money/kWh', clause: 'NMR-2021 r. 7.3' }],
    });
    expect([valueOf(bill.sum), valueOf(bill.payable)]).toEqual(['-859.01', '-859']);
  });
});
