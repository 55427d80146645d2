import type { TableColumn, TableLayout } from '@unitbook/meter-files';
import type { QuestionKey } from './layout-draft.ts';
import { QUANTITY_WORDS } from './words.ts';

type Words<Value extends string> = readonly (readonly [Value, string])[];

/** A question of one choice, in words. */
export interface Choice {
  readonly title: string;
  readonly options: Words<string>;
  readonly value: (layout: TableLayout) => string;
  /** What a choice changes. */
  readonly change: (value: string) => Partial<TableLayout>;
}

const DELIMITERS: Words<TableLayout['delimiter']> = [
  [',', 'commas'],
  [';', 'semicolons'],
  ['\t', 'tabs'],
  ['|', 'bars'],
];
const DECIMAL_MARKS: Words<TableLayout['decimalMark']> = [
  ['.', 'a point: 1.5'],
  [',', 'a comma: 1,5'],
];
const GROUPINGS: Words<TableLayout['grouping']> = [
  ['', 'nothing: 1500'],
  [',', 'a comma: 1,500'],
  ['.', 'a point: 1.500'],
  [' ', 'a space: 1 500'],
  ["'", 'an apostrophe: 1’500'],
];
const DATE_ORDERS: Words<TableLayout['dateOrder']> = [
  ['year-month-day', 'year, month, day'],
  ['day-month-year', 'day, month, year'],
  ['month-day-year', 'month, day, year'],
];
const CLOCKS: Words<string> = [
  ['local', 'the clock of the place'],
  ['utc', 'UTC'],
  ['in-text', 'UTC and what each time says behind it'],
  ['fixed', 'UTC and the same hours all year'],
];
const HOLDS: Words<TableLayout['holds']> = [
  ['registers', 'what registers showed: it only grows'],
  ['intervals', 'what was counted in each interval'],
];
const LENGTHS = ['1', '2', '3', '4', '5', '6', '10', '12', '15', '20', '30', '60'] as const;
const MINUTES: Words<string> = [
  ['', 'Choose …'],
  ...LENGTHS.map((one) => [one, one === '1' ? '1 minute' : `${one} minutes`] as const),
  ['1440', 'a day'],
];
const LABELS: Words<string> = [
  ['', 'Choose …'],
  ['start', 'begins'],
  ['end', 'ends'],
];

/** The clock of a layout as a choice: an offset of any size is "fixed". */
export function clockChoice({ clock }: TableLayout): string {
  return ['local', 'utc', 'in-text'].includes(clock) ? clock : 'fixed';
}

/** An offset as a layout has it. */
export const OFFSET: RegExp = /^[+-](?:0\d|1[0-4]):[0-5]\d$/;
/** What stands for an offset that nobody has typed yet. */
export const NO_OFFSET = '+';

/** The questions of one choice. */
export const CHOICES: Readonly<Partial<Record<QuestionKey, Choice>>> = {
  delimiter: {
    title: 'What separates the cells',
    options: DELIMITERS,
    value: ({ delimiter }) => delimiter,
    change: (delimiter) => ({ delimiter: delimiter as TableLayout['delimiter'] }),
  },
  'decimal-mark': {
    title: 'What stands before the decimals',
    options: DECIMAL_MARKS,
    value: ({ decimalMark }) => decimalMark,
    change: (mark) => ({ decimalMark: mark as TableLayout['decimalMark'] }),
  },
  grouping: {
    title: 'What groups the digits',
    options: GROUPINGS,
    value: ({ grouping }) => grouping,
    change: (mark) => ({ grouping: mark as TableLayout['grouping'] }),
  },
  'date-order': {
    title: 'How dates are written',
    options: DATE_ORDERS,
    value: ({ dateOrder }) => dateOrder,
    change: (order) => ({ dateOrder: order as TableLayout['dateOrder'] }),
  },
  clock: {
    title: 'By which clock times are',
    options: CLOCKS,
    value: clockChoice,
    change: (clock) => ({ clock: clock === 'fixed' ? NO_OFFSET : clock }),
  },
  holds: {
    title: 'What the numbers are',
    options: HOLDS,
    value: ({ holds }) => holds,
    change: (holds) => ({ holds: holds as TableLayout['holds'] }),
  },
  minutes: {
    title: 'How long an interval is',
    options: MINUTES,
    value: ({ minutes }) => minutes ?? '',
    change: (minutes) => (minutes === '' ? {} : { minutes: minutes as NonNullable<TableLayout['minutes']> }),
  },
  label: {
    title: 'At the time of a row, its interval',
    options: LABELS,
    value: ({ label }) => label ?? '',
    change: (label) => (label === '' ? {} : { label: label as NonNullable<TableLayout['label']> }),
  },
};

/** What a column can be, in words. */
export const COLUMN_WORDS: Words<TableColumn['is']> = [
  ['date-time', 'date and time'],
  ['date', 'date'],
  ['time', 'time'],
  ['import', QUANTITY_WORDS.import],
  ['export', QUANTITY_WORDS.export],
  ['generation', QUANTITY_WORDS.generation],
  ['net', QUANTITY_WORDS.net],
  ['other', 'other energy: not counted'],
  ['quality', 'how values came about'],
  ['point', 'the connection'],
  ['meter', 'the meter'],
  ['nothing', 'not read'],
];

/** Units of numbers. */
export const UNIT_WORDS: Words<'kWh' | 'Wh' | 'MWh'> = [
  ['kWh', 'kWh (units)'],
  ['Wh', 'Wh'],
  ['MWh', 'MWh'],
];

/** How a value can have come about. */
export const WORD_WORDS: Words<'actual' | 'estimated' | 'substituted' | 'edited' | 'missing'> = [
  ['actual', 'measured'],
  ['estimated', 'estimated'],
  ['substituted', 'put in its place'],
  ['edited', 'corrected'],
  ['missing', 'no value'],
];
