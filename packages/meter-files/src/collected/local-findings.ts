import type { findingMaker } from '@unitbook/engine';
import { of } from './finding-words.ts';

/** What can be said of the clock of a file, and of which of its streams are counted. */
export const LOCAL_FINDINGS = {
  'meter-file/zone-not-known': {
    severity: 'question',
    text: (v) => ({
      found: `times at ${of(v, 'clock')} all year, and no time zone`,
      expected: 'the time zone of the place, such as Europe/Amsterdam',
      remedy: 'Name the time zone. Until then days and months begin and end by the clock of the file.',
    }),
  },
  'meter-file/zone-not-needed': {
    severity: 'note',
    text: (v) => ({
      found: `the time zone ${of(v, 'zone')}, and a file in local time`,
      expected: 'a time zone where times have to be moved to it',
      remedy: 'Nothing to do. Times stand as they are; the zone tells on which days clocks change.',
    }),
  },
  'meter-file/day-left-out': {
    severity: 'note',
    text: (v) => ({
      found: `no ${of(v, 'day')} in ${of(v, 'zone')}: the calendar went from the day before to the day after`,
      expected: 'every day of the calendar',
      remedy: 'Nothing to do. No data is missing on that day.',
    }),
  },
  'meter-file/odd-clock-change': {
    severity: 'question',
    text: (v) => ({
      found: `clocks that change by ${of(v, 'minutes')} minutes on ${of(v, 'day')} in ${of(v, 'zone')}`,
      expected: 'a change of an hour, or of half an hour',
      remedy:
        'Check what is said of the intervals of that day: those that come twice or are left out by the clock ' +
        'can be taken for faults.',
    }),
  },
  'meter-file/net': {
    severity: 'error',
    text: (v) => ({
      found: `net energy, import less export: ${of(v, 'registers')}`,
      expected: 'import and export, each by itself',
      remedy:
        'Ask for the data of both registers: import and export cannot be worked out from their difference. ' +
        'Say what the register is to be counted as if it is one of the two.',
    }),
  },
  'meter-file/other-registers': {
    severity: 'note',
    text: (v) => ({
      found: `registers of neither import, export nor generation: ${of(v, 'registers')}`,
      expected: 'import, export or generation in kWh',
      remedy: 'Nothing to do. They are left out.',
    }),
  },
  'meter-file/several-points': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} metering points: ${of(v, 'points')}`,
      expected: 'the data of one connection',
      remedy: 'Say which registers are to be counted.',
    }),
  },
  'meter-file/several-meters': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'register')} counted by several meters: ${of(v, 'meters')}`,
      expected: 'one meter, or one after another',
      remedy: 'Nothing to do if the meter was changed. Where several count at one time, they are added up.',
    }),
  },
  'meter-file/rates-in-total': {
    severity: 'note',
    text: (v) => ({
      found: `registers of single rates beside the register of all: ${of(v, 'registers')}`,
      expected: 'either the total or its rates',
      remedy: 'Nothing to do. The total is counted; the rates are in it.',
    }),
  },
  'meter-file/no-intervals': {
    severity: 'error',
    text: () => ({
      found: 'no interval values of import, export or generation',
      expected: 'interval values of one of them at least',
      remedy: 'Choose a file with interval values, or say what its registers are to be counted as.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
