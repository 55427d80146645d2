import type { findingMaker } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

const SET_UP = 'Say which column is which when you set up the table.';

/** Everything that can be said of a table as a file, by code. */
export const TABLE_FILE_FINDINGS = {
  'table/empty': {
    severity: 'error',
    text: () => ({
      found: 'a file without a line of text',
      expected: 'a line with the names of the columns, then one line for each time',
      remedy: 'Choose the file that holds the values.',
    }),
  },
  'table/other-header': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'difference'),
      expected: `the columns ${of(v, 'names')}`,
      remedy: 'The columns were set up for another table: set up this one too. Nothing of it was read.',
    }),
  },
  'table/lines-above': {
    severity: 'note',
    text: (v) => ({
      found:
        of(v, 'count') === '1' ? '1 line above the columns' : `${of(v, 'count')} lines above the columns`,
      expected: 'the names of the columns in the first line',
      remedy: 'Nothing to do: they were left out.',
    }),
  },
  'table/header-again': {
    severity: 'note',
    text: () => ({
      found: 'the names of the columns once more',
      expected: 'values',
      remedy: 'Nothing to do: the line was left out. Two tables one below the other are read as one.',
    }),
  },
  'table/quote-not-closed': {
    severity: 'error',
    text: () => ({
      found: 'a cell that begins with a quotation mark and does not end with one',
      expected: 'quotation marks in pairs around the whole cell, of at most 10000 characters',
      remedy:
        'Close or take out the quotation mark. The row was left out; reading went on with the next line.',
    }),
  },
  'table/line-too-long': {
    severity: 'error',
    text: (v) => ({
      found: `a line of more than ${of(v, 'most')} characters`,
      expected: 'one line for each time',
      remedy: 'Check that it is the right file. The line was left out.',
    }),
  },
  'table/no-header': {
    severity: 'question',
    text: () => ({
      found: 'values in the first line',
      expected: 'the names of the columns',
      remedy: `${SET_UP} Every table of as many columns without names will be taken for one like it.`,
    }),
  },
  'table/header-too-far-down': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} lines above the first values`,
      expected: `at most ${of(v, 'most')} above the names of the columns`,
      remedy: 'Delete the lines above the names of the columns.',
    }),
  },
  'table/no-time-column': {
    severity: 'question',
    text: () => ({
      found: 'no column that holds dates',
      expected: 'one with the date and the time, or one with each',
      remedy: `${SET_UP} A date can look like 2025-05-01, 1/5/2025, 1.5.2025, 1 May 2025 or 20250501.`,
    }),
  },
  'table/unix-time': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'value')}", which may be a count of ${of(v, 'unit')} since 1970`,
      expected: 'dates and times as people write them',
      remedy: 'Is the column a time? Then export the table with dates. Such counts are not read.',
    }),
  },
  'table/no-value-column': {
    severity: 'question',
    text: () => ({
      found: 'no column whose name says what it counts',
      expected: 'import, export or generation',
      remedy: SET_UP,
    }),
  },
  'table/mixed-marks': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'one')}" and "${of(v, 'other')}", which no one way of writing numbers explains`,
      expected: 'the same decimal mark in every number',
      remedy: 'Which mark stands before the decimals? Cells with the other will be told one by one.',
    }),
  },
  'table/mixed-date-orders': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'one')}" and "${of(v, 'other')}", which no one order of day and month explains`,
      expected: 'the same order in every date',
      remedy: 'Which order is it? Dates in the other will be told one by one.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** Everything that can be wrong with the meaning of a layout document, by code. */
export const LAYOUT_FINDINGS = {
  'table-layout/column-count': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} columns for ${of(v, 'names')} names in the header`,
      expected: 'one for each name',
      remedy: 'Add or take out columns; one that is not to be read is {"is":"nothing"}.',
    }),
  },
  'table-layout/time-columns': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'columns') === '' ? 'no column of dates' : `the columns ${of(v, 'columns')}`,
      expected: 'one date-time, or one date and at most one time',
      remedy: 'Correct which columns give the time.',
    }),
  },
  'table-layout/no-value-column': {
    severity: 'error',
    text: () => ({
      found: 'no column of values',
      expected: 'at least one that is import, export, generation, net or other',
      remedy: 'Say which columns hold the values.',
    }),
  },
  'table-layout/column-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second column that is "${of(v, 'is')}"`,
      expected: 'at most one',
      remedy: 'Keep one of the two; the other is {"is":"nothing"}.',
    }),
  },
  'table-layout/same-marks': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'mark')}" both before the decimals and between groups of digits`,
      expected: 'two different marks',
      remedy: 'Correct one of the two; "" stands for no grouping.',
    }),
  },
  'table-layout/interval-needs': {
    severity: 'error',
    text: (v) => ({
      found: `intervals without "${of(v, 'key')}"`,
      expected: of(v, 'expected'),
      remedy: `Add "${of(v, 'key')}".`,
    }),
  },
  'table-layout/time-needed': {
    severity: 'error',
    text: (v) => ({
      found: `intervals of ${of(v, 'minutes')} minutes with dates alone`,
      expected: 'a column with the time as well, or intervals of 1440 minutes',
      remedy: 'Say which column gives the time.',
    }),
  },
  'table-layout/zone': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'zone')}", which is no time zone known here`,
      expected: 'a name of the IANA list, such as "Europe/Amsterdam"',
      remedy: 'Correct the name.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
