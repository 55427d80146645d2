import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

/** Everything that can be wrong when a pool of units is shared over accounts, by code. */
export const SHARING_FINDINGS = {
  'settlement/share-no-members': {
    severity: 'error',
    text: () => ({
      found: 'a pool of units that no account shares',
      expected: 'at least one member',
      remedy: 'Name the accounts that share it.',
    }),
  },
  'settlement/share-same-member': {
    severity: 'error',
    text: (v) => ({
      found: `the account "${v['member'] ?? ''}" a second time`,
      expected: 'each account once',
      remedy: 'Correct the account, or put its two parts together and take one out.',
    }),
  },
  'settlement/share-basis-missing': {
    severity: 'error',
    text: (v) => ({
      found: `no "${v['key'] ?? ''}" for the account "${v['member'] ?? ''}"`,
      expected: v['meaning'] ?? '',
      remedy: `Add "${v['key'] ?? ''}", or take the account out.`,
    }),
  },
  'settlement/share-need-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `it is not known what the account "${v['member'] ?? ''}" took from the grid in this period`,
      expected: `its import, since ${v['reason'] ?? ''}`,
      remedy: 'Add the readings of that account for this period.',
    }),
  },
  'settlement/share-percent-out-of-range': {
    severity: 'error',
    text: (v) => ({
      found: `${v['percent'] ?? ''} % for the account "${v['member'] ?? ''}"`,
      expected: 'a percentage from 0 to 100, with 8 decimals at most',
      remedy: 'Correct the percentage.',
    }),
  },
  'settlement/share-capacity-not-above-zero': {
    severity: 'error',
    text: (v) => ({
      found: `a capacity of ${v['capacity'] ?? ''} kW for the account "${v['member'] ?? ''}"`,
      expected: 'more than 0 kW and no more than 1000000, with 3 decimals at most',
      remedy: 'Correct the capacity; an account without any takes no part in a share by capacity.',
    }),
  },
  'settlement/share-not-hundred': {
    severity: 'error',
    text: (v) => ({
      found: `percentages that come to ${v['sum'] ?? ''} %, ${v['gap'] ?? ''} % too ${v['side'] ?? ''}`,
      expected: '100 % exactly: every unit of the pool has one owner',
      remedy: 'Correct the percentages by the agreement of the members.',
    }),
  },
  'settlement/share-no-host': {
    severity: 'error',
    text: () => ({
      found: 'no host among the members',
      expected: 'one host, since units left over go to it',
      remedy: 'Name the host as a member, too, or state another place for the remainder.',
    }),
  },
  'settlement/share-two-hosts': {
    severity: 'error',
    text: (v) => ({
      found: `the account "${v['member'] ?? ''}" as host, beside "${v['other'] ?? ''}"`,
      expected: 'one host, since units left over go to it',
      remedy: 'Keep the one whose plant fills the pool.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about sharing a pool. */
export type SharingFindingCode = keyof typeof SHARING_FINDINGS;

/** Make a finding about the sharing of a pool. */
export const sharingFinding: (
  code: SharingFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<SharingFindingCode>(SHARING_FINDINGS);
