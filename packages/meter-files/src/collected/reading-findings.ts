import type { findingMaker } from '@unitbook/engine';
import { of } from './finding-words.ts';

/** What can be said of register readings that become rows. */
export const READING_FINDINGS = {
  'meter-file/register-fell': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: ${of(v, 'after')} on ${of(v, 'to')}, below ${of(v, 'before')} on ${of(v, 'from')}`,
      expected: 'a register that counts up',
      remedy:
        'It passed its full scale, began anew or belongs to another meter from then on: the file does not say ' +
        'which. What was counted between the two is in no sum. Ask for it, or add both readings of the change.',
    }),
  },
  'meter-file/register-stuck': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')}: the same number for ${of(v, 'time')}, from ${of(v, 'from')} to ${of(v, 'to')}, while others went on`,
      expected: 'a register that moves now and then',
      remedy:
        'Was the plant off, or nothing given? Then nothing is wrong. Else the meter or its log stood still: ' +
        'compare it with its display.',
    }),
  },
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
      remedy: 'Say which is to be used. If the meter was changed, add its last and its first reading.',
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
