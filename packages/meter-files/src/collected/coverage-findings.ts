import type { findingMaker } from '@unitbook/engine';
import { of } from './finding-words.ts';

/** What can be said of the time that a file covers, and of its sums. */
export const COVERAGE_FINDINGS = {
  'meter-file/gap': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: no values for ${of(v, 'length')}, from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'values from the first to the last without a gap',
      remedy: 'Ask for the missing data. What was counted in that time is in none of the sums.',
    }),
  },
  'meter-file/short-gaps': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found:
        of(v, 'count') === '1'
          ? `${of(v, 'register')}: no values for ${of(v, 'length')}, from ${of(v, 'first')} on`
          : `${of(v, 'register')}: ${of(v, 'count')} gaps of less than a week, ${of(v, 'length')} in all, the first from ${of(v, 'first')} on, the last from ${of(v, 'last')} on`,
      expected: 'values from the first to the last without a gap',
      remedy:
        'Ask for the missing data. What was counted in that time is in none of the sums. An hour is missing ' +
        'where clocks went forward and the file is in local time.',
    }),
  },
  'meter-file/begins-late': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')} has its first value at ${of(v, 'own')}, ${of(v, 'length')} after another register`,
      expected: `values from ${of(v, 'other')} on, as the other has`,
      remedy: 'Nothing to do if the register did not count before. Else ask for the missing data.',
    }),
  },
  'meter-file/ends-early': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')} has values up to ${of(v, 'own')}, ${of(v, 'length')} less than another register`,
      expected: `values up to ${of(v, 'other')}, as the other has`,
      remedy: 'Nothing to do if the register counted no longer. Else ask for the missing data.',
    }),
  },
  'meter-file/no-values': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: no value at all`,
      expected: 'a register with values',
      remedy: 'Nothing to do if the register counts nothing. It is left out.',
    }),
  },
  'meter-file/values-missing': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${of(v, 'count')} ${of(v, 'count') === '1' ? 'interval' : 'intervals'} without a value`,
      expected: 'a value for each interval',
      remedy: 'Ask for the missing data. What was counted in that time is in none of the sums.',
    }),
  },
  'meter-file/counted-twice': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: ${of(v, 'length')} that the file has more than once`,
      expected: 'each interval once',
      remedy:
        'In this summary they count each time that they are there. Take the doubled part out of the file.',
    }),
  },
  'meter-file/register-went-back': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: ${of(v, 'last')} kWh at last, less than ${of(v, 'first')} kWh at first`,
      expected: 'a register that counts up',
      remedy:
        'Did the counter pass its highest number, or was the meter changed? What it counted is not worked out.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
