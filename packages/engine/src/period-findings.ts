import { findingMaker, type Finding, type FindingPlace } from './quantity/index.ts';

/** Everything that can be wrong with periods of which the units are known, by code. */
export const PERIOD_FINDINGS = {
  'period/unknown-quantity': {
    severity: 'error',
    text: (v) => ({
      found: `the quantity "${v['name'] ?? ''}"`,
      expected: `a quantity that can be given, not one that is worked out: ${v['known'] ?? ''}`,
      remedy: 'Correct the name, leave it out, or map the register to its quantity in the account.',
    }),
  },
  'period/not-a-quantity': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['value'] ?? ''}" for "${v['name'] ?? ''}"`,
      expected: 'a number of 0 or more with at most 9 digits and 3 decimals (8 for money)',
      remedy: 'Write it like "300" or "12.5".',
    }),
  },
  'period/quantity-twice': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['name'] ?? ''}" a second time`,
      expected: 'each quantity once in a period',
      remedy: 'Keep one: the quantity itself, or the register that counts it.',
    }),
  },
  'period/unknown-ledger': {
    severity: 'error',
    text: (v) => ({
      found: `a balance of "${v['name'] ?? ''}"`,
      expected: `a ledger of the tariff: ${v['known'] ?? ''}`,
      remedy: 'Correct the name.',
    }),
  },
  'period/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['value'] ?? ''}"`,
      expected: 'a day of the calendar',
      remedy: 'Correct the date.',
    }),
  },
  'period/ends-before-it-begins': {
    severity: 'error',
    text: (v) => ({
      found: `a period from ${v['from'] ?? ''} to ${v['to'] ?? ''}`,
      expected: 'a period that ends after it begins; "to" is the day on which the next one begins',
      remedy: 'Correct one of the two dates.',
    }),
  },
  'period/change-outside': {
    severity: 'error',
    text: (v) => ({
      found: `a change on ${v['from'] ?? ''}`,
      expected: 'days after the first and before the end of the period, in order of time',
      remedy: 'Correct the date, or give the new value for the whole of the next period.',
    }),
  },
  'period/not-changeable': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['name'] ?? ''}", counted in ${v['unit'] ?? ''}, changed inside the period`,
      expected: 'a power or a class: what is counted has no other value from a day on',
      remedy: 'Give what was counted in the whole period.',
    }),
  },
  'period/no-true-up-rule': {
    severity: 'error',
    text: () => ({
      found: 'a period that replaces provisional ones, under a tariff without "trueUp"',
      expected: 'a rule that says how units read at last are spread',
      remedy: 'Add "trueUp" to the tariff, or leave "replaces" out.',
    }),
  },
  'period/not-provisional': {
    severity: 'error',
    text: (v) => ({
      found: `a period that replaces ${v['count'] ?? ''} before it, not all of them there and provisional`,
      expected: 'periods marked "provisional": true',
      remedy: 'Correct the number, or mark the periods that were estimated.',
    }),
  },
  'period/not-the-same-days': {
    severity: 'error',
    text: (v) => ({
      found: `a period from ${v['from'] ?? ''} to ${v['to'] ?? ''} that replaces those from ${v['first'] ?? ''} on`,
      expected: 'the same first day, an end not before theirs, and no changes inside',
      remedy: 'Begin it on the first day of the first period that it replaces.',
    }),
  },
  'period/no-account': {
    severity: 'error',
    text: (v) => ({
      found: `no account "${v['id'] ?? ''}", which the group names`,
      expected: 'the host and every member',
      remedy: 'Add the account, or take it out of the group.',
    }),
  },
  'period/group-uneven': {
    severity: 'error',
    text: (v) => ({
      found: `the periods of "${v['id'] ?? ''}", which are not those of the host, or provisional`,
      expected: 'the same periods for every account of a group, each with units that were read',
      remedy: 'Give every account the periods of the host.',
    }),
  },
  'period/no-sharing-rule': {
    severity: 'error',
    text: () => ({
      found: 'a group under a tariff without "sharing"',
      expected: 'a settlement rule that says how a pool is shared',
      remedy: 'Add "sharing" to the settlement of the tariff.',
    }),
  },
  'period/no-pool': {
    severity: 'error',
    text: (v) => ({
      found: `no "${v['name'] ?? ''}" of the host "${v['host'] ?? ''}", which is the pool`,
      expected: 'the units that are shared, in every period of the host',
      remedy: 'Add them to the period.',
    }),
  },
  'period/does-not-add-up': {
    severity: 'error',
    text: (v) => ({
      found: `${v['given'] ?? ''} given as "${v['name'] ?? ''}", where the other quantities come to ${v['follows'] ?? ''}`,
      expected: 'a total that its parts make up',
      remedy: 'Correct one of them, or leave the total out: it is worked out.',
    }),
  },
  'period/bad-register': {
    severity: 'error',
    text: (v) => ({
      found: `the register "${v['register'] ?? ''}" counting "${v['name'] ?? ''}"`,
      expected: `a quantity that can be given: ${v['known'] ?? ''}`,
      remedy: 'Correct the name of the quantity.',
    }),
  },
  'period/gap': {
    severity: 'error',
    text: (v) => ({
      found: `a period that begins on ${v['from'] ?? ''}, later than the one before it ends`,
      expected: 'each period to begin where the one before ends',
      remedy: 'Add what is between them, or correct the date.',
    }),
  },
  'period/overlaps': {
    severity: 'error',
    text: (v) => ({
      found: `a period that begins on ${v['from'] ?? ''}, before the one before it ends`,
      expected: 'each period to begin where the one before ends',
      remedy: 'Correct the date.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about periods. */
export type PeriodFindingCode = keyof typeof PERIOD_FINDINGS;

/** Make a finding about a period. */
export const periodFinding: (
  code: PeriodFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<PeriodFindingCode>(PERIOD_FINDINGS);
