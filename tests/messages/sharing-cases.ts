import {
  readGroup,
  sharePool,
  sharingRuleFindings,
  type Finding,
  type PoolMember,
  type SharingRule,
} from '@unitbook/engine';
import type { MessageCase } from './message-case.ts';

const RULE: SharingRule = {
  clause: 'NMR-2021 r. 9.2',
  of: 'export',
  by: 'percentage',
  decimals: '0',
  remainder: 'largest-remainder',
  unused: 'stays-with-member',
};

const EQUAL: SharingRule = { ...RULE, by: 'equal' };
const PRIORITY: SharingRule = { ...RULE, by: 'priority', remainder: 'host' };

/** A pool of 10,001 units, shared over members. */
const pool =
  (rule: SharingRule, ...members: readonly PoolMember[]) =>
  (): readonly Finding[] =>
    sharePool(rule, 10_001_000, members, ['members']).findings;

/** A group document with one member a line; the first stands in line 6. */
const group =
  (...members: readonly string[]) =>
  (): readonly Finding[] => {
    const head = '{\n  "format": "unitbook-group-1",\n  "id": "TAR-G1",\n  "host": "TAR-1",\n  "members": [';
    return readGroup(`${head}${members.map((one) => `\n    ${one}`).join(',')}\n  ]\n}`).findings;
  };

const MEMBERS = 'the accounts that share it';
const HOST = 'one host, since units left over go to it';
const PERCENT = 'a percentage from 0 to 100, with 8 decimals at most';
const CAPACITY = 'more than 0 kW and no more than 1000000, with 3 decimals at most';
const CAPACITY_REMEDY = 'Correct the capacity; an account without any takes no part in a share by capacity.';
const SUM = '100 % exactly: every unit of the pool has one owner';
const SUM_REMEDY = 'Correct the percentages by the agreement of the members.';

/** Everything that can be said of a group and of a pool that it shares. */
export const SHARING_CASES: readonly MessageCase[] = [
  {
    code: 'settlement/share-no-members',
    when: 'nobody shares a pool',
    make: pool(EQUAL),
    at: 'members',
    found: 'a pool of units that no account shares',
    expected: 'at least one member',
    remedy: `Name ${MEMBERS}.`,
  },
  {
    code: 'settlement/share-no-members',
    when: 'a group has no members',
    make: group(),
    at: '5:14',
    found: 'a pool of units that no account shares',
    expected: 'at least one member',
    remedy: `Name ${MEMBERS}.`,
  },
  {
    code: 'settlement/share-same-member',
    when: 'an account stands in a group twice',
    make: group('{ "account": "TAR-1" }', '{ "account": "TAR-1" }'),
    at: '7:5',
    found: 'the account "TAR-1" a second time',
    expected: 'each account once',
    remedy: 'Correct the account, or put its two parts together and take one out.',
  },
  {
    code: 'settlement/share-basis-missing',
    when: 'a member has no percentage',
    make: pool(RULE, { id: 'TAR-1', percent: '100' }, { id: 'TAR-2' }),
    at: 'members.1.percent',
    found: 'no "percent" for the account "TAR-2"',
    expected: 'the part of the pool that the group agreed on, since the rule shares by percentage',
    remedy: 'Add "percent", or take the account out.',
  },
  {
    code: 'settlement/share-basis-missing',
    when: 'a member has no capacity',
    make: pool({ ...RULE, by: 'capacity' }, { id: 'TAR-1', percent: '100' }),
    at: 'members.0.capacity',
    found: 'no "capacity" for the account "TAR-1"',
    expected: 'its capacity in kW, since the rule shares by capacity',
    remedy: 'Add "capacity", or take the account out.',
  },
  {
    code: 'settlement/share-need-unknown',
    when: 'members are filled in order',
    make: pool(PRIORITY, { id: 'TAR-1', need: 500, isHost: true }, { id: 'TAR-2' }),
    at: 'members.1',
    found: 'it is not known what the account "TAR-2" took from the grid in this period',
    expected: 'its import, since members are filled up to what they need',
    remedy: 'Add the readings of that account for this period.',
  },
  {
    code: 'settlement/share-need-unknown',
    when: 'unused units return to the pool',
    make: pool({ ...EQUAL, unused: 'returns-to-pool' }, { id: 'TAR-1' }),
    at: 'members.0',
    found: 'it is not known what the account "TAR-1" took from the grid in this period',
    expected: 'its import, since what a member does not need returns to the pool',
    remedy: 'Add the readings of that account for this period.',
  },
  {
    code: 'settlement/share-percent-out-of-range',
    when: 'a percentage is below 0',
    make: group('{ "account": "TAR-1", "percent": "-5" }', '{ "account": "TAR-2", "percent": "100" }'),
    at: '6:38',
    found: '-5 % for the account "TAR-1"',
    expected: PERCENT,
    remedy: 'Correct the percentage.',
  },
  {
    code: 'settlement/share-percent-out-of-range',
    when: 'a percentage is no number',
    make: pool(RULE, { id: 'TAR-1', percent: 'half' }),
    at: 'members.0.percent',
    found: 'half % for the account "TAR-1"',
    expected: PERCENT,
    remedy: 'Correct the percentage.',
  },
  {
    code: 'settlement/share-capacity-not-above-zero',
    when: 'a capacity is 0',
    make: group('{ "account": "TAR-1", "capacity": "0.0" }'),
    at: '6:39',
    found: 'a capacity of 0.0 kW for the account "TAR-1"',
    expected: CAPACITY,
    remedy: CAPACITY_REMEDY,
  },
  {
    code: 'settlement/share-capacity-not-above-zero',
    when: 'a capacity is below 0',
    make: pool(EQUAL, { id: 'TAR-1', capacity: '-3' }),
    at: 'members.0.capacity',
    found: 'a capacity of -3 kW for the account "TAR-1"',
    expected: CAPACITY,
    remedy: CAPACITY_REMEDY,
  },
  {
    code: 'settlement/share-not-hundred',
    when: 'three times a third is not all',
    make: group(
      '{ "account": "TAR-1", "percent": "33.3" }',
      '{ "account": "TAR-2", "percent": "33.3" }',
      '{ "account": "TAR-3", "percent": "33.3" }',
    ),
    at: '5:14',
    found: 'percentages that come to 99.9 %, 0.1 % too little',
    expected: SUM,
    remedy: SUM_REMEDY,
  },
  {
    code: 'settlement/share-not-hundred',
    when: 'more is given than there is',
    make: pool(RULE, { id: 'TAR-1', percent: '60' }, { id: 'TAR-2', percent: '40.00000001' }),
    at: 'members',
    found: 'percentages that come to 100.00000001 %, 0.00000001 % too much',
    expected: SUM,
    remedy: SUM_REMEDY,
  },
  {
    code: 'settlement/share-no-host',
    when: 'the host is no member',
    make: pool({ ...EQUAL, remainder: 'host' }, { id: 'TAR-2' }),
    at: 'members',
    found: 'no host among the members',
    expected: HOST,
    remedy: 'Name the host as a member, too, or state another place for the remainder.',
  },
  {
    code: 'settlement/share-two-hosts',
    when: 'two members are hosts',
    make: pool(
      { ...EQUAL, remainder: 'host' },
      { id: 'TAR-1', isHost: true },
      { id: 'TAR-2' },
      { id: 'TAR-3', isHost: true },
    ),
    at: 'members.2',
    found: 'the account "TAR-3" as host, beside "TAR-1"',
    expected: HOST,
    remedy: 'Keep the one whose plant fills the pool.',
  },
  {
    code: 'tariff/settlement-incomplete',
    when: 'what no member needs has two places',
    make: () => sharingRuleFindings({ ...PRIORITY, unused: 'returns-to-pool' }, ['sharing']),
    at: 'sharing.remainder',
    found: "units that no member needs go to the host, and units above a member's need return to the pool",
    expected: 'one place for the units that no member needs',
    remedy: 'Write "remainder": "kept-in-pool", or "unused": "stays-with-member".',
  },
];
