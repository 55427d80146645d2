import { findingMaker, type Finding, type FindingPlace } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

/** Everything that can be said of a register list as a file, by code. */
export const FILE_FINDINGS = {
  'readings-file/empty': {
    severity: 'error',
    text: () => ({
      found: 'an empty file',
      expected: 'a line with the names of the columns, then one line for each reading',
      remedy: 'Choose the file that holds the readings, or begin one with the line date,import,export.',
    }),
  },
  'readings-file/too-large': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'size'),
      expected: `at most ${of(v, 'most')} MB, which is thousands of years of monthly readings`,
      remedy: 'Choose the list of register readings. A file of interval values is another kind of file.',
    }),
  },
  'readings-file/binary': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'kind'),
      expected: 'plain text: one line for each reading',
      remedy: 'Save the sheet as CSV (text, separated by commas) and use that file.',
    }),
  },
  'readings-file/encoding': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: 'text in UTF-8, or in UTF-16 that begins with its mark',
      remedy: 'Save the file again as "CSV UTF-8".',
    }),
  },
  'readings-file/utf-16': {
    severity: 'note',
    text: (v) => ({
      found: `text in ${of(v, 'encoding')}, by the mark at its beginning`,
      expected: 'UTF-8, or UTF-16 with such a mark',
      remedy: 'Nothing to do: it was read as such.',
    }),
  },
  'readings-file/no-header': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'line')}" as the first line`,
      expected: `the names of the columns, separated by commas, semicolons or tabs: ${of(v, 'allowed')}`,
      remedy: 'Put a line such as date,import,export,generation above the readings.',
    }),
  },
  'readings-file/unknown-column': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'name') === '' ? 'a column without a name' : `the column "${of(v, 'name')}"`,
      expected: `columns named ${of(v, 'allowed')}`,
      remedy: 'Correct the name, or take the column out.',
    }),
  },
  'readings-file/missing-column': {
    severity: 'error',
    text: (v) => ({
      found: `no column "${of(v, 'name')}"`,
      expected: 'the columns date, import and export',
      remedy: `Add the column "${of(v, 'name')}".`,
    }),
  },
  'readings-file/same-column-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second column "${of(v, 'name')}"`,
      expected: 'each column once',
      remedy: 'Keep one of the two; a reader could take either.',
    }),
  },
  'readings-file/mixed-separators': {
    severity: 'error',
    text: (v) => ({
      found: `a line separated by ${of(v, 'used')}`,
      expected: `${of(v, 'header')} between cells, as in the line with the names of the columns`,
      remedy: 'Separate the cells of every line in the same way.',
    }),
  },
  'readings-file/too-many-cells': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} cells`,
      expected: `at most ${of(v, 'most')}, one for each column`,
      remedy: 'If commas mark decimals, put such numbers in quotation marks or separate cells by semicolons.',
    }),
  },
  'readings-file/quote-not-closed': {
    severity: 'error',
    text: () => ({
      found: 'a cell that begins with a quotation mark and does not end with one',
      expected: 'quotation marks in pairs around the whole cell',
      remedy: 'Close or take out the quotation mark; nothing after it could be read.',
    }),
  },
  'readings-file/formula': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which looks like a spreadsheet formula`,
      expected: `a value in the column "${of(v, 'name')}"`,
      remedy: 'Save the sheet with values instead of formulas.',
    }),
  },
  'readings-file/status': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" as the status of a reading`,
      expected: '"actual", "estimated", or "estimated:import" where one register was; empty: actual',
      remedy: 'Write one of them.',
    }),
  },
  'readings-file/event': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" as the event of a reading`,
      expected: '"final" for the last reading of a meter, "first" for the first of the next; empty: neither',
      remedy: 'Write one of the two, or leave the cell empty.',
    }),
  },
  'readings-file/confirmed': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" in the column "confirmed"`,
      expected: 'the code of a question and a register, such as reading/large-advance:import',
      remedy: 'Copy code and register from the question that was asked; separate several by spaces.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a register list as a file. */
export type FileFindingCode = keyof typeof FILE_FINDINGS;

/** Make a finding about a register list as a file. */
export const fileFinding: (code: FileFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<FileFindingCode>(FILE_FINDINGS);
