import * as z from 'zod/mini';
import { VALUE_QUALITIES } from '../stream.ts';

/** What can separate the cells of a table. */
export const TABLE_DELIMITERS = [',', ';', '\t', '|'] as const;

/** What can stand between groups of digits; '' where digits are not grouped. */
const GROUPINGS = ['', ',', '.', ' ', "'"] as const;

/** In which order a date is written. */
export const DATE_ORDERS = ['year-month-day', 'day-month-year', 'month-day-year'] as const;

/** How long an interval can be, in minutes; 1440 for days. */
export const INTERVAL_MINUTES = [
  '1',
  '2',
  '3',
  '4',
  '5',
  '6',
  '10',
  '12',
  '15',
  '20',
  '30',
  '60',
  '1440',
] as const;

const plainColumn = z.strictObject({
  is: z
    .enum(['date-time', 'date', 'time', 'point', 'meter', 'nothing'])
    .check(z.describe('What the column holds; "nothing" for one that is not to be read')),
});

const valueColumn = z.strictObject({
  is: z
    .enum(['import', 'export', 'generation', 'net', 'other'])
    .check(z.describe('What the column counts; "net" is import less export')),
  rate: z.optional(z.string().check(z.describe('Which rate, as the file numbers or names it'))),
  unit: z.enum(['kWh', 'Wh', 'MWh']).check(z.describe('The unit of the numbers')),
});

const qualityColumn = z.strictObject({
  is: z.literal('quality'),
  words: z
    .record(z.string(), z.enum(VALUE_QUALITIES))
    .check(z.describe('What each word of the column means; "" stands for an empty cell')),
});

/** How the columns of a table are to be read, as zod checks it. */
export const tableLayoutSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-columns-1'),
  header: z
    .array(z.string())
    .check(z.minLength(1), z.describe('The names of the columns; all empty for a table without names')),
  holds: z
    .enum(['registers', 'intervals'])
    .check(z.describe('Readings of counters, or what was counted in each interval')),
  delimiter: z.enum(TABLE_DELIMITERS).check(z.describe('What separates the cells')),
  decimalMark: z.enum(['.', ',']).check(z.describe('What stands before the decimals')),
  grouping: z.enum(GROUPINGS).check(z.describe('What stands between groups of digits; "" for nothing')),
  dateOrder: z.enum(DATE_ORDERS).check(z.describe('In which order dates are written')),
  clock: z
    .string()
    .check(
      z.regex(/^(?:local|utc|in-text|[+-](?:0\d|1[0-4]):[0-5]\d)$/),
      z.describe('"local", "utc", "in-text" where each cell has its offset, or an offset such as "+05:30"'),
    ),
  zone: z.optional(z.string().check(z.describe('The time zone of local times, such as "Europe/Amsterdam"'))),
  label: z.optional(
    z.enum(['start', 'end']).check(z.describe('Which end of its interval a time names, "start" or "end"')),
  ),
  minutes: z.optional(
    z.enum(INTERVAL_MINUTES).check(z.describe('How long each interval is; "1440" for days')),
  ),
  columns: z
    .array(z.discriminatedUnion('is', [plainColumn, valueColumn, qualityColumn]))
    .check(z.describe('What each column is, one for each name in the header')),
  confirmed: z
    .literal(true)
    .check(z.describe('true, once a person has looked at what was detected and said that it is right')),
});

/** The document that says how the columns of a table are to be read. */
export type TableLayoutDocument = z.infer<typeof tableLayoutSchema>;

/**
 * How the columns of a table are to be read. One that was only detected is not confirmed, and nothing is
 * read by it.
 */
export type TableLayout = Readonly<Omit<TableLayoutDocument, 'confirmed'>> & { readonly confirmed: boolean };

/** What one column of a table is. */
export type TableColumn = TableLayoutDocument['columns'][number];

/** A column of values. */
export type ValueColumn = Extract<TableColumn, { unit: string }>;
