import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../../../tests/support/make.ts';
import { unexplained } from '../../../../../tests/support/recompute.ts';
import { addQuotients, exactText, subtractQuotients, type Quotient } from '../../quantity/index.ts';
import { quotientOf } from '../printed.ts';
import type { InterestRule, SimpleInterest } from './dispute-schema.ts';
import { refundOf, sumRefunds, type BillRefund } from './refund.ts';

const NINE: SimpleInterest = {
  kind: 'simple',
  clause: 'SC 8.5',
  on: 'payable',
  dayCount: '365',
  rounding: { step: '0.01', mode: 'half-up' },
  roundedAt: 'bill',
  rates: [{ from: '2020-04-01', percent: '9', clause: 'SC 8.5' }],
};
const text = (value: Quotient | null): string =>
  value === null ? 'none' : exactText(value.numerator, value.denominator);

interface Told {
  readonly printed: string;
  readonly right: string;
  /** Day and amount. */
  readonly paid?: readonly (readonly [string, string])[];
  readonly rule?: InterestRule | null;
  readonly until?: string;
}

function refund({ printed, right, paid = [], rule = NINE, until = '2025-08-17' }: Told) {
  const payments = paid.map(([on, amount]) => ({ on: dayOf(on), amount: quotientOf(amount) }));
  return refundOf({ printed: quotientOf(printed), right: quotientOf(right), payments }, rule, dayOf(until));
}

const amounts = ({ refund: back, withdraw, credit, underBilled, interest }: BillRefund) => ({
  refund: text(back),
  withdraw: text(withdraw),
  credit: text(credit),
  underBilled: text(underBilled),
  interest: text(interest),
});
const NOTHING = { refund: '0', withdraw: '0', credit: '0', underBilled: '0', interest: '0' };

describe('what a wrong bill leaves to be set right', () => {
  it.each<[string, Told, Partial<typeof NOTHING>]>([
    // 316 × 0.09 × 60 ÷ 365 = 1706.40 ÷ 365 = 4.675…
    [
      'paid in full',
      { printed: '546', right: '230', paid: [['2025-06-18', '546']] },
      { refund: '316', interest: '4.68' },
    ],
    ['not paid', { printed: '546', right: '230' }, { withdraw: '316' }],
    // 300 − 230 = 70 back, 546 − 300 = 246 withdrawn; 70 × 0.09 × 60 ÷ 365 = 1.0356…
    [
      'paid in part, above what was owed',
      { printed: '546', right: '230', paid: [['2025-06-18', '300']] },
      { refund: '70', withdraw: '246', interest: '1.04' },
    ],
    // What is still owed, 130, is no matter of the dispute.
    [
      'paid in part, below what was owed',
      { printed: '546', right: '230', paid: [['2025-06-18', '100']] },
      { withdraw: '316' },
    ],
    // More than the bill asked for was paid: that is no mistake of the bill.
    [
      'overpaid',
      { printed: '546', right: '230', paid: [['2025-06-18', '600']] },
      { refund: '316', interest: '4.68' },
    ],
    // The 100 paid come back, and the 300 that the household was owed are due, too; 100 × 0.09 × 60 ÷ 365 = 1.479…
    [
      'a credit left out',
      { printed: '100', right: '-300', paid: [['2025-06-18', '100']] },
      { refund: '100', credit: '300', interest: '1.48' },
    ],
    ['a credit too small', { printed: '-100', right: '-300' }, { credit: '200' }],
    [
      'asked for too little',
      { printed: '240', right: '613', paid: [['2025-06-18', '240']] },
      { underBilled: '373' },
    ],
    ['a credit too large', { printed: '-100', right: '50' }, { underBilled: '150' }],
    ['right', { printed: '230', right: '230', paid: [['2025-06-18', '230']] }, {}],
    [
      'paid on the day of adjustment',
      { printed: '546', right: '230', paid: [['2025-08-17', '546']] },
      { refund: '316' },
    ],
    [
      'paid after that day',
      { printed: '546', right: '230', paid: [['2025-08-18', '546']] },
      { refund: '316' },
    ],
  ])('%s', (_, told, expected) => {
    const { value, findings } = refund(told);
    expect(amounts(value)).toEqual({ ...NOTHING, ...expected });
    expect(findings).toEqual([]);
    const { refund: back, withdraw, credit, underBilled, difference, interest } = value;
    const parts = subtractQuotients(addQuotients([back, withdraw, credit]), underBilled);
    expect(text(parts)).toBe(text(difference));
    expect([back, ...(interest === null ? [] : [interest])].flatMap(unexplained)).toEqual([]);
  });

  it('lets interest run from each payment: the first money paid is what was owed', () => {
    const paid = [
      ['2025-06-18', '300'],
      ['2025-07-18', '246'],
    ] as const;
    const { value } = refund({ printed: '546', right: '230', paid });
    expect(value.parts.map(({ principal }) => text(principal))).toEqual(['70', '246']);
    // 70 × 0.09 × 60 ÷ 365 + 246 × 0.09 × 30 ÷ 365 = (378 + 664.2) ÷ 365 = 2.8553…
    expect(text(value.interest)).toBe('2.86');
  });

  it('is not told interest where no rule is known', () => {
    const { value } = refund({ printed: '546', right: '230', paid: [['2025-06-18', '546']], rule: null });
    expect([text(value.refund), value.interest]).toEqual(['316', null]);
  });

  it('bears no interest where the rule says so', () => {
    const rule = { kind: 'none', clause: 'X 1' } as const;
    const { value } = refund({ printed: '546', right: '230', paid: [['2025-06-18', '546']], rule });
    expect([text(value.refund), text(value.interest)]).toEqual(['316', '0']);
  });
});

describe('interest', () => {
  const year = (more: Partial<SimpleInterest>, from: string, until: string): string => {
    const rule = { ...NINE, ...more };
    return text(refund({ printed: '1000', right: '0', paid: [[from, '1000']], rule, until }).value.interest);
  };
  const MARCH = ['2024-01-01', '2024-03-01'] as const;

  it.each<[string, Partial<SimpleInterest>, readonly [string, string], string]>([
    // 31 + 29 = 60 days: 90 × 60 ÷ 365 = 14.794…, ÷ 360 = 15, ÷ 366 = 14.754…
    ['over 365 days', {}, MARCH, '14.79'],
    ['over 360 days', { dayCount: '360' }, MARCH, '15'],
    ['over the days of a leap year', { dayCount: 'calendar' }, MARCH, '14.75'],
    // 90 × 31 ÷ 365 + 90 × 31 ÷ 366 = 7.64384 + 7.62295 = 15.26679
    ['over the days of each calendar year', { dayCount: 'calendar' }, ['2023-12-01', '2024-02-01'], '15.27'],
    ['rounded down', { rounding: { step: '1', mode: 'floor' } }, MARCH, '14'],
    ['rounded to five', { rounding: { step: '5', mode: 'half-up' } }, MARCH, '15'],
  ])('%s', (_, more, [from, until], expected) => {
    expect(year(more, from, until)).toBe(expected);
  });

  it('goes by the rate of each day', () => {
    const rates = [
      { from: '2024-01-01', through: '2024-01-31', percent: '9', clause: 'SC 1' },
      { from: '2024-02-01', percent: '6.75', clause: 'SC 2' },
    ];
    // 1000 × (9 % × 31 + 6.75 % × 29) ÷ 365 = (2790 + 1957.5) ÷ 365 = 13.0068…
    expect(year({ rates }, ...MARCH)).toBe('13.01');
  });

  it('is not made up where no rate is known', () => {
    const rates = [{ from: '2024-02-01', percent: '9', clause: 'SC 1' }];
    const told = {
      printed: '1000',
      right: '0',
      paid: [['2024-01-01', '1000']],
      until: '2024-03-01',
    } as const;
    const { value, findings } = refund({ ...told, rule: { ...NINE, rates } });
    expect([text(value.refund), value.interest]).toEqual(['1000', null]);
    expect(findings.map(({ code, found }) => [code, found])).toEqual([
      ['dispute/no-rate', 'no rate of interest on 2024-01-01'],
    ]);
  });
});

describe('refunds of several bills', () => {
  const two = (rule: SimpleInterest) =>
    sumRefunds(
      [
        refund({ printed: '546', right: '230', paid: [['2025-06-18', '546']], rule }).value,
        refund({ printed: '546', right: '230', paid: [['2025-06-18', '546']], rule }).value,
        refund({ printed: '240', right: '613', rule }).value,
      ],
      rule,
    );

  it('are summed in each direction by itself', () => {
    const sum = two(NINE);
    expect([text(sum.refund), text(sum.underBilled), text(sum.withdraw)]).toEqual(['632', '373', '0']);
  });

  it('round interest for each bill, or once: 2 × 4.68, or 2 × 4.67506…', () => {
    expect(text(two(NINE).interest)).toBe('9.36');
    expect(text(two({ ...NINE, roundedAt: 'sum' }).interest)).toBe('9.35');
  });

  it('tell no interest where that of one of them is not known', () => {
    const known = refund({ printed: '546', right: '230' }).value;
    expect(sumRefunds([known, { ...known, interest: null }], NINE).interest).toBeNull();
  });
});
