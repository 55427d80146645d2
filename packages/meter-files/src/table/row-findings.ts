import type { findingMaker } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';
const column = (values: Values): string => `the column "${of(values, 'name')}"`;

const SAVE_AGAIN = 'Save the table again with plain values, or type the number in place of this.';

/** Everything that can be said of the rows of a table, by code. */
export const ROW_FINDINGS = {
  'table/cell-count': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'count') === '1' ? 'a row of 1 cell' : `a row of ${of(v, 'count')} cells`,
      expected: `${of(v, 'most')}, one for each column`,
      remedy:
        'The row was left out, as it cannot be told which cell is which. Correct it; a number with a mark ' +
        'that also separates cells has to stand in quotation marks.',
    }),
  },
  'table/bad-date': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}`,
      expected: of(v, 'expected'),
      remedy: 'Correct the cell. If all rows are written like this, set up the columns of this table anew.',
    }),
  },
  'table/bad-time': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}`,
      expected: 'a time such as 00:15, 0:15:00, 0015, 12:15 AM or 24:00',
      remedy: 'Correct the cell. If all rows are written like this, set up the columns of this table anew.',
    }),
  },
  'table/time-missing': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" without a time`,
      expected: `a date with the time of an interval of ${of(v, 'minutes')} minutes`,
      remedy: 'Write the time as well: 00:00 for midnight. Some sheets leave it out at midnight.',
    }),
  },
  'table/part-of-minute': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which is no whole minute`,
      expected: 'intervals that begin and end on whole minutes',
      remedy: 'Correct the seconds, or export the table with times in whole minutes.',
    }),
  },
  'table/offset': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}"`,
      expected: of(v, 'expected'),
      remedy: 'Correct the cell, or set up anew by which clock this table gives the time.',
    }),
  },
  'table/time-does-not-exist': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, which the clocks of ${of(v, 'zone')} leave out on that day`,
      expected: 'a time that there is',
      remedy:
        'Was the table written by a clock without daylight saving? Then set up its clock anew. Values of 0 ' +
        'in the hour that is left out can be deleted.',
    }),
  },
  'table/time-once-more': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} once more`,
      expected: `at most twice, first by daylight saving time of ${of(v, 'zone')}, then by standard time`,
      remedy: 'Delete the row that is too many, or bring the rows of that hour into the order of time.',
    }),
  },
  'table/bad-number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}`,
      expected: 'a number, or an empty cell where there is none',
      remedy: 'Correct the cell. It counts as missing until then.',
    }),
  },
  'table/number-marks': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}`,
      expected: `${of(v, 'decimal')} before the decimals and ${of(v, 'grouping')}, as set up for this table`,
      remedy: 'Correct the cell, or set up the marks anew. It counts as missing until then.',
    }),
  },
  'table/too-many-digits': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}`,
      expected: 'at most 15 digits, and 15 decimals of a kWh, which is finer than any meter counts',
      remedy: 'Such digits come from a calculation. Export the values as the meter gave them.',
    }),
  },
  'table/negative': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}, below 0`,
      expected: `${of(v, 'quantity')} of 0 or more`,
      remedy: 'If the column is import less export, set it up as "net". The cell counts as missing.',
    }),
  },
  'table/spreadsheet-error': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}, which a spreadsheet shows where it has no value`,
      expected: 'a number, or an empty cell where there is none',
      remedy: `${SAVE_AGAIN} The cell counts as missing.`,
    }),
  },
  'table/exponent': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}: a number cut short, with a power of ten`,
      expected: 'all its digits',
      remedy:
        'Give the column of the sheet a plain number format and save again. The cell counts as missing.',
    }),
  },
  'table/formula': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in ${column(v)}, which looks like a spreadsheet formula`,
      expected: 'a number',
      remedy: `${SAVE_AGAIN} The cell counts as missing.`,
    }),
  },
  'table/quality-word': {
    severity: 'question',
    text: (v) => ({
      found: of(v, 'value') === '' ? `an empty cell in ${column(v)}` : `"${of(v, 'value')}" in ${column(v)}`,
      expected: `one of the words set up for this column: ${of(v, 'words')}`,
      remedy: 'What does it mean? Add it to the column. The value was kept as estimated.',
    }),
  },
  'table/no-value': {
    severity: 'note',
    text: () => ({
      found: 'a row with a time and no value',
      expected: 'at least one number',
      remedy: 'Nothing to do if the meter gave none: it counts as missing.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
