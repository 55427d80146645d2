import type { findingMaker } from '@unitbook/engine';
import { of } from './file-findings.ts';

/** What can be said of the records 250 of NEM13. */
export const NEM13_FINDINGS = {
  'nem/header-time': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'time')}" as the time at which the file was made`,
      expected: 'yyyymmddhhmm',
      remedy: 'Correct the time. Without it, reads that are only forecast cannot be told from others.',
    }),
  },
  'nem/too-few-cells': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} cells`,
      expected: `at least ${of(v, 'least')}, up to the unit`,
      remedy: 'Was the line cut off? Ask for the file again. The line was left out.',
    }),
  },
  'nem/direction': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'direction')}" as the direction`,
      expected: 'E for energy to the customer, or I for energy to the grid',
      remedy: 'Correct the direction. The reads are kept as another quantity, neither import nor export.',
    }),
  },
  'nem/read': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'read')}" as the ${of(v, 'which')} read`,
      expected: 'what the register showed: digits with a decimal point at the most',
      remedy: 'Correct the read. It was left out.',
    }),
  },
  'nem/no-read': {
    severity: 'note',
    text: (v) => ({
      found: `no ${of(v, 'which')} read, with the quality N`,
      expected: 'a read, where there was one',
      remedy: 'Nothing to do: nothing was read.',
    }),
  },
  'nem/read-time': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'time')}" as the time of the ${of(v, 'which')} read`,
      expected: 'yyyymmddhhmmss',
      remedy: 'Correct the time. The read was left out.',
    }),
  },
  'nem/reads-out-of-order': {
    severity: 'error',
    text: (v) => ({
      found: `a current read of ${of(v, 'current')}, before the previous of ${of(v, 'previous')}`,
      expected: 'a current read after the previous',
      remedy: 'Correct the times. Both reads were left out.',
    }),
  },
  'nem/rolled-over': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'current')} after ${of(v, 'previous')}: the counter passed ${of(v, 'full')}`,
      expected: `${of(v, 'difference')}, which is the printed quantity`,
      remedy: 'Nothing to do.',
    }),
  },
  'nem/current-below-previous': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'current')} after ${of(v, 'previous')}, and no quantity beside them`,
      expected: 'a register that counts up',
      remedy: `Did the counter pass ${of(v, 'full')}? Then nothing is wrong. Else ask which read is right.`,
    }),
  },
  'nem/quantity-differs': {
    severity: 'question',
    text: (v) => ({
      found: `reads of ${of(v, 'previous')} and ${of(v, 'current')}, ${of(v, 'difference')} apart${of(v, 'full') === '' ? '' : ` if the counter passed ${of(v, 'full')}`}`,
      expected: `${of(v, 'quantity')} apart, the quantity printed beside them`,
      remedy:
        'Ask which is right: a read, the quantity, or a factor by which the meter multiplies. ' +
        'The reads are used, the printed quantity is not.',
    }),
  },
  'nem/quantity': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'quantity')}" as the quantity`,
      expected: 'a number of 0 or more',
      remedy: 'Correct it. The reads are used; they could not be compared with it.',
    }),
  },
  'nem/forward-estimate': {
    severity: 'question',
    text: (v) => ({
      found: `an estimate for ${of(v, 'time')}, made on ${of(v, 'made')}`,
      expected: 'a read of the past',
      remedy: 'It is a forecast: wait for the read itself before you settle on it.',
    }),
  },
  'nem/read-after-file': {
    severity: 'question',
    text: (v) => ({
      found: `a read of ${of(v, 'time')} that is no estimate, in a file made on ${of(v, 'made')}`,
      expected: 'a read from before the file was made',
      remedy: 'Ask which time is right. The read is kept.',
    }),
  },
  'nem/register-gap': {
    severity: 'question',
    text: (v) => ({
      found: `a previous read of ${of(v, 'found')}`,
      expected: `${of(v, 'expected')}, the current read of this register above`,
      remedy: 'Is a record missing between the two? Ask for it: energy between them is in neither.',
    }),
  },
  'nem/register-overlap': {
    severity: 'question',
    text: (v) => ({
      found: `a previous read of ${of(v, 'found')}`,
      expected: `${of(v, 'expected')}, the current read of this register above`,
      remedy: 'Does a record stand here twice, or was one corrected? Energy between the two is in both.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
