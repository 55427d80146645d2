import * as z from 'zod/mini';
import { ACCURACY_CLASSES } from '../../readings/index.ts';
import { decimalText } from '../../tariff/index.ts';

/** What a household can note that it did, or that befell the plant. */
export const DIARY_DEEDS = [
  'cleaning',
  'structure',
  'cables',
  'inverter-area',
  'inspection',
  'repair',
  'outage',
  'other',
] as const;

/** One of the things a diary holds. */
export type DiaryDeed = (typeof DIARY_DEEDS)[number];

const dayText = (description: string): z.ZodMiniString =>
  z.string().check(z.describe(`${description}, as yyyy-mm-dd`));

const capacity = z.strictObject({
  from: z.optional(dayText('The first day with this capacity; left out only in the first entry')),
  kWp: decimalText('Capacity of all modules in kWp'),
});

const inverters = z.strictObject({
  n: decimalText('How many inverters there are'),
  kind: z
    .enum(['string', 'module'])
    .check(z.describe('One inverter for a string of modules, or one under each module or few')),
});

const expected = z.strictObject({
  monthly: z.optional(
    z
      .array(decimalText('kWh of the month'))
      .check(z.describe('kWh of January to December, as the quote lists them')),
  ),
  irradiation: z.optional(
    z
      .array(decimalText('Irradiation of the month'))
      .check(z.describe('Irradiation in the plane of the modules, January to December')),
  ),
  unit: z.optional(
    z.enum(['kWh/m2/day', 'kWh/m2/month']).check(z.describe('What the irradiation is counted in')),
  ),
  performanceRatio: z.optional(
    decimalText('Performance ratio (IEC 61724-1): what reaches the meter of what the irradiation would give'),
  ),
  source: z.optional(z.string().check(z.describe('Where the irradiation was taken from'))),
  lastYears: z.optional(z.literal(true).check(z.describe('Go by the same days of earlier years'))),
});

const uncertainty = z.strictObject({
  yearToYear: z.optional(
    decimalText('How far a month differs from year to year where the plant stands, in percent (one sigma)'),
  ),
});

const diaryEntry = z.strictObject({
  date: dayText('The day, or the first of several'),
  through: z.optional(dayText('The last of several days')),
  did: z.enum(DIARY_DEEDS).check(z.describe('What was done, or befell the plant')),
  note: z.optional(z.string()),
});

/** The plant document as zod checks it. */
export const plantDocumentSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-plant-1'),
  capacity: z
    .array(capacity)
    .check(z.minLength(1), z.describe('The capacity, and each later change of it, in order of days')),
  coast: z.optional(z.boolean().check(z.describe('Whether the plant stands near the sea'))),
  inverters: z.optional(inverters),
  expected: z.optional(expected.check(z.describe('What the plant is expected to make'))),
  uncertainty: z.optional(uncertainty),
  meterClass: z.optional(
    z.enum(ACCURACY_CLASSES).check(z.describe('Accuracy class on the plate of the generation meter')),
  ),
  diary: z.optional(
    z.array(diaryEntry).check(z.describe('What was done to the plant, and days on which it stood still')),
  ),
});

/** A plant document: its capacity, what it is expected to make, and what was done to it. */
export type PlantDocument = z.infer<typeof plantDocumentSchema>;
