import {
  disputeVersionOn,
  readDispute,
  refundOf,
  type DisputeDocument,
  type DisputeVersion,
  type SimpleInterest,
} from '@unitbook/engine';
import { quotientOf, type Finding } from '@unitbook/engine';
import example from '../../tariffs-examples/disputes/tarumira.json?raw';
import { dayOf } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

const EXAMPLE = JSON.parse(example) as DisputeDocument;
const [VERSION] = EXAMPLE.versions;
const rule = VERSION?.interest;
if (VERSION === undefined || rule?.kind !== 'simple') throw new Error('the example has no rule for interest');
const INTEREST: SimpleInterest = rule;

/** The example on one line, with something of its version replaced. */
const document = (more: Partial<DisputeVersion>, extra: readonly DisputeVersion[] = []) => ({
  ...EXAMPLE,
  versions: [{ ...VERSION, ...more }, ...extra],
});
const read =
  (more: Partial<DisputeVersion>, extra: readonly DisputeVersion[] = []) =>
  (): readonly Finding[] =>
    readDispute(JSON.stringify(document(more, extra), null, 2)).findings.map(({ position, ...finding }) =>
      // Lines of the example move with its words: the path is what a case is about.
      position === undefined ? { ...finding, path: ['no position'] } : finding,
    );
const refund =
  (amount: string, rates: SimpleInterest['rates'], until = '2025-08-17') =>
  (): readonly Finding[] => {
    const payments = [{ on: dayOf('2025-06-18'), amount: quotientOf(amount) }];
    const input = { printed: quotientOf(amount), right: quotientOf('0'), payments };
    return refundOf(input, { ...INTEREST, rates }, dayOf(until)).findings;
  };

/** Every finding about rules for disputes, and about refunds by them. */
export const DISPUTE_CASES: readonly MessageCase[] = [
  {
    code: 'dispute/no-such-day',
    when: 'a version from 30 February',
    make: read({ from: '2020-02-30' }),
    at: 'versions.0.from',
    found: '"2020-02-30", which is no day of the calendar',
    expected: 'a day as yyyy-mm-dd',
    remedy: 'Write the day as the source has it.',
  },
  {
    code: 'dispute/no-such-day',
    when: 'a rate through 31 April',
    make: read({
      interest: {
        ...INTEREST,
        rates: [{ from: '2020-04-01', through: '2021-04-31', percent: '9', clause: 'SC-2020' }],
      },
    }),
    at: 'versions.0.interest.rates.0.through',
    found: '"2021-04-31", which is no day of the calendar',
    expected: 'a day as yyyy-mm-dd',
    remedy: 'Write the day as the source has it.',
  },
  {
    code: 'dispute/ends-before-it-begins',
    when: 'a version that ends the day before',
    make: read({ through: '2020-03-31' }),
    at: 'versions.0',
    found: 'in force from 2020-04-01 through 2020-03-31',
    expected: 'a last day that is not before the first',
    remedy: 'Correct one of the two days.',
  },
  {
    code: 'dispute/not-in-order',
    when: 'two versions of the same day',
    make: read({ through: '2024-03-31' }, [{ ...VERSION, from: '2024-03-31' }]),
    at: 'versions.1.from',
    found: 'one in force from 2024-03-31 below one in force through 2024-03-31',
    expected: 'each to begin after the last day of the one above it',
    remedy: 'Put them in order of time, and end one before the next begins.',
  },
  {
    code: 'dispute/unknown-source',
    when: 'a clause of a code that is not listed',
    make: read({ clause: 'SC-2020a cl. 8' }),
    at: 'versions.0.clause',
    found: 'the clause "SC-2020a cl. 8"',
    expected: 'one that begins with the key of a source: SC-2020',
    remedy: 'Add the source with title, publisher and year, or begin the clause with its key.',
  },
  {
    code: 'dispute/number-out-of-range',
    when: 'a rate of 100.01 percent',
    make: read({
      interest: { ...INTEREST, rates: [{ from: '2020-04-01', percent: '100.01', clause: 'SC-2020' }] },
    }),
    at: 'versions.0.interest.rates.0.percent',
    found: '100.01 for percent a year',
    expected: 'a number with up to 4 decimals, from 0 up to 100',
    remedy: 'Check the unit and the point.',
  },
  {
    code: 'dispute/number-out-of-range',
    when: 'half a month',
    make: read({ claim: { months: '0.5', from: 'paid', clause: 'SC-2020' } }),
    at: 'versions.0.claim.months',
    found: '0.5 for months',
    expected: 'a whole number, from 1 up to 600',
    remedy: 'Check the unit and the point.',
  },
  {
    code: 'dispute/number-out-of-range',
    when: 'a step of 0',
    make: read({ interest: { ...INTEREST, rounding: { step: '0', mode: 'half-up' } } }),
    at: 'versions.0.interest.rounding.step',
    found: '0 for a step of rounding',
    expected: 'a number with up to 6 decimals, above 0 and up to 1000',
    remedy: 'Check the unit and the point.',
  },
  {
    code: 'dispute/not-in-force',
    when: 'a day before the rules',
    severity: 'question',
    make: () => disputeVersionOn(document({ through: '2024-03-31' }), dayOf('2020-03-31')).findings,
    at: 'versions',
    found: 'no rules for disputes on 2020-03-31',
    expected: 'a day on which they are known: 2020-04-01 through 2024-03-31',
    remedy: 'Ask which rules hold on that day, and add them with their source.',
  },
  {
    code: 'dispute/no-rate',
    when: 'a payment before the first rate',
    severity: 'question',
    make: refund('546', [{ from: '2025-07-01', percent: '9', clause: 'SC-2020' }]),
    at: '',
    found: 'no rate of interest on 2025-06-18',
    expected: 'a rate for every day from 2025-06-18 to 2025-08-17',
    remedy: 'Ask for the rate of that day, and add it with its source.',
  },
  {
    code: 'dispute/interest-too-fine',
    when: 'eight decimals at a rate of four for 61 days',
    make: refund('0.00000001', [{ from: '2020-04-01', percent: '9.0001', clause: 'SC-2020' }], '2025-08-18'),
    at: '',
    found: 'interest on 0.00000001',
    expected: 'an amount whose interest can be worked out exactly: with fewer decimals',
    remedy: 'Type the amounts as they are printed, with the decimals of coins.',
  },
];
