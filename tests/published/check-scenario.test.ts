import {
  checkAccountBills,
  exactText,
  readAccount,
  readPrintedBill,
  readTariff,
  type CheckedBill,
  type PrintedBillDocument,
  type ReadingRow,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

// Two acceptance scenarios, in an invented place (2025), section 6.1: computed there with decimal arithmetic.

const register = { digits: '5', decimals: '1' };
const ACCOUNT = {
  format: 'unitbook-account-1',
  id: 'TAR-30-00417',
  sanctionedLoad: '3',
  plantCapacity: '3.3',
  openingCredit: '0',
  meters: {
    grid: { serial: 'PB-77120', multiplyingFactor: '1', import: register, export: register },
    generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: register },
  },
};
const READINGS: readonly ReadingRow[] = [
  { date: '2025-04-01', import: '4120.6', export: '2655.2', generation: '6890.4' },
  { date: '2025-05-01', import: '4342.1', export: '2935.8', generation: '7318.0' },
  { date: '2025-06-01', import: '4640.3', export: '3151.0', generation: '7689.7' },
];
const APRIL: PrintedBillDocument = {
  from: '2025-04-01',
  to: '2025-05-01',
  units: { billed: '0' },
  closing: { credit: '58' },
  payable: '180',
  paid: { on: '2025-05-12', amount: '180' },
};
const MAY: PrintedBillDocument = {
  from: '2025-05-01',
  to: '2025-06-01',
  opening: { credit: '0' },
  units: { billed: '82' },
  lines: [
    { charge: 'fixed', amount: '180.00' },
    { charge: 'energy', amount: '303.60' },
    { charge: 'fuel', amount: '119.20' },
    { charge: 'tax', amount: '18.22' },
    { charge: 'subsidy', amount: '-75.00' },
  ],
  sum: '546.02',
  payable: '546',
  paid: { on: '2025-06-18', amount: '546' },
};

function check(
  readings: readonly ReadingRow[],
  bills: readonly PrintedBillDocument[],
  isOpeningKnown = true,
): readonly CheckedBill[] {
  const account = readAccount(JSON.stringify(ACCOUNT)).value;
  const tariff = readTariff(tariffText).value;
  if (account === null || tariff === null) throw new Error('the example cannot be read');
  const read = bills.map((bill, at) => readPrintedBill(bill, ['bills', at]).value);
  return checkAccountBills({
    account,
    tariff,
    readings,
    bills: read.filter((bill) => bill !== null),
    isOpeningKnown,
  }).bills;
}

const text = (
  value: { readonly numerator: number | bigint; readonly denominator: number } | null | undefined,
): string => (value == null ? 'none' : exactText(value.numerator, value.denominator));

describe('scenario 1: a household', () => {
  const [april, may] = check(READINGS, [APRIL, MAY]);

  it('finds April right', () => {
    expect(april?.verdict).toBe('right');
  });

  it('finds May 316 too high', () => {
    expect([may?.verdict, text(may?.difference)]).toEqual(['wrong', '316']);
    expect(text(may?.right?.figures.get('sum'))).toBe('229.92');
    expect(text(may?.right?.figures.get('payable'))).toBe('230');
  });

  it('puts it down to both causes, to the last coin', () => {
    const explanations = may?.explanations ?? [];
    expect(explanations.map(({ attempt }) => attempt.steps.map(({ cause }) => cause.id))).toEqual([
      ['credit-not-brought-forward', 'surcharge-on-import'],
    ]);
    const { attribution, confidence } = explanations[0] ?? {};
    expect(confidence).toBe('proven');
    expect(attribution?.parts.map(({ amount }) => text(amount))).toEqual(['229.7', '86.4']);
    expect([text(attribution?.rounding), text(attribution?.rest)]).toEqual(['-0.1', '0']);
  });

  it('says what it should be where only readings are known', () => {
    const [bare] = check(READINGS, [{ from: '2025-05-01', to: '2025-06-01' }]);
    expect([bare?.verdict, text(bare?.right?.figures.get('payable'))]).toEqual(['cannot-tell', '230']);
  });

  it('answers with what it comes to where nobody knows the credit brought forward', () => {
    const [open] = check(READINGS, [{ from: '2025-05-01', to: '2025-06-01' }], false);
    expect(open?.verdict).toBe('cannot-tell');
    // 82 units or more would leave the fixed charge, 3 × 60.
    expect(open?.alternatives.map(({ opening, payable }) => [opening, text(payable)])).toEqual([
      [0, '460'],
      [58_000, '230'],
      [298_000, '180'],
    ]);
  });
});
