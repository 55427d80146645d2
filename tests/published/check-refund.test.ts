import { describe, expect, it } from 'vitest';
import example from '../../tariffs-examples/disputes/tarumira.json?raw';
import { readDispute, refundOf, type InterestRule, type SimpleInterest } from '@unitbook/engine';
import { exactText, quotientOf, type Quotient } from '@unitbook/engine';
import { dayOf } from '../support/make.ts';

const text = (value: Quotient | null): string =>
  value === null ? 'none' : exactText(value.numerator, value.denominator);

const PLAIN: SimpleInterest = {
  kind: 'simple',
  clause: 'rule',
  on: 'payable',
  dayCount: '365',
  rounding: { step: '0.01', mode: 'half-up' },
  roundedAt: 'bill',
  rates: [{ from: '2000-01-01', percent: '9', clause: 'rule' }],
};

/** What is paid back, and the interest on it. */
function paidBack(
  [printed, right]: readonly [string, string],
  rule: InterestRule,
  [from, until]: readonly [string, string],
): readonly string[] {
  const payments = [{ on: dayOf(from), amount: quotientOf(printed) }];
  const input = { printed: quotientOf(printed), right: quotientOf(right), payments };
  const { refund, interest } = refundOf(input, rule, dayOf(until)).value;
  return [text(refund), text(interest)];
}

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1, answer 5.
it('scenario 1: 316 at 9 % for the 60 days from 18 June to 17 August 2025 bear 4.68', () => {
  const rule = readDispute(example).value?.versions[0]?.interest;
  if (rule === undefined) throw new Error('the example has no rule for interest');
  expect(paidBack(['546', '230'], rule, ['2025-06-18', '2025-08-17'])).toEqual(['316', '4.68']);
});

describe('refunds on record', () => {
  const YEAR = ['2024-01-01', '2024-12-31'] as const;
  const NONE: InterestRule = { kind: 'none', clause: 'order' };

  // DT Next, 19 October 2024, "Charge us for actual use, solar consumers tell" the supplier: 288.43 billed, 148 right.
  it('a network charge on an assumed generation: 140.43 too much', () => {
    expect(paidBack(['288.43', '148'], NONE, YEAR)).toEqual(['140.43', '0']);
  });

  // Hindustan Times, 2022, "Inflated bills, zero bills": a bill of 55,000 corrected to 11,500.
  it('a bill corrected from 55,000 to 11,500', () => {
    expect(paidBack(['55000', '11500'], NONE, YEAR)).toEqual(['43500', '0']);
  });
});

// Reference values (project reference, 2025), no. 42: a month of 12 % a year on 1000, 669.98 and 336.66, half-up.
it.each([
  ['1000', '10'],
  ['669.98', '6.7'],
  ['336.66', '3.37'],
])('interest of 30 days over 360 on %s is %s', (principal, interest) => {
  const rule: InterestRule = {
    ...PLAIN,
    dayCount: '360',
    rates: [{ from: '2000-01-01', percent: '12', clause: 'rule' }],
  };
  expect(paidBack([principal, '0'], rule, ['2025-01-01', '2025-01-31'])).toEqual([principal, interest]);
});

// Central Goods and Services Tax Act 2017, s. 170 (Parliament of India, 2017): a sum refundable goes to the nearest
// rupee, 50 paise and more upwards. Interest of 365 days at 100 % is the amount itself.
it.each([
  ['10.40', '10'],
  ['10.49', '10'],
  ['10.50', '11'],
  ['10.70', '11'],
])('%s rounded to the nearest rupee is %s', (amount, rounded) => {
  const rule: InterestRule = {
    ...PLAIN,
    rounding: { step: '1', mode: 'half-up' },
    rates: [{ from: '2000-01-01', percent: '100', clause: 'rule' }],
  };
  expect(paidBack([amount, '0'], rule, ['2025-01-01', '2026-01-01'])[1]).toBe(rounded);
});
