import type { FindingKind } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

const LEFT_OUT = 'This reading was left out, the others were kept.';

/** What can be said of one IntervalReading, by code. */
export const READING_FINDINGS = {
  'espi/not-a-whole-number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'text')}" as ${of(v, 'field')} of a reading`,
      expected: 'a whole number; a decimal point is the business of powerOfTenMultiplier',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/too-many-digits': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'text')}" as ${of(v, 'field')} of a reading`,
      expected: 'a whole number of at most 15 digits',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/text-too-long': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} characters as ${of(v, 'field')} of a reading`,
      expected: 'a whole number of at most 15 digits',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/given-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second ${of(v, 'field')} in one reading`,
      expected: `${of(v, 'field')} once`,
      remedy: `Keep the right one. ${LEFT_OUT}`,
    }),
  },
  'espi/no-value': {
    severity: 'error',
    text: () => ({
      found: 'a reading without a value',
      expected: 'a whole number in <value>',
      remedy: `Ask for the value. ${LEFT_OUT}`,
    }),
  },
  'espi/no-start': {
    severity: 'error',
    text: () => ({
      found: 'a reading of which it is not known when it begins',
      expected: 'a <start> in its timePeriod, in seconds since 1970-01-01 00:00 UTC',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/no-duration': {
    severity: 'error',
    text: () => ({
      found: 'a reading of which it is not known how long it lasts',
      expected: 'a <duration> in its timePeriod, or an intervalLength in its ReadingType',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/time-range': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} as ${of(v, 'field')} of a reading`,
      expected: of(v, 'expected'),
      remedy: `Correct the file; are these milliseconds? ${LEFT_OUT}`,
    }),
  },
  'espi/not-a-minute': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} as ${of(v, 'field')} of a reading, which is no whole minute`,
      expected: 'a number of seconds that 60 divides',
      remedy: `Ask for data in whole minutes. ${LEFT_OUT}`,
    }),
  },
  'espi/tou': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} as tou`,
      expected: 'the number of a rate, from 0 (none) to 32767',
      remedy: `Correct the file. ${LEFT_OUT}`,
    }),
  },
  'espi/negative': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} as a value of ${of(v, 'quantity')}`,
      expected: 'a value of 0 or more: the direction is told by flowDirection, not by a sign',
      remedy: `Is this net energy (flowDirection 4)? Ask for import and export apart. ${LEFT_OUT}`,
    }),
  },
  'espi/too-large': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} × 10^${of(v, 'multiplier')} Wh`,
      expected: 'less than 9007199254740992 kWh',
      remedy: `Is powerOfTenMultiplier right? ${LEFT_OUT}`,
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
