import type { findingMaker } from '@unitbook/engine';
import { of } from './file-findings.ts';

/** What can be said of the records 200, 300 and 400 of NEM12. */
export const NEM12_FINDINGS = {
  'nem/interval-length': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'minutes')}" as the length of an interval`,
      expected: '5, 15 or 30 minutes',
      remedy: 'Correct the length. The days below this record 200 were left out.',
    }),
  },
  'nem/suffix': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'suffix')}" as the suffix of the stream`,
      expected: 'a letter and a digit or letter: E1 for energy to the customer, B1 for energy to the grid',
      remedy: 'Ask what it counts. It is kept as another quantity, neither import nor export.',
    }),
  },
  'nem/suffix-unit': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'suffix')}, a stream of energy, in ${of(v, 'unit')}`,
      expected: 'kWh, Wh or MWh',
      remedy: 'Ask which of the two is right. It is kept as another quantity, neither import nor export.',
    }),
  },
  'nem/no-stream': {
    severity: 'error',
    text: () => ({
      found: 'a day of values, record 300, before any record 200',
      expected: 'a record 200 above it that says what is counted',
      remedy: 'Ask for the whole file. The day was left out.',
    }),
  },
  'nem/day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'day')}" as the day`,
      expected: 'a day of the calendar as yyyymmdd',
      remedy: 'Correct the day. Its values were left out.',
    }),
  },
  'nem/too-few-values': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'what')} for a day`,
      expected: `${of(v, 'count')} values of ${of(v, 'minutes')} minutes, then the quality`,
      remedy: 'Ask for the day again: which values are missing cannot be told. The day was left out.',
    }),
  },
  'nem/too-many-values': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'what')} for a day`,
      expected: `${of(v, 'count')} values of ${of(v, 'minutes')} minutes, then the quality`,
      remedy: 'Ask for the day again: which values are too many cannot be told. The day was left out.',
    }),
  },
  'nem/value': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: 'a number of digits with a decimal point at the most, such as 0.125',
      remedy: 'Correct the value. It is kept as missing.',
    }),
  },
  'nem/negative-value': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: '0 or more: energy the other way has a stream of its own',
      remedy: 'Ask for the streams of import and export apart. The value is kept as missing.',
    }),
  },
  'nem/value-of-no-quality': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'what')}, with the quality N`,
      expected: '0 or nothing where there is no value',
      remedy: 'Ask which of the two is right. The value is kept as missing.',
    }),
  },
  'nem/range': {
    severity: 'error',
    text: (v) => ({
      found: `intervals "${of(v, 'first')}" to "${of(v, 'last')}"`,
      expected: `the numbers of a first and a last interval, from 1 to ${of(v, 'count')}`,
      remedy: 'Correct the numbers. This record 400 was left out.',
    }),
  },
  'nem/range-of-nothing': {
    severity: 'question',
    text: (v) => ({
      found: `a record 400 ${of(v, 'after')}`,
      expected: 'records 400 below a record 300 of the quality V alone',
      remedy: 'Ask which quality the values have. This record 400 was left out.',
    }),
  },
  'nem/range-missing': {
    severity: 'question',
    text: (v) => ({
      found: `no record 400 that tells the quality of ${of(v, 'what')}`,
      expected: `each of the intervals 1 to ${of(v, 'count')} in one record 400, as the quality is V`,
      remedy: 'Ask for their quality. They are kept as estimated.',
    }),
  },
  'nem/range-twice': {
    severity: 'question',
    text: (v) => ({
      found: `several records 400 that tell the quality of ${of(v, 'what')}`,
      expected: `each of the intervals 1 to ${of(v, 'count')} in one record 400`,
      remedy: 'Ask which is right. The last one counts.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
