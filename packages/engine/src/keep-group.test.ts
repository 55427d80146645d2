import { describe, expect, it } from 'vitest';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { keepGroup, type GroupInput } from './keep-group.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

const CHARGE: Charge = {
  id: 'energy',
  label: 'Energy',
  clause: 'T 1',
  kind: 'per-unit',
  on: 'net.import',
  rate: '5',
};
const SHARED: TariffDocument['settlements'][number] = {
  from: '2024-01-01',
  scheme: 'ledgers',
  clause: 'T 5',
  quantities: [
    {
      is: 'netting',
      id: 'net',
      label: 'Set off',
      clause: 'T 5',
      supply: ['shared', 'bank'],
      demand: ['import'],
      routes: 'any',
    },
  ],
  ledgers: [{ id: 'bank', label: 'Bank', unit: 'kWh', clause: 'T 6', adds: 'net.shared', keeps: 'net.bank' }],
  sharing: {
    clause: 'T 7',
    of: 'export',
    by: 'percentage',
    decimals: '0',
    remainder: 'kept-in-pool',
    unused: 'stays-with-member',
  },
};

const period = (from: string, to: string, taken: string, given: string) => ({
  from,
  to,
  quantities: { import: taken, export: given },
});

const account = (taken: readonly [string, string], given: readonly [string, string] = ['0', '0']) => ({
  account: {},
  periods: [
    period('2025-01-01', '2025-02-01', taken[0], given[0]),
    period('2025-02-01', '2025-03-01', taken[1], given[1]),
  ],
});

const GROUP = {
  format: 'unitbook-group-1',
  id: 'house',
  host: 'roof',
  members: [
    { account: 'flat-1', percent: '33.3' },
    { account: 'flat-2', percent: '66.7' },
  ],
} as const;

const INPUT: GroupInput = {
  group: { ...GROUP, members: [...GROUP.members] },
  tariff: tariffOf([CHARGE], { settlements: [SHARED] }),
  accounts: {
    roof: account(['10', '10'], ['100', '101']),
    'flat-1': account(['20', '50']),
    'flat-2': account(['70', '60']),
  },
};

describe('a group', () => {
  it('shares what its host gives, and every account is billed with its share', () => {
    const { value, findings } = keepGroup(INPUT);
    expect(findings).toEqual([]);
    // 100: 33.3 and 66.7 cut down to 33 and 66, 1 kept. 101 + 1 = 102: 33.966 and 68.034 cut to 33 and 68.
    expect(value.pools.map(({ shares }) => shares.map(({ figure }) => valueOf(figure)))).toEqual([
      ['33', '66'],
      ['33', '68'],
    ]);
    expect(value.pools.map(({ keptInPool }) => valueOf(keptInPool))).toEqual(['1', '1']);
    const payable = (id: string) => value.accounts[id]?.map(({ bill }) => valueOf(bill.payable));
    // Flat 1: 20 − 33, 13 banked; 50 − 33 − 13 = 4 × 5. Flat 2: 70 − 66 = 4 × 5; 60 − 68, 8 banked.
    expect(payable('flat-1')).toEqual(['0', '20']);
    expect(payable('flat-2')).toEqual(['20', '0']);
    expect(payable('roof')).toEqual(['50', '50']);
  });

  it('is refused without an account, a pool or a rule, and says which', () => {
    const { roof, ...others } = INPUT.accounts;
    expect(roof).toBeDefined();
    const codes = (input: GroupInput) => keepGroup(input).findings.map(({ code }) => code);
    expect(codes({ ...INPUT, accounts: others })).toEqual(['period/no-account']);
    const { sharing, ...unshared } = SHARED;
    expect(sharing).toBeDefined();
    expect(codes({ ...INPUT, tariff: tariffOf([CHARGE], { settlements: [unshared] }) })).toEqual([
      'period/no-sharing-rule',
    ]);
    const periods = roof?.periods.map((one) => ({ ...one, quantities: { import: '1' } })) ?? [];
    const dark = { account: {}, periods };
    expect(codes({ ...INPUT, accounts: { ...INPUT.accounts, roof: dark } })).toEqual(['period/no-pool']);
    const [first] = roof?.periods ?? [];
    const short = { account: {}, periods: first === undefined ? [] : [first] };
    expect(codes({ ...INPUT, accounts: { ...INPUT.accounts, 'flat-1': short } })).toEqual([
      'period/group-uneven',
    ]);
  });
});
