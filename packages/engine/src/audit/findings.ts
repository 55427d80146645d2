import { findingMaker, type Finding, type FindingKind, type FindingPlace } from '../quantity/index.ts';
import { BILL_CONSISTENCY_FINDINGS } from './consistency/bill-findings.ts';
import { CHAIN_CONSISTENCY_FINDINGS } from './consistency/chain-findings.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** Everything that can be said of printed bills and of their check, by code. */
export const CHECK_FINDINGS = {
  'check/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which is no day of the calendar`,
      expected: 'a day as yyyy-mm-dd',
      remedy: 'Type the day as it is printed.',
    }),
  },
  'check/bills-out-of-order': {
    severity: 'error',
    text: (v) => ({
      found: `a bill from ${of(v, 'from')} below one from ${of(v, 'before')}`,
      expected: 'bills in order of time',
      remedy: 'Put the bills in the order of their days.',
    }),
  },
  'check/no-bill': {
    severity: 'error',
    text: () => ({
      found: 'no printed bill',
      expected: 'at least the two days of one',
      remedy: 'Type the days of the readings off the bill, and whatever else it prints.',
    }),
  },
  'check/ends-before-it-begins': {
    severity: 'error',
    text: (v) => ({
      found: `a bill from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'a day of the reading now that is later than that of the reading before',
      remedy: 'Type both days as they are printed.',
    }),
  },
  'check/not-a-number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" for ${of(v, 'what')}`,
      expected: 'a number, such as 1234.5',
      remedy: 'Type the number as it is printed.',
    }),
  },
  'check/number-too-fine': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'what')}`,
      expected: `at most ${of(v, 'places')} decimals and 12 digits`,
      remedy: 'Type the number as it is printed.',
    }),
  },
  'check/paid-below-zero': {
    severity: 'error',
    text: (v) => ({
      found: `a payment of ${of(v, 'value')}`,
      expected: 'what was paid, 0 or more',
      remedy: 'Type the amount of the receipt; leave it out where nothing is known of a payment.',
    }),
  },
  'check/too-large': {
    severity: 'error',
    text: () => ({
      found: 'numbers so large and so fine that they cannot be compared exactly',
      expected: 'amounts and units as a household has them',
      remedy: 'Look for a number with digits too many: on the bill, in the readings, in the tariff.',
    }),
  },
  ...BILL_CONSISTENCY_FINDINGS,
  ...CHAIN_CONSISTENCY_FINDINGS,
} as const satisfies Readonly<Record<string, FindingKind>>;

/** A code of a finding about a printed bill. */
export type CheckFindingCode = keyof typeof CHECK_FINDINGS;

/** Make a finding about a printed bill. */
export const checkFinding: (
  code: CheckFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<CheckFindingCode>(CHECK_FINDINGS);
