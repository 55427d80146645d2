import * as z from 'zod/mini';
import { clauseText, dayText, labelText, monthDayText, slug } from './names.ts';

const time = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^\d{2}:\d{2}$/), z.describe(`${description}, as HH:MM`));

const block = z.strictObject({
  id: slug('Names the block, for the calendar and for charges to refer to'),
  label: labelText,
});

const entry = z.strictObject({
  block: slug('The block that applies'),
  from: time('The minute it begins, on the local clock'),
  to: time(
    'The minute it ends, "24:00" at the latest; before its beginning: the first and the last hours of the same day',
  ),
  days: z.optional(
    z
      .array(z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun', 'holiday']))
      .check(z.minLength(1), z.describe('The days it applies on; left out: every day, holidays too')),
  ),
  season: z.optional(slug('The season of the document it applies in; left out: all year')),
  clause: z.optional(clauseText),
});

/** A part of every year. */
export const seasonSchema = z.strictObject({
  clause: z.optional(clauseText),
  from: monthDayText('First day of every year'),
  through: monthDayText('Last day; before the first: in the year after'),
});

const holidays = z.strictObject({
  clause: clauseText,
  days: z
    .array(dayText('A holiday'))
    .check(z.describe('Where an entry names "holiday", these are holidays and no weekdays')),
});

/** The time blocks of a tariff document: which block applies at which minute of which day. */
export const timeBlocksSchema = z.strictObject({
  clause: clauseText,
  blocks: z.array(block).check(z.minLength(1), z.describe('What the calendar can name')),
  calendar: z
    .array(entry)
    .check(z.minLength(1), z.describe('For every minute of every day exactly one entry has to apply')),
  holidays: z.optional(holidays),
});

/** Which block applies at which minute of which day. */
export type TimeBlocks = z.infer<typeof timeBlocksSchema> & {
  /** Those of the document, by name. */
  readonly seasons?: Readonly<Record<string, z.infer<typeof seasonSchema>>> | undefined;
};

/** One entry of the calendar of time blocks. */
export type TimeBlockEntry = TimeBlocks['calendar'][number];
