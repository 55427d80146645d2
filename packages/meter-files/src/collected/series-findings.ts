import type { findingMaker } from '@unitbook/engine';
import { counted, of } from './finding-words.ts';

/** What can be said of intervals and readings as a file holds them. */
export const SERIES_FINDINGS = {
  'meter-file/more-errors': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'count')} more errors of the kind ${of(v, 'code')}, on ${of(v, 'lines')}`,
      expected: 'a file with few errors of one kind',
      remedy: 'Correct those that are told in full first: the others are likely to have the same cause.',
    }),
  },
  'meter-file/more-questions': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'count')} more questions of the kind ${of(v, 'code')}, on ${of(v, 'lines')}`,
      expected: 'a file with few questions of one kind',
      remedy: 'Answer those that are told in full first: the others are likely to have the same cause.',
    }),
  },
  'meter-file/more-notes': {
    severity: 'note',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'count')} more notes of the kind ${of(v, 'code')}, on ${of(v, 'lines')}`,
      expected: 'a file with few notes of one kind',
      remedy: 'Nothing to do.',
    }),
  },
  'meter-file/interval-too-fine': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, `too large to be counted in ${of(v, 'places')} decimals of a kWh`)}; on ${of(v, 'lines')}`,
      expected:
        'values of at most 9,007,199,254,740,991 in the last decimal that any value of the register has',
      remedy:
        'Check the unit and the decimal mark of the values with the most decimals. These are not counted.',
    }),
  },
  'meter-file/interval-conflict': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, 'more than once, with different values of the same quality')}; the first: ${of(v, 'both')}`,
      expected: 'one value for each interval, or a better one in place of another',
      remedy:
        'Take out those that are wrong; until then none of them is counted. If the clocks went back in that ' +
        'hour, read the file with its time zone.',
    }),
  },
  'meter-file/interval-replaced': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, 'more than once, with values of different quality')}; the first: ${of(v, 'both')}`,
      expected: 'one value for each interval',
      remedy: 'The value of the better quality is counted. Take it out if it is the wrong one.',
    }),
  },
  'meter-file/interval-repeated': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, 'more than once, with the same value')}; on ${of(v, 'lines')}`,
      expected: 'each interval once',
      remedy:
        'Each is counted once. Nothing to do if parts of the file overlap. If the clocks went back in that ' +
        'hour, read the file with its time zone.',
    }),
  },
  'meter-file/interval-overlap': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, `of ${of(v, 'minutes')} minutes over others of the same register`)}; on ${of(v, 'lines')}`,
      expected: 'intervals that begin where the one before ends, or later',
      remedy:
        'Take out one of the two. Of intervals over each other the shortest are counted, of the same length ' +
        'the earlier; these are not.',
    }),
  },
  'meter-file/reading-conflict': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'register')} at ${of(v, 'moment')}: ${of(v, 'one')}, and ${of(v, 'other')}`,
      expected: 'one reading of a register at one time, or a better one in place of another',
      remedy: 'Take out the one that is wrong; until then neither is used.',
    }),
  },
  'meter-file/reading-replaced': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'register')} at ${of(v, 'moment')}: ${of(v, 'one')}, and ${of(v, 'other')}`,
      expected: 'one reading of a register at one time',
      remedy: 'The reading of the better quality is used. Take it out if it is the wrong one.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
