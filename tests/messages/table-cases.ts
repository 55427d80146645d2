import type { Finding } from '@unitbook/engine';
import {
  proposeTable,
  readTableLayout,
  type TableColumn,
  type TableLayout,
} from '../../packages/meter-files/src/table/index.ts';
import { intervalLayout, readTable, registerLayout } from '../support/table.ts';
import type { MessageCase } from './message-case.ts';

type Make = MessageCase['make'];

/** The findings about lines below "time,import". */
const rows =
  (layout: TableLayout, ...lines: readonly string[]): Make =>
  (): readonly Finding[] =>
    readTable(layout, ['time,import', ...lines].join('\n')).findings;

/** The findings about a cell of a number, in a row that is else right. */
const cell = (text: string, parts: Partial<TableLayout> = {}): Make =>
  rows(registerLayout(parts), `2025-05-01 00:00,${text}`);

const file =
  (layout: TableLayout, ...lines: readonly string[]): Make =>
  (): readonly Finding[] =>
    readTable(layout, lines.join('\n')).findings;

const head =
  (...lines: readonly string[]): Make =>
  (): readonly Finding[] =>
    proposeTable(`${lines.join('\n')}\n`).findings;

const DOCUMENT = {
  format: 'unitbook-columns-1',
  header: ['time', 'import'],
  holds: 'intervals',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  clock: 'local',
  label: 'start',
  minutes: '15',
  columns: [{ is: 'date-time' }, { is: 'import', unit: 'kWh' }],
  confirmed: true,
};

/** The findings about a layout document in one line, with some parts changed; undefined takes one out. */
const layout =
  (parts: Readonly<Record<string, unknown>>): Make =>
  (): readonly Finding[] =>
    readTableLayout(JSON.stringify({ ...DOCUMENT, ...parts })).findings;

/** The column at which the value of a key begins in the document in one line. */
const columnOf = (parts: Readonly<Record<string, unknown>>, key: string): string => {
  const text = JSON.stringify({ ...DOCUMENT, ...parts });
  return `1:${text.indexOf(`"${key}":`) + key.length + 4}`;
};

const WITH_QUALITY: readonly TableColumn[] = [
  { is: 'date-time' },
  { is: 'import', unit: 'kWh' },
  { is: 'quality', words: { A: 'actual', '': 'actual', E: 'estimated' } },
];
const QUALITY = registerLayout({ header: ['time', 'import', 'how'], columns: [...WITH_QUALITY] });
const AMSTERDAM = { zone: 'Europe/Amsterdam' };

const AGAIN = 'Correct the cell. If all rows are written like this, set up the columns of this table anew.';
const MISSING = 'Correct the cell. It counts as missing until then.';
const SAVE =
  'Save the table again with plain values, or type the number in place of this. The cell counts as missing.';
const SET_UP = 'Say which column is which when you set up the table.';

/** Of the file as a whole and of its lines. */
const FILE_CASES: readonly MessageCase[] = [
  {
    code: 'table/empty',
    when: 'a file holds blank lines alone',
    make: file(registerLayout(), '', ' ', ''),
    at: '1:1',
    found: 'a file without a line of text',
    expected: 'a line with the names of the columns, then one line for each time',
    remedy: 'Choose the file that holds the values.',
  },
  {
    code: 'table/empty',
    when: 'the head of a file is empty',
    make: head(''),
    at: '1:1',
    found: 'a file without a line of text',
    expected: 'a line with the names of the columns, then one line for each time',
    remedy: 'Choose the file that holds the values.',
  },
  {
    code: 'table/other-header',
    when: 'a name differs',
    make: file(registerLayout({ header: ['time', 'Bezug'] }), 'Kunde 7', 'time,Einspeisung', '2025-05-01,1'),
    at: '2:1',
    found: 'names of columns without "Bezug" and with "Einspeisung"',
    expected: 'the columns "time", "Bezug"',
    remedy: 'The columns were set up for another table: set up this one too. Nothing of it was read.',
  },
  {
    code: 'table/other-header',
    when: 'the columns are in another order',
    make: file(registerLayout(), 'import,time', '1,2025-05-01'),
    at: '1:1',
    found: 'the same names of columns in another order or number',
    expected: 'the columns "time", "import"',
    remedy: 'The columns were set up for another table: set up this one too. Nothing of it was read.',
  },
  {
    code: 'table/other-header',
    when: 'no line has any of the names, in 21 lines',
    make: file(registerLayout(), ...Array.from({ length: 30 }, (_, at) => `${at},5`)),
    at: '1:1',
    found: '"0,5" as the first line, and no line with those names',
    expected: 'the columns "time", "import"',
    remedy: 'The columns were set up for another table: set up this one too. Nothing of it was read.',
  },
  {
    code: 'table/lines-above',
    when: 'the reader passes over one',
    make: file(registerLayout(), 'Customer 7', '', 'time,import', '2025-05-01,1'),
    severity: 'note',
    at: '3:1',
    found: '1 line above the columns',
    expected: 'the names of the columns in the first line',
    remedy: 'Nothing to do: they were left out.',
  },
  {
    code: 'table/lines-above',
    when: 'the reader passes over as many as it may',
    make: file(registerLayout(), ...Array.from({ length: 20 }, () => 'x'), 'time,import', '2025-05-01,1'),
    severity: 'note',
    at: '21:1',
    found: '20 lines above the columns',
    expected: 'the names of the columns in the first line',
    remedy: 'Nothing to do: they were left out.',
  },
  {
    code: 'table/header-again',
    when: 'two tables stand one below the other',
    make: rows(registerLayout(), '2025-05-01,1', 'time,Import ', '2025-06-01,2'),
    severity: 'note',
    at: '3:1',
    found: 'the names of the columns once more',
    expected: 'values',
    remedy: 'Nothing to do: the line was left out. Two tables one below the other are read as one.',
  },
  {
    code: 'table/quote-not-closed',
    when: 'the file ends in a cell',
    make: rows(registerLayout(), '2025-05-01,"1', '2025-06-01,2'),
    at: '2:12',
    found: 'a cell that begins with a quotation mark and does not end with one',
    expected: 'quotation marks in pairs around the whole cell, of at most 10000 characters',
    remedy: 'Close or take out the quotation mark. The row was left out; reading went on with the next line.',
  },
  {
    code: 'table/line-too-long',
    when: 'a line has more characters than any table',
    make: rows(registerLayout(), 'x'.repeat(100_001)),
    at: '2:1',
    found: 'a line of more than 100000 characters',
    expected: 'one line for each time',
    remedy: 'Check that it is the right file. The line was left out.',
  },
];

/** Of a head that is looked at to propose a layout. */
const HEAD_CASES: readonly MessageCase[] = [
  {
    code: 'table/no-header',
    when: 'values stand in the first line',
    make: head('2025-05-01,1.5', '2025-05-02,1.25'),
    severity: 'question',
    at: '1:1',
    found: 'values in the first line',
    expected: 'the names of the columns',
    remedy: `${SET_UP} Every table of as many columns without names will be taken for one like it.`,
  },
  {
    code: 'table/header-too-far-down',
    when: 'there are 21 lines above the names',
    make: head(
      ...Array.from({ length: 21 }, (_, at) => `Note ${at}`),
      'day,import',
      '2025-05-01,1',
      '2025-05-02,2',
    ),
    at: '22:1',
    found: '21 lines above the first values',
    expected: 'at most 20 above the names of the columns',
    remedy: 'Delete the lines above the names of the columns.',
  },
  {
    code: 'table/no-time-column',
    when: 'no column holds dates',
    make: head('month,import', 'first,1', 'second,2'),
    severity: 'question',
    at: '1:1',
    found: 'no column that holds dates',
    expected: 'one with the date and the time, or one with each',
    remedy: `${SET_UP} A date can look like 2025-05-01, 1/5/2025, 1.5.2025, 1 May 2025 or 20250501.`,
  },
  {
    code: 'table/unix-time',
    when: 'a column may count seconds',
    make: head('ts,import', '1746057600,1', '1746058500,2'),
    severity: 'question',
    at: '2:1',
    found: '"1746057600", which may be a count of seconds since 1970',
    expected: 'dates and times as people write them',
    remedy: 'Is the column a time? Then export the table with dates. Such counts are not read.',
  },
  {
    code: 'table/unix-time',
    when: 'a column may count milliseconds',
    make: head('import;ts', '1;1746057600000', '2;1746058500000'),
    severity: 'question',
    at: '2:3',
    found: '"1746057600000", which may be a count of milliseconds since 1970',
    expected: 'dates and times as people write them',
    remedy: 'Is the column a time? Then export the table with dates. Such counts are not read.',
  },
  {
    code: 'table/no-value-column',
    when: 'names say nothing',
    make: head('day,first,second', '2025-05-01,1.5,2.5', '2025-05-02,1.25,3.5'),
    severity: 'question',
    at: '1:1',
    found: 'no column whose name says what it counts',
    expected: 'import, export or generation',
    remedy: SET_UP,
  },
  {
    code: 'table/mixed-marks',
    when: 'decimals stand behind either mark',
    make: head('day;import', '2025-05-01;1.5', '2025-05-02;1,5'),
    severity: 'question',
    at: '3:12',
    found: '"1.5" and "1,5", which no one way of writing numbers explains',
    expected: 'the same decimal mark in every number',
    remedy: 'Which mark stands before the decimals? Cells with the other will be told one by one.',
  },
  {
    code: 'table/mixed-date-orders',
    when: 'one date has the day first and one the month',
    make: head('day,import', '13/5/2025,1.5', '5/14/2025,1.25'),
    severity: 'question',
    at: '3:1',
    found: '"13/5/2025" and "5/14/2025", which no one order of day and month explains',
    expected: 'the same order in every date',
    remedy: 'Which order is it? Dates in the other will be told one by one.',
  },
];

/** Of the cells and the time of a row. */
const ROW_CASES: readonly MessageCase[] = [
  {
    code: 'table/cell-count',
    when: 'a decimal comma makes a cell too many',
    make: cell('1,5'),
    at: '2:20',
    found: 'a row of 3 cells',
    expected: '2, one for each column',
    remedy:
      'The row was left out, as it cannot be told which cell is which. Correct it; a number with a mark ' +
      'that also separates cells has to stand in quotation marks.',
  },
  {
    code: 'table/cell-count',
    when: 'a line is cut off',
    make: rows(registerLayout(), '2025-05-01 00:0'),
    at: '2:1',
    found: 'a row of 1 cell',
    expected: '2, one for each column',
    remedy:
      'The row was left out, as it cannot be told which cell is which. Correct it; a number with a mark ' +
      'that also separates cells has to stand in quotation marks.',
  },
  {
    code: 'table/bad-date',
    when: 'a date has the month first',
    make: rows(registerLayout({ dateOrder: 'day-month-year' }), '5/13/2025 0:00,1'),
    at: '2:1',
    found: '"5/13/2025 0:00" in the column "time"',
    expected: 'a date from 1980 to 2199 with the day first, such as 1/5/2025',
    remedy: AGAIN,
  },
  {
    code: 'table/bad-date',
    when: 'a row has a sum in place of a date',
    make: rows(registerLayout(), 'Total,1'),
    at: '2:1',
    found: '"Total" in the column "time"',
    expected: 'a date from 1980 to 2199 with the year first, such as 2025-05-01',
    remedy: AGAIN,
  },
  {
    code: 'table/bad-date',
    when: 'there is no such day',
    make: rows(registerLayout({ dateOrder: 'month-day-year' }), '2/29/2025,1'),
    at: '2:1',
    found: '"2/29/2025" in the column "time"',
    expected: 'a date from 1980 to 2199 with the month first, such as 5/1/2025',
    remedy: AGAIN,
  },
  {
    code: 'table/bad-time',
    when: 'a day has no such minute',
    make: rows(registerLayout(), '2025-05-01 24:15,1'),
    at: '2:1',
    found: '"2025-05-01 24:15" in the column "time"',
    expected: 'a time such as 00:15, 0:15:00, 0015, 12:15 AM or 24:00',
    remedy: AGAIN,
  },
  {
    code: 'table/time-missing',
    when: 'an interval has a date alone',
    make: rows(intervalLayout(), '2025-05-01,1'),
    at: '2:1',
    found: '"2025-05-01" without a time',
    expected: 'a date with the time of an interval of 15 minutes',
    remedy: 'Write the time as well: 00:00 for midnight. Some sheets leave it out at midnight.',
  },
  {
    code: 'table/part-of-minute',
    when: 'an interval begins between two minutes',
    make: rows(intervalLayout(), '2025-05-01 00:14:59,1'),
    at: '2:1',
    found: '"2025-05-01 00:14:59", which is no whole minute',
    expected: 'intervals that begin and end on whole minutes',
    remedy: 'Correct the seconds, or export the table with times in whole minutes.',
  },
  {
    code: 'table/offset',
    when: 'each cell should have one',
    make: rows(intervalLayout({ clock: 'in-text' }), '2025-05-01 00:15,1'),
    at: '2:1',
    found: '"2025-05-01 00:15"',
    expected: 'a time with its offset from UTC behind it, such as +02:00 or Z',
    remedy: 'Correct the cell, or set up anew by which clock this table gives the time.',
  },
  {
    code: 'table/offset',
    when: 'local times should have none',
    make: rows(intervalLayout(), '2025-05-01 00:15Z,1'),
    at: '2:1',
    found: '"2025-05-01 00:15Z"',
    expected: 'a local time without an offset, as set up for this table',
    remedy: 'Correct the cell, or set up anew by which clock this table gives the time.',
  },
  {
    code: 'table/offset',
    when: 'it is another than that of the table',
    make: rows(intervalLayout({ clock: '+05:30' }), '2025-05-01 00:15+05:45,1', '2025-05-01 00:30+05:30,1'),
    at: '2:1',
    found: '"2025-05-01 00:15+05:45"',
    expected: 'a time by +05:30, as set up for this table',
    remedy: 'Correct the cell, or set up anew by which clock this table gives the time.',
  },
  {
    code: 'table/time-does-not-exist',
    when: 'clocks went forward over it',
    make: rows(intervalLayout(AMSTERDAM), '2025-03-30 02:30,1'),
    at: '2:1',
    found: '2025-03-30 02:30, which the clocks of Europe/Amsterdam leave out on that day',
    expected: 'a time that there is',
    remedy:
      'Was the table written by a clock without daylight saving? Then set up its clock anew. Values of 0 ' +
      'in the hour that is left out can be deleted.',
  },
  {
    code: 'table/time-once-more',
    when: 'an hour comes a third time',
    make: rows(intervalLayout(AMSTERDAM), ...Array.from({ length: 3 }, () => '2025-10-26 02:30,1')),
    at: '4:1',
    found: '2025-10-26 02:30 once more',
    expected: 'at most twice, first by daylight saving time of Europe/Amsterdam, then by standard time',
    remedy: 'Delete the row that is too many, or bring the rows of that hour into the order of time.',
  },
  {
    code: 'table/no-value',
    when: 'all cells but the time are empty',
    make: cell(''),
    severity: 'note',
    at: '2:1',
    found: 'a row with a time and no value',
    expected: 'at least one number',
    remedy: 'Nothing to do if the meter gave none: it counts as missing.',
  },
];

/** Of the numbers of a row and how they came about. */
const NUMBER_CASES: readonly MessageCase[] = [
  {
    code: 'table/bad-number',
    when: 'a cell has words',
    make: cell('n/a'),
    at: '2:18',
    found: '"n/a" in the column "import"',
    expected: 'a number, or an empty cell where there is none',
    remedy: MISSING,
  },
  {
    code: 'table/number-marks',
    when: 'a point stands before decimals in place of a comma',
    make: cell('1.5', { decimalMark: ',', grouping: '.' }),
    at: '2:18',
    found: '"1.5" in the column "import"',
    expected: 'a comma before the decimals and a point between groups of digits, as set up for this table',
    remedy: 'Correct the cell, or set up the marks anew. It counts as missing until then.',
  },
  {
    code: 'table/number-marks',
    when: 'digits are grouped and should not be',
    make: cell('"1,234.5"'),
    at: '2:18',
    found: '"1,234.5" in the column "import"',
    expected: 'a point before the decimals and nothing between groups of digits, as set up for this table',
    remedy: 'Correct the cell, or set up the marks anew. It counts as missing until then.',
  },
  {
    code: 'table/too-many-digits',
    when: 'a sum of floats was exported',
    make: cell('0.30000000000000004'),
    at: '2:18',
    found: '"0.30000000000000004" in the column "import"',
    expected: 'at most 15 digits, and 15 decimals of a kWh, which is finer than any meter counts',
    remedy: 'Such digits come from a calculation. Export the values as the meter gave them.',
  },
  {
    code: 'table/too-many-digits',
    when: 'thirteen decimals of a watt-hour are sixteen of a kWh',
    make: rows(
      intervalLayout({ columns: [{ is: 'date-time' }, { is: 'import', unit: 'Wh' }] }),
      '2025-05-01 00:00,0.0000000000001',
      '2025-05-01 00:15,0.000000000001',
    ),
    at: '2:18',
    found: '"0.0000000000001" in the column "import"',
    expected: 'at most 15 digits, and 15 decimals of a kWh, which is finer than any meter counts',
    remedy: 'Such digits come from a calculation. Export the values as the meter gave them.',
  },
  {
    code: 'table/negative',
    when: 'an interval of import is below 0',
    make: rows(intervalLayout(), '2025-05-01 00:00,-0.25'),
    at: '2:18',
    found: '"-0.25" in the column "import", below 0',
    expected: 'import of 0 or more',
    remedy: 'If the column is import less export, set it up as "net". The cell counts as missing.',
  },
  {
    code: 'table/spreadsheet-error',
    when: 'a spreadsheet had no value',
    make: cell('#N/A'),
    at: '2:18',
    found: '"#N/A" in the column "import", which a spreadsheet shows where it has no value',
    expected: 'a number, or an empty cell where there is none',
    remedy: SAVE,
  },
  {
    code: 'table/exponent',
    when: 'a spreadsheet cut a number short',
    make: cell('"1,2E+05"', { decimalMark: ',' }),
    at: '2:18',
    found: '"1,2E+05" in the column "import": a number cut short, with a power of ten',
    expected: 'all its digits',
    remedy: 'Give the column of the sheet a plain number format and save again. The cell counts as missing.',
  },
  {
    code: 'table/formula',
    when: 'a sheet was saved with its formulas',
    make: cell('=B2-B1'),
    at: '2:18',
    found: '"=B2-B1" in the column "import", which looks like a spreadsheet formula',
    expected: 'a number',
    remedy: SAVE,
  },
  {
    code: 'table/quality-word',
    when: 'a word was not set up',
    make: file(QUALITY, 'time,import,how', '2025-05-01,1,A', '2025-05-02,2,X'),
    severity: 'question',
    at: '3:14',
    found: '"X" in the column "how"',
    expected: 'one of the words set up for this column: "A", an empty cell, "E"',
    remedy: 'What does it mean? Add it to the column. The value was kept as estimated.',
  },
  {
    code: 'table/quality-word',
    when: 'an empty cell was not set up',
    make: file(
      { ...QUALITY, columns: [...WITH_QUALITY.slice(0, 2), { is: 'quality', words: { A: 'actual' } }] },
      'time,import,how',
      '2025-05-01,1,',
    ),
    severity: 'question',
    at: '2:14',
    found: 'an empty cell in the column "how"',
    expected: 'one of the words set up for this column: "A"',
    remedy: 'What does it mean? Add it to the column. The value was kept as estimated.',
  },
];

const TWO_POINTS = {
  header: ['time', 'a', 'b', 'import'],
  columns: [{ is: 'date-time' }, { is: 'point' }, { is: 'point' }, { is: 'import', unit: 'kWh' }],
};
const DATE = { columns: [{ is: 'date' }, { is: 'import', unit: 'kWh' }] };

/** Of the document that says what the columns are. */
const LAYOUT_CASES: readonly MessageCase[] = [
  {
    code: 'table-layout/column-count',
    when: 'a name has no column',
    make: layout({ header: ['time', 'import', 'export'] }),
    at: columnOf({ header: ['time', 'import', 'export'] }, 'columns'),
    found: '2 columns for 3 names in the header',
    expected: 'one for each name',
    remedy: 'Add or take out columns; one that is not to be read is {"is":"nothing"}.',
  },
  {
    code: 'table-layout/time-columns',
    when: 'there are no dates',
    make: layout({ columns: [{ is: 'time' }, { is: 'import', unit: 'kWh' }] }),
    at: columnOf({}, 'columns'),
    found: 'the columns time',
    expected: 'one date-time, or one date and at most one time',
    remedy: 'Correct which columns give the time.',
  },
  {
    code: 'table-layout/time-columns',
    when: 'there is no time at all',
    make: layout({ columns: [{ is: 'nothing' }, { is: 'import', unit: 'kWh' }] }),
    at: columnOf({}, 'columns'),
    found: 'no column of dates',
    expected: 'one date-time, or one date and at most one time',
    remedy: 'Correct which columns give the time.',
  },
  {
    code: 'table-layout/no-value-column',
    when: 'nothing is to be read',
    make: layout({ columns: [{ is: 'date-time' }, { is: 'nothing' }] }),
    at: columnOf({}, 'columns'),
    found: 'no column of values',
    expected: 'at least one that is import, export, generation, net or other',
    remedy: 'Say which columns hold the values.',
  },
  {
    code: 'table-layout/column-twice',
    when: 'there are two points',
    make: layout(TWO_POINTS),
    at: `1:${JSON.stringify({ ...DOCUMENT, ...TWO_POINTS }).lastIndexOf('{"is":"point"}') + 1}`,
    found: 'a second column that is "point"',
    expected: 'at most one',
    remedy: 'Keep one of the two; the other is {"is":"nothing"}.',
  },
  {
    code: 'table-layout/same-marks',
    when: 'a point does both',
    make: layout({ grouping: '.' }),
    at: columnOf({ grouping: '.' }, 'grouping'),
    found: '"." both before the decimals and between groups of digits',
    expected: 'two different marks',
    remedy: 'Correct one of the two; "" stands for no grouping.',
  },
  {
    code: 'table-layout/interval-needs',
    when: 'it is not told which end a time names',
    make: layout({ label: undefined }),
    at: columnOf({}, 'holds'),
    found: 'intervals without "label"',
    expected: '"start" or "end": which end of its interval a time names',
    remedy: 'Add "label".',
  },
  {
    code: 'table-layout/interval-needs',
    when: 'it is not told how long they are',
    make: layout({ minutes: undefined }),
    at: columnOf({}, 'holds'),
    found: 'intervals without "minutes"',
    expected: 'how long each interval is, such as "15", or "1440" for days',
    remedy: 'Add "minutes".',
  },
  {
    code: 'table-layout/time-needed',
    when: 'quarter hours have dates alone',
    make: layout(DATE),
    at: columnOf(DATE, 'minutes'),
    found: 'intervals of 15 minutes with dates alone',
    expected: 'a column with the time as well, or intervals of 1440 minutes',
    remedy: 'Say which column gives the time.',
  },
  {
    code: 'table-layout/zone',
    when: 'a zone is not on the list',
    make: layout({ zone: 'Tarumira' }),
    at: columnOf({ zone: 'Tarumira' }, 'zone'),
    found: '"Tarumira", which is no time zone known here',
    expected: 'a name of the IANA list, such as "Europe/Amsterdam"',
    remedy: 'Correct the name.',
  },
];

/** Everything that can be said of a table of meter values and of the document that maps its columns. */
export const TABLE_CASES: readonly MessageCase[] = [
  ...FILE_CASES,
  ...HEAD_CASES,
  ...ROW_CASES,
  ...NUMBER_CASES,
  ...LAYOUT_CASES,
];
