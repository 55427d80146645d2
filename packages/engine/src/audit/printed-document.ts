import * as z from 'zod/mini';
import { decimalText } from '../tariff/index.ts';

const day = (description: string): z.ZodMiniString =>
  z.string().check(z.describe(`${description}, as yyyy-mm-dd`));
const text = (description: string): z.ZodMiniString => z.string().check(z.describe(description));
const units = (description: string): z.ZodMiniOptional<z.ZodMiniString> =>
  z.optional(decimalText(description));
const money = units;

const ends = z.strictObject({ previous: units('The reading before'), present: units('The reading now') });

const line = z.strictObject({
  charge: text('The charge of the tariff, by its id; any other name is a line that the tariff does not have'),
  units: units('Units beside it'),
  rate: units('The rate beside it'),
  amount: decimalText('Its amount'),
});

const slab = z.strictObject({ units: decimalText('Units'), rate: units('Rate'), amount: money('Amount') });

/** A printed bill as it is typed off the paper: every part of it can be left out. */
export const printedBillSchema = z.strictObject({
  number: z.optional(text('Number of the bill')),
  account: z.optional(text('Account number')),
  category: z.optional(text('Category of the tariff, as printed')),
  currency: z.optional(text('Currency as printed, by its code of ISO 4217')),
  issued: z.optional(day('Day of the bill')),
  due: z.optional(day('Day until which it is to be paid')),
  from: day('Day of the reading before'),
  to: day('Day of the reading now'),
  days: units('Days of the period, as printed'),
  load: units('Sanctioned load in kW'),
  serials: z.optional(
    z.strictObject({
      grid: z.optional(text('Number of the two-way meter')),
      generation: z.optional(text('Number of the generation meter')),
    }),
  ),
  factor: units('Multiplying factor'),
  status: z.optional(z.enum(['actual', 'estimated']).check(z.describe('Whether the readings were read'))),
  readings: z.optional(
    z.record(z.string(), ends).check(z.describe('By register: import, export, generation, import-1 …')),
  ),
  units: z.optional(
    z
      .record(z.string(), decimalText('Units'))
      .check(z.describe('By name: import, export, generation, billed, import@peak …')),
  ),
  opening: z.optional(
    z
      .record(z.string(), decimalText('Balance'))
      .check(z.describe('Credit brought forward: "credit", or by ledger')),
  ),
  closing: z.optional(
    z
      .record(z.string(), decimalText('Balance'))
      .check(z.describe('Credit carried forward: "credit", or by ledger')),
  ),
  slabs: z.optional(z.array(slab).check(z.describe('Parts of the energy charge, as printed'))),
  lines: z.optional(z.array(line).check(z.describe('Lines of money in the order of paper'))),
  arrears: money('What is asked for from bills before'),
  lateFee: money('Fee for late payment'),
  adjustment: money('Any other correction'),
  sum: money('Sum of the lines before it is rounded'),
  rounding: money('What rounding added'),
  payable: money('What is to be paid'),
  paid: z.optional(
    z
      .strictObject({ on: day('Day'), amount: decimalText('Amount') })
      .check(z.describe('When it was paid, and how much')),
  ),
});

/** A printed bill as it is typed off the paper. */
export type PrintedBillDocument = z.infer<typeof printedBillSchema>;
