import type { findingMaker } from '@unitbook/engine';
import { of } from './finding-words.ts';

/** What can be said of register readings that become rows. */
export const READING_FINDINGS = {
  'meter-file/no-registers': {
    severity: 'error',
    text: () => ({
      found: 'no reading of a register of import, export or generation',
      expected: 'readings of one of them at least',
      remedy: 'Choose a file with register readings, or say what its registers are to be counted as.',
    }),
  },
  'meter-file/several-registers': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} registers of ${of(v, 'what')}: ${of(v, 'registers')}`,
      expected: 'one register of each quantity and rate',
      remedy: 'Say which is to be used. If the meter was changed, begin a new account with the new meter.',
    }),
  },
  'meter-file/reading-other-time': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}, read at ${of(v, 'moment')}`,
      expected: `a reading at ${of(v, 'row')}, as of the other registers`,
      remedy: 'It is used for that day. Check that it can stand beside the others.',
    }),
  },
  'meter-file/no-reading-on': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: no reading on ${of(v, 'day')}`,
      expected: 'a reading on that day',
      remedy: `The nearest day with a reading is ${of(v, 'nearest')}. Choose that day if the bill goes by it.`,
    }),
  },
  'meter-file/days-without': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found:
        of(v, 'count') === '1'
          ? `${of(v, 'register')}: no reading on ${of(v, 'first')}, when others were read`
          : `${of(v, 'register')}: no reading on ${of(v, 'count')} days when others were read, the first ${of(v, 'first')}, the last ${of(v, 'last')}`,
      expected: 'a reading of every register on each day',
      remedy: 'Ask for the missing readings, or use the days that have all.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
