import { describe, expect, it } from 'vitest';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { keepPeriods, type UnitsInput } from './keep-periods.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

type Rule = TariffDocument['settlements'][number];

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const FIXED: Charge = { ...words('fixed'), kind: 'fixed', amount: '100' };
const REWARD: Charge = { ...words('reward'), kind: 'per-unit', on: 'export', rate: '0.50' };
const CREDIT: Charge = {
  ...words('credit'),
  kind: 'credit',
  earned: ['reward'],
  ledger: 'rewards',
  against: ['fixed'],
  left: 'carried',
};

/** A bank that takes every unit given and pays 2.00 a unit for it in the next bill, on 31 March. */
const BANK: Rule = {
  from: '2024-04-01',
  scheme: 'ledgers',
  clause: 'T 5',
  ledgers: [
    {
      ...words('bank'),
      unit: 'kWh',
      adds: 'export',
      close: { clause: 'T 6', on: ['03-31'], surplus: 'paid' },
      payment: { clause: 'T 7', label: 'Surplus', rate: '2.00', inBill: 'next' },
    },
  ],
};

/** The same in few words: what is left of the year's units is paid in the next bill. */
const NETTING: Rule = {
  from: '2024-04-01',
  scheme: 'unit-netting',
  clause: 'T 5',
  carry: { clause: 'T 5' },
  close: { clause: 'T 6', on: '03-31', surplus: 'paid', rate: '2.00', inBill: 'next', label: 'Surplus' },
};

const REWARDS: Rule = {
  from: '2024-04-01',
  scheme: 'ledgers',
  clause: 'T 5',
  ledgers: [{ ...words('rewards'), unit: 'money' }],
};

const MARCH = { from: '2025-03-01', to: '2025-04-01', quantities: { import: '0', export: '30' } };
const APRIL = { from: '2025-04-01', to: '2025-05-01', quantities: { import: '0', export: '0' } };

const tariffWith = (settlements: readonly Rule[], charges: readonly Charge[] = [FIXED]) =>
  tariffOf(charges, { settlements: [...settlements] });

function keep(input: Omit<UnitsInput, 'account'> & Partial<Pick<UnitsInput, 'account'>>) {
  const { value, findings } = keepPeriods({ account: {}, ...input });
  return {
    payable: value.map(({ bill }) => valueOf(bill.payable)),
    codes: findings.map(({ code }) => code),
    months: value,
  };
}

describe('what one rule leaves to the next', () => {
  const until = (rule: Rule): Rule => ({ ...rule, through: '2025-03-31' });
  const from = (rule: Rule): Rule => ({ ...rule, from: '2025-04-01' });

  it('is paid where ledgers go on', () => {
    // 100 in March; 100 − 30 × 2.00 in April.
    expect(keep({ tariff: tariffWith([BANK]), periods: [MARCH, APRIL] }).payable).toEqual(['100', '40']);
  });

  it('is paid where unit netting follows ledgers', () => {
    const tariff = tariffWith([until(BANK), from(NETTING)]);
    expect(keep({ tariff, periods: [MARCH, APRIL] }).payable).toEqual(['100', '40']);
  });

  it('is paid where ledgers follow unit netting', () => {
    const tariff = tariffWith([until(NETTING), from(BANK)]);
    expect(keep({ tariff, periods: [MARCH, APRIL] }).payable).toEqual(['100', '40']);
  });

  it('is refused where unit netting follows a ledger that has a balance', () => {
    const open: Rule = { ...REWARDS, through: '2025-03-31' };
    const tariff = tariffWith(
      [open, from(NETTING)],
      [FIXED, REWARD, { ...CREDIT, against: ['reward'], earned: ['fixed'] }],
    );
    const { codes, months } = keep({ tariff, periods: [MARCH, APRIL] });
    expect(months[0]?.ledgers.map(({ closing }) => valueOf(closing))).toEqual(['85']);
    expect(codes).toEqual(['settlement/balance-has-no-ledger']);
  });
});

describe('a credit under unit netting', () => {
  // The ledger is one of the rule that follows: in March there is none that could take what is left.
  const tariffOfCredit = (reward: string) =>
    tariffWith(
      [
        { ...NETTING, through: '2025-03-31' },
        { ...REWARDS, from: '2025-04-01' },
      ],
      [FIXED, { ...REWARD, rate: reward }, CREDIT],
    );

  it('meets what it can', () => {
    // 100 − 30 × 0.50
    expect(keep({ tariff: tariffOfCredit('0.50'), periods: [MARCH] })).toMatchObject({
      payable: ['85'],
      codes: [],
    });
  });

  it('is refused where something is left over that no ledger takes', () => {
    // 30 × 5.00 are 50 more than there is to pay.
    const { codes } = keep({ tariff: tariffOfCredit('5.00'), periods: [MARCH] });
    expect(codes).toEqual(['settlement/balance-has-no-ledger']);
  });
});

describe('a ledger of money', () => {
  it('brings forward a balance that is finer than the bill', () => {
    const { payable, codes } = keep({
      account: { opening: { rewards: '0.125' } },
      tariff: tariffWith([REWARDS], [FIXED, REWARD, CREDIT]),
      periods: [MARCH],
    });
    // 100 − 0.125 − 30 × 0.50; nothing rounds the credit.
    expect(codes).toEqual([]);
    expect(payable).toEqual(['84.875']);
  });

  it('does not begin below 0 where units given have to be paid for', () => {
    const tariff = tariffWith([REWARDS], [FIXED, { ...REWARD, rate: '-0.50' }, CREDIT]);
    const { codes, months } = keep({ tariff, periods: [MARCH] });
    const closing = months.flatMap(({ ledgers }) => ledgers.map((ledger) => valueOf(ledger.closing)));
    expect(codes.length > 0 || closing.every((text) => !text.startsWith('-'))).toBe(true);
  });
});

describe('what is needed and not given', () => {
  const load: Charge = { ...words('load'), kind: 'per-kilowatt', on: 'sanctioned-load', rate: '50' };

  it.each([
    ['unit netting', NETTING],
    ['ledgers', BANK],
  ])('is an error under %s, not 0', (_, rule) => {
    const { payable, codes } = keep({ tariff: tariffWith([rule], [load]), periods: [MARCH] });
    expect(payable).toEqual([]);
    expect(codes).toHaveLength(1);
  });
});
