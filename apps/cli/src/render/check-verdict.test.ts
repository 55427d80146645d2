import { expect, it } from 'vitest';
import { readTariff, type CheckedBill } from '@unitbook/engine';
import unitsText from '../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import moneyText from '../../../../tariffs-examples/tarumira/taresco-two-ledgers/tariff.json?raw';
import { verdictText } from './check-verdict.ts';
import { makeNotation } from './notation.ts';

const rupees = (numerator: number) => ({ numerator, denominator: 1 });

/** A bill of which nobody knows what was brought forward: 1,180 if nothing, 590 if so many thousandths. */
function told(text: string, ledger: string, opening: number): string {
  const { value } = readTariff(text);
  if (value === null) throw new Error('the example cannot be read');
  const checked = {
    verdict: 'cannot-tell',
    right: null,
    facts: { tariff: value.document },
    alternatives: [
      { ledger, opening: 0, payable: rupees(1180) },
      { ledger, opening, payable: rupees(590) },
    ],
  };
  return verdictText(checked as unknown as CheckedBill, makeNotation('en-IN', 2));
}

it('calls units of a bank units', () => {
  expect(told(unitsText, 'credit', 58_000)).toBe(
    'Cannot be told: 1,180.00 if credit brought forward is 0, 590.00 if credit brought forward is 58. Look at what the bill before carried forward.',
  );
});

it('writes what a ledger of money holds as money', () => {
  expect(told(moneyText, 'bonus-money', 1_229_500)).toBe(
    'Cannot be told: 1,180.00 if bonus in money, brought forward is 0.00, 590.00 if bonus in money, brought forward is 1,229.50. Look at what the bill before carried forward.',
  );
});
