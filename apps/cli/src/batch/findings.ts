import { findingMaker, type Finding, type FindingKind, type FindingPlace } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** What can be said of a table of bills, and of its check, by code. */
export const BATCH_FINDINGS = {
  'batch/column-missing': {
    severity: 'error',
    text: (v) => ({
      found: `no column "${of(v, 'name')}" among ${of(v, 'header')}`,
      expected: 'the columns account, from and to, what is known, and what is printed',
      remedy: `Add a column "${of(v, 'name')}" to the table.`,
    }),
  },
  'batch/column-twice': {
    severity: 'error',
    text: (v) => ({
      found: `two columns "${of(v, 'name')}"`,
      expected: 'each column once',
      remedy: 'Take one out, or name it "note." and anything, which is passed by.',
    }),
  },
  'batch/column-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `a column "${of(v, 'name')}"`,
      expected: of(v, 'expected'),
      remedy: of(v, 'remedy'),
    }),
  },
  'batch/nothing-printed': {
    severity: 'error',
    text: () => ({
      found: 'no column of anything that a bill prints as its result',
      expected:
        'at least one of printed.payable, printed.sum, printed.units.billed, printed.line. and a charge',
      remedy: 'Add what is to be checked.',
    }),
  },
  'batch/no-header': {
    severity: 'error',
    text: () => ({
      found: 'a table without a first row',
      expected: 'a first row with the names of the columns',
      remedy: 'Put the names of the columns on top.',
    }),
  },
  'batch/cells': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'found')} cells`,
      expected: `${of(v, 'expected')}, as many as the header has`,
      remedy: 'Put a text that holds a comma, a quote or a line break between quotes.',
    }),
  },
  'batch/number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" under ${of(v, 'column')}`,
      expected: 'a plain decimal number such as 546 or -75.00, or an empty cell',
      remedy: 'Write the number with a point, without groups, units or signs of currency.',
    }),
  },
  'batch/number-too-fine': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} under ${of(v, 'column')}`,
      expected: `at most ${of(v, 'places')} decimals and 12 digits`,
      remedy: 'Write the number as it is read or printed.',
    }),
  },
  'batch/day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" under ${of(v, 'column')}`,
      expected: 'a day of the calendar as yyyy-mm-dd',
      remedy: 'Write the day of the reading.',
    }),
  },
  'batch/period': {
    severity: 'error',
    text: (v) => ({
      found: `a period from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'a reading now that is later than the reading before',
      remedy: 'Write both days as they are on the bill.',
    }),
  },
  'batch/overlap': {
    severity: 'error',
    text: (v) => ({
      found: `a period of account ${of(v, 'account')} from ${of(v, 'from')}, before the one above it ended`,
      expected: 'the bills of an account once each, in order of time',
      remedy: 'Sort the rows by account and day, and take out a bill that stands twice.',
    }),
  },
  'batch/quote': {
    severity: 'error',
    text: (v) => ({
      found: `a quote ${of(v, 'where')} that is not closed, or does not stand around the whole of the cell`,
      expected: 'quotes around the whole of a cell, and two for each one inside',
      remedy: 'Close the quote, or double it.',
    }),
  },
  'batch/account': {
    severity: 'error',
    text: () => ({
      found: 'a row without an account',
      expected: 'the number of the account under "account"',
      remedy: 'Fill the cell.',
    }),
  },
  'batch/not-text': {
    severity: 'error',
    text: () => ({
      found: 'bytes that are no text in UTF-8',
      expected: 'text in UTF-8, neither packed nor coded otherwise',
      remedy: 'Save the table as UTF-8, unpacked.',
    }),
  },
  'batch/json': {
    severity: 'error',
    text: (v) => ({
      found: `a line that cannot be used: ${of(v, 'reason')}`,
      expected: 'one JSON object a line, with the names of the columns as its keys',
      remedy: 'Correct the line.',
    }),
  },
  'batch/file': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'reason'),
      expected: of(v, 'expected'),
      remedy: of(v, 'remedy'),
    }),
  },
  'batch/cannot-resume': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'reason'),
      expected: 'the table, the tariff and the files with which the check was begun',
      remedy: 'Begin anew, without --resume.',
    }),
  },
  'batch/parts': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'problem'),
      expected: 'the findings of every part of one check, each done to its end, once, and in their order',
      remedy: 'Name every part once and in order; check one again that is missing or was broken off.',
    }),
  },
  'batch/options': {
    severity: 'error',
    text: (v) => ({ found: of(v, 'found'), expected: of(v, 'expected'), remedy: of(v, 'remedy') }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;

/** A code of a finding about a table of bills. */
export type BatchFindingCode = keyof typeof BATCH_FINDINGS;

/** Make a finding about a table of bills. */
export const batchFinding: (code: BatchFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<BatchFindingCode>(BATCH_FINDINGS);
