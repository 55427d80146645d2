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
import { ACCOUNT, APRIL, MAY, READINGS } from '../support/scenario-1.ts';

// Two acceptance scenarios, in an invented place (2025), section 6.1: computed there with decimal arithmetic.

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
