import type { findingMaker } from '@unitbook/engine';
import { counted, of } from './finding-words.ts';

/** What can be said of the energy of a file by interval, day and period. */
export const ENERGY_FILE_FINDINGS = {
  'meter-file/no-columns': {
    severity: 'error',
    text: (v) => ({
      found: `intervals of ${of(v, 'lengths')} minutes`,
      expected: 'lengths that all divide 5, 15, 30 or 60 minutes',
      remedy: 'Count the energy by day or by billing period: that can be done with intervals of any length.',
    }),
  },
  'meter-file/summed-up': {
    severity: 'note',
    text: (v) => ({
      found: `intervals of ${of(v, 'lengths')} minutes`,
      expected: 'one length, of 5, 15, 30 or 60 minutes',
      remedy: `Nothing to do. The shorter ones are summed up to ${of(v, 'minutes')} minutes.`,
    }),
  },
  'meter-file/partial': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, `that fill no whole ${of(v, 'minutes')} minutes`),
      expected: `values for all of every ${of(v, 'minutes')} minutes by the local clock`,
      remedy: 'Ask for the missing data. What these hold is not counted.',
    }),
  },
  'meter-file/too-large': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'with a sum that is too large to be exact'),
      expected: 'at most 9,007,199,254,740,991 in the last decimal',
      remedy: 'Check the unit and the decimal mark of the values.',
    }),
  },
  'meter-file/incomplete': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, 'missing that other registers have')}`,
      expected: 'a value of every register for each interval',
      remedy:
        'Ask for the missing data. These intervals are left out of all registers. If the register counted ' +
        'nothing then, count the file without it.',
    }),
  },
  'meter-file/no-whole-interval': {
    severity: 'error',
    text: (v) => ({
      found: `no ${of(v, 'minutes')} minutes for which every register has values`,
      expected: 'intervals for which every register has a value',
      remedy: 'Check whether the registers belong to one time, or say which are to be counted.',
    }),
  },
  'meter-file/finer-than-watt-hour': {
    severity: 'note',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'count')} values of ${of(v, 'channel')} with parts of a watt-hour, in ${of(v, 'places')} decimals of a kWh`,
      expected: 'whole watt-hours',
      remedy: `Nothing to do. Parts are carried to the next interval; at the end ${of(v, 'left')} kWh are left over.`,
    }),
  },
  'meter-file/across-days': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'across the end of a local day'),
      expected: 'intervals that lie in one local day',
      remedy:
        'Each is counted on the day on which it begins; neither of its days is whole. Check the time zone.',
    }),
  },
  'meter-file/day-too-large': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'on days whose sum is too large to be exact'),
      expected: 'at most 9,007,199,254,740,991 in the last decimal on a day',
      remedy: 'Check the unit and the decimal mark of the values.',
    }),
  },
  'meter-file/straddles': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'register')}: the interval of ${of(v, 'minutes')} minutes at ${of(v, 'start')}, across the edge of the period at ${of(v, 'edge')}`,
      expected: `intervals that lie in the period from ${of(v, 'from')} to ${of(v, 'to')} or outside it`,
      remedy:
        'Check the time zone and the dates of the period: nothing says which part of the interval lies in ' +
        `which period. The ${of(v, 'channel')} of the period is not worked out.`,
    }),
  },
  'meter-file/period-incomplete': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: `${of(v, 'register')}: ${counted(v, 'missing')}`,
      expected: `values for all of the period from ${of(v, 'from')} to ${of(v, 'to')}, every ${of(v, 'minutes')} minutes`,
      remedy: `Ask for the missing data. What was counted then is not in the ${of(v, 'channel')} of the period.`,
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
