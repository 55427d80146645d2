import { keepGroup, keepPeriods, type Finding, type GroupInput, type UnitsPeriod } from '@unitbook/engine';
import { changed, goodTariff } from '../support/demo.ts';
import { LEDGER_TARIFF } from '../support/ledgers.ts';
import type { MessageCase } from './message-case.ts';

const APRIL: UnitsPeriod = {
  from: '2025-04-01',
  to: '2025-05-01',
  quantities: { import: '120', export: '80' },
};
const ESTIMATED: UnitsPeriod = { ...APRIL, provisional: true };
const READ: UnitsPeriod = { ...APRIL, replaces: '1' };

const WITH_TRUE_UP = changed(
  LEDGER_TARIFF,
  '"versions": [',
  '"trueUp": { "clause": "TR 9", "spread": "by-days", "units": "exact" }, "versions": [',
);
const WITH_SHARING = changed(
  LEDGER_TARIFF,
  '"quantities": [',
  '"sharing": { "clause": "TR 9", "of": "export", "by": "percentage", "decimals": "0", ' +
    '"remainder": "kept-in-pool", "unused": "stays-with-member" }, "quantities": [',
);

/** What is found in periods of a tariff, some of which replace others. */
const kept =
  (text: string, ...periods: readonly UnitsPeriod[]) =>
  (): readonly Finding[] =>
    keepPeriods({ account: {}, tariff: goodTariff(text), periods }).findings;

/** What is found in a group of a host and one member. */
const grouped = (text: string, accounts: GroupInput['accounts']) => (): readonly Finding[] =>
  keepGroup({
    group: {
      format: 'unitbook-group-1',
      id: 'house',
      host: 'roof',
      members: [{ account: 'flat', percent: '100' }],
    },
    tariff: goodTariff(text),
    accounts,
  }).findings;

const one = (quantities: UnitsPeriod['quantities'] = APRIL.quantities) => ({
  account: {},
  periods: [{ ...APRIL, quantities }],
});

const PROVISIONAL = {
  expected: 'periods marked "provisional": true',
  remedy: 'Correct the number, or mark the periods that were estimated.',
} as const;
const SAME_DAYS = {
  expected: 'the same first day, an end not before theirs, and no changes inside',
  remedy: 'Begin it on the first day of the first period that it replaces.',
} as const;

/** Everything that can be wrong with periods that replace others, and with groups. */
export const GROUP_CASES: readonly MessageCase[] = [
  {
    code: 'period/no-true-up-rule',
    when: 'a reading replaces an estimate, and the tariff does not say how',
    make: kept(LEDGER_TARIFF, ESTIMATED, READ),
    at: 'periods.1.replaces',
    found: 'a period that replaces provisional ones, under a tariff without "trueUp"',
    expected: 'a rule that says how units read at last are spread',
    remedy: 'Add "trueUp" to the tariff, or leave "replaces" out.',
  },
  {
    code: 'period/not-provisional',
    when: 'a reading replaces a bill that was none',
    make: kept(WITH_TRUE_UP, APRIL, READ),
    at: 'periods.1.replaces',
    found: 'a period that replaces 1 before it, not all of them there and provisional',
    ...PROVISIONAL,
  },
  {
    code: 'period/not-provisional',
    when: 'a reading replaces more bills than there are',
    make: kept(WITH_TRUE_UP, ESTIMATED, { ...READ, replaces: '2' }),
    at: 'periods.1.replaces',
    found: 'a period that replaces 2 before it, not all of them there and provisional',
    ...PROVISIONAL,
  },
  {
    code: 'period/not-the-same-days',
    when: 'a reading begins a day after the estimate',
    make: kept(WITH_TRUE_UP, ESTIMATED, { ...READ, from: '2025-04-02' }),
    at: 'periods.1.replaces',
    found: 'a period from 2025-04-02 to 2025-05-01 that replaces those from 2025-04-01 on',
    ...SAME_DAYS,
  },
  {
    code: 'period/not-the-same-days',
    when: 'a reading ends a day before the estimate',
    make: kept(WITH_TRUE_UP, ESTIMATED, { ...READ, to: '2025-04-30' }),
    at: 'periods.1.replaces',
    found: 'a period from 2025-04-01 to 2025-04-30 that replaces those from 2025-04-01 on',
    ...SAME_DAYS,
  },
  {
    code: 'period/no-account',
    when: 'a member has no account',
    make: grouped(WITH_SHARING, { roof: one() }),
    at: 'accounts',
    found: 'no account "flat", which the group names',
    expected: 'the host and every member',
    remedy: 'Add the account, or take it out of the group.',
  },
  {
    code: 'period/group-uneven',
    when: 'a member has no period where the host has one',
    make: grouped(WITH_SHARING, { roof: one(), flat: { account: {}, periods: [] } }),
    at: 'accounts.flat.periods',
    found: 'the periods of "flat", which are not those of the host, or provisional',
    expected: 'the same periods for every account of a group, each with units that were read',
    remedy: 'Give every account the periods of the host.',
  },
  {
    code: 'period/no-sharing-rule',
    when: 'the tariff shares nothing',
    make: grouped(LEDGER_TARIFF, { roof: one(), flat: one() }),
    at: '',
    found: 'a group under a tariff without "sharing"',
    expected: 'a settlement rule that says how a pool is shared',
    remedy: 'Add "sharing" to the settlement of the tariff.',
  },
  {
    code: 'period/no-pool',
    when: 'the host has no export',
    make: grouped(WITH_SHARING, { roof: one({ import: '120' }), flat: one() }),
    at: 'accounts.roof.periods.0.quantities',
    found: 'no "export" of the host "roof", which is the pool',
    expected: 'the units that are shared, in every period of the host',
    remedy: 'Add them to the period.',
  },
];
