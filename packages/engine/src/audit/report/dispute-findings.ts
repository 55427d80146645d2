import { findingMaker, type Finding, type FindingKind, type FindingPlace } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** Everything that can be said of rules for disputes, and of refunds by them, by code. */
export const DISPUTE_FINDINGS = {
  'dispute/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which is no day of the calendar`,
      expected: 'a day as yyyy-mm-dd',
      remedy: 'Write the day as the source has it.',
    }),
  },
  'dispute/ends-before-it-begins': {
    severity: 'error',
    text: (v) => ({
      found: `in force from ${of(v, 'from')} through ${of(v, 'through')}`,
      expected: 'a last day that is not before the first',
      remedy: 'Correct one of the two days.',
    }),
  },
  'dispute/not-in-order': {
    severity: 'error',
    text: (v) => ({
      found: `one in force from ${of(v, 'from')} below one in force through ${of(v, 'before')}`,
      expected: 'each to begin after the last day of the one above it',
      remedy: 'Put them in order of time, and end one before the next begins.',
    }),
  },
  'dispute/unknown-source': {
    severity: 'error',
    text: (v) => ({
      found: `the clause "${of(v, 'clause')}"`,
      expected: `one that begins with the key of a source: ${of(v, 'sources')}`,
      remedy: 'Add the source with title, publisher and year, or begin the clause with its key.',
    }),
  },
  'dispute/number-out-of-range': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'what')}`,
      expected: of(v, 'range'),
      remedy: 'Check the unit and the point.',
    }),
  },
  'dispute/not-in-force': {
    severity: 'question',
    text: (v) => ({
      found: `no rules for disputes on ${of(v, 'day')}`,
      expected: `a day on which they are known: ${of(v, 'covered')}`,
      remedy: 'Ask which rules hold on that day, and add them with their source.',
    }),
  },
  'dispute/no-rate': {
    severity: 'question',
    text: (v) => ({
      found: `no rate of interest on ${of(v, 'day')}`,
      expected: `a rate for every day from ${of(v, 'from')} to ${of(v, 'until')}`,
      remedy: 'Ask for the rate of that day, and add it with its source.',
    }),
  },
  'dispute/interest-too-fine': {
    severity: 'error',
    text: (v) => ({
      found: `interest on ${of(v, 'amount')}`,
      expected: 'an amount whose interest can be worked out exactly: with fewer decimals',
      remedy: 'Type the amounts as they are printed, with the decimals of coins.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;

/** A code of a finding about disputes. */
export type DisputeFindingCode = keyof typeof DISPUTE_FINDINGS;

/** Make a finding about rules for disputes. */
export const disputeFinding: (
  code: DisputeFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<DisputeFindingCode>(DISPUTE_FINDINGS);
