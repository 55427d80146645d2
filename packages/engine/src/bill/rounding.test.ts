import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, lineOf, tariffOf, valueOf } from '../../../../tests/support/make.ts';
import type { RoundingMode } from '../quantity/index.ts';
import type { Charge, TariffDocument } from '../tariff/index.ts';

const rated = (rate: string, rounding?: Charge['rounding']): Charge => ({
  id: 'fuel',
  label: 'Fuel surcharge',
  clause: 'T 5.1',
  kind: 'per-unit',
  on: 'billed',
  rate,
  ...(rounding === undefined ? {} : { rounding }),
});

describe('the rounding of a line', () => {
  it.each<[RoundingMode, string, string]>([
    ['half-up', '0.03', '-0.03'],
    ['half-even', '0.02', '-0.02'],
    ['half-down', '0.02', '-0.02'],
    ['up', '0.03', '-0.03'],
    ['down', '0.02', '-0.02'],
    ['floor', '0.02', '-0.03'],
    ['ceiling', '0.03', '-0.02'],
    ['half-ceiling', '0.03', '-0.02'],
    ['half-floor', '0.02', '-0.03'],
  ])('takes 0.025 and −0.025 to hundredths %s', (mode, above, below) => {
    const rounding = { step: '0.01', mode };
    expect(lineOf(tariffOf([rated('0.05', rounding)]), { billed: '0.5' })).toBe(above);
    expect(lineOf(tariffOf([rated('-0.05', rounding)]), { billed: '0.5' })).toBe(below);
  });

  it.each([
    ['1', '12'], // 12.177
    ['0.5', '12'],
    ['0.05', '12.2'],
    ['0.25', '12.25'],
    ['0.001', '12.177'],
    ['5', '10'],
    ['25', '0'],
  ])('can be to steps of %s', (step, amount) => {
    expect(lineOf(tariffOf([rated('0.123', { step, mode: 'half-up' })]), { billed: '99' })).toBe(amount);
  });

  it('is left out where the tariff or the charge says none', () => {
    expect(lineOf(tariffOf([rated('0.12345678', 'none')]), { billed: '99.001' })).toBe('12.22234467678');
    const rounding: TariffDocument['rounding'] = { clause: 'T 2', line: 'none', total: 'none' };
    expect(lineOf(tariffOf([rated('0.123')], { rounding }), { billed: '99' })).toBe('12.177');
  });

  it('is shown with the exact value before it and the clause of the rounding', () => {
    const [line] = billOf(tariffOf([rated('0.123')]), { billed: '99' }).lines;
    const rounding = line?.figure.rounding ?? null;
    expect(rounding).toMatchObject({ step: '0.01', mode: 'half-up', clause: 'T 2' });
    expect(rounding === null ? '' : valueOf(rounding)).toBe('12.177');
  });

  it('is not shown where it changed nothing', () => {
    const [line] = billOf(tariffOf([rated('0.40')]), { billed: '99' }).lines;
    expect(line?.figure.rounding).toBeNull();
  });
});

describe('lines that are not rounded', () => {
  const charges: readonly Charge[] = [
    rated('0.123'),
    {
      id: 'tax',
      label: 'Tax',
      clause: 'T 5.2',
      kind: 'percentage',
      percent: '6.25',
      of: ['fuel'],
    },
    {
      id: 'minimum',
      label: 'Minimum',
      clause: 'T 4',
      kind: 'minimum',
      amount: '13.0001',
      of: ['fuel', 'tax'],
      as: 'shortfall',
    },
  ];
  const exact = (total: TariffDocument['rounding']['total']): TariffDocument['rounding'] => ({
    clause: 'T 2',
    line: 'none',
    total,
  });

  it('stay exact to the last digit, through percentages and minimums', () => {
    const bill = billOf(tariffOf(charges, { rounding: exact('none') }), { billed: '99' });
    expect(amountsOf(bill)).toEqual([
      ['fuel', '12.177'],
      ['tax', '0.7610625'],
      ['minimum', '0.0620375'],
    ]);
    expect([valueOf(bill.sum), valueOf(bill.payable), bill.roundingDifference]).toEqual([
      '13.0001',
      '13.0001',
      null,
    ]);
  });

  it('stay exact where a percentage is taken of a percentage', () => {
    const percentage = { label: 'Tax', clause: 'T 5.2', kind: 'percentage' } as const;
    const tariff = tariffOf(
      [
        rated('6.25'),
        { ...percentage, id: 'tax', percent: '6', of: ['fuel'] },
        { ...percentage, id: 'cess', percent: '1.5', of: ['fuel', 'tax'] },
      ],
      { rounding: exact('none') },
    );
    expect(amountsOf(billOf(tariff, { billed: '400' }))).toEqual([
      ['fuel', '2500'],
      ['tax', '150'],
      ['cess', '39.75'],
    ]);
  });

  it('are rounded in the total only', () => {
    const rounding = exact({ step: '0.05', mode: 'half-up' });
    const bill = billOf(tariffOf(charges.slice(0, 2), { rounding }), { billed: '99' });
    expect(valueOf(bill.sum)).toBe('12.9380625');
    expect(valueOf(bill.payable)).toBe('12.95');
    expect(bill.roundingDifference === null ? '' : valueOf(bill.roundingDifference)).toBe('0.0119375');
  });
});

describe('the rounding of the total', () => {
  const totalOf = (rate: string, total: TariffDocument['rounding']['total'], label?: string) => {
    const rounding: TariffDocument['rounding'] = {
      clause: 'T 2',
      line: { step: '0.01', mode: 'half-up' },
      total,
      ...(label === undefined ? {} : { differenceLabel: label }),
    };
    return billOf(tariffOf([rated(rate)], { rounding }), { billed: '1' });
  };

  it.each([
    ['10.40', '10', '-0.4'],
    ['10.49', '10', '-0.49'],
    ['10.50', '11', '0.5'],
    ['10.70', '11', '0.3'],
    ['-10.50', '-11', '-0.5'],
    ['-10.49', '-10', '0.49'],
    ['10', '10', '0'],
  ])('takes %s to the nearest whole, a half up: %s', (rate, payable, difference) => {
    const bill = totalOf(rate, { step: '1', mode: 'half-up' });
    expect(valueOf(bill.payable)).toBe(payable);
    expect(bill.roundingDifference === null ? '' : valueOf(bill.roundingDifference)).toBe(difference);
  });

  it('has the label that the tariff gives it, or a plain one', () => {
    const total = { step: '1', mode: 'half-up' } as const;
    expect(totalOf('1', total, 'Rounding to the rupee').roundingDifference?.label).toBe(
      'Rounding to the rupee',
    );
    expect(totalOf('1', total).roundingDifference?.label).toBe('Rounding');
  });

  it('can be to tens or by another mode', () => {
    expect(valueOf(totalOf('14.55', { step: '10', mode: 'half-up' }).payable)).toBe('10');
    expect(valueOf(totalOf('14.55', { step: '1', mode: 'up' }).payable)).toBe('15');
    expect(valueOf(totalOf('-14.55', { step: '1', mode: 'ceiling' }).payable)).toBe('-14');
  });
});

describe('a currency', () => {
  it.each([
    ['JPY', '1', '12'],
    ['KWD', '0.001', '12.178'],
    ['CLF', '0.0001', '12.1778'],
  ])('such as %s is rounded to its own coin, %s', (currency, step, amount) => {
    const rounding = { clause: 'T 2', line: { step, mode: 'half-up' }, total: 'none' } as const;
    const bill = billOf(tariffOf([rated('0.12300758')], { currency, rounding }), { billed: '99' });
    expect([bill.currency, valueOf(bill.payable)]).toEqual([currency, amount]); // 12.17775042
  });
});
