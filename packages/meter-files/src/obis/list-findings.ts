import type { FindingKind } from '@unitbook/engine';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** What can be said of a list of registers as a person writes it. */
export const LIST_FINDINGS = {
  'obis/bare-code': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in place of a code`,
      expected: 'a code with its points, such as 1.8.0',
      remedy: `Did you mean ${of(v, 'offer')}? Write it with points; the line was not read.`,
    }),
  },
  'obis/comma-unclear': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" for ${of(v, 'register')}, where the comma can group thousands or mark decimals`,
      expected: 'a number that can be read in one way',
      remedy: `Write ${of(v, 'grouped')} or ${of(v, 'decimal')}.`,
    }),
  },
  'obis/word': {
    severity: 'note',
    text: (v) => ({
      found: `"${of(v, 'word')}", taken for ${of(v, 'taken')}`,
      expected: 'a code such as 1.8.0 (import) or 2.8.0 (export)',
      remedy: 'Nothing to do if the meter means it so; else write the code in place of the word.',
    }),
  },
  'obis/unit-left-out': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'register')}, without a unit`,
      expected: 'kWh, Wh or MWh; values without are taken for kWh',
      remedy: 'Nothing to do if the display shows kWh.',
    }),
  },
  'obis/no-day': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'registers')} without the day of the reading`,
      expected: 'a line with the day above the registers, such as 2025-05-01',
      remedy: 'On which day was the meter read? Write it above; nothing of these was used.',
    }),
  },
  'obis/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `the date "${of(v, 'value')}"`,
      expected: `a day of the calendar, such as ${of(v, 'form')}`,
      remedy: 'Correct the date.',
    }),
  },
  'obis/no-such-hour': {
    severity: 'error',
    text: (v) => ({
      found: `the time "${of(v, 'value')}"`,
      expected: 'hours, minutes and seconds of a day, such as 18:30 or 183000',
      remedy: 'Correct the time, or take it out: the day is enough.',
    }),
  },
  'obis/day-or-month': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')}, read as ${of(v, 'read')}`,
      expected: 'a date that can be read in one way',
      remedy: `Keep it, or write ${of(v, 'other')} if that is the day.`,
    }),
  },
  'obis/two-days': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'day')} as the day, and ${of(v, 'clock')} on the clock of the meter`,
      expected: 'the same day',
      remedy: `${of(v, 'day')} was used. Is the clock of the meter wrong? Else correct the day.`,
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
