import * as z from 'zod/mini';
import { clauseText, countText, dayText, decimalText, rateText, roundingSchema } from './names.ts';

const clause = clauseText;
const rounding = z.optional(roundingSchema.check(z.describe('Rounding of the price; left out: exact')));
const operands = z
  .array(rateText('A price above, or a number'))
  .check(z.minLength(1), z.describe('Prices above, or numbers'));

const series = z.strictObject({
  is: z.literal('series'),
  clause,
  values: z
    .array(
      z.strictObject({
        from: dayText('First day'),
        rate: decimalText('The price from that day on'),
        clause: z.optional(clauseText),
      }),
    )
    .check(z.minLength(1), z.describe('In order of time')),
  through: z.optional(dayText('Last day of the last value; left out: still in force')),
  inForce: z
    .enum(['first-day', 'last-day'])
    .check(z.describe('The day of the billing period whose price bills the whole of it')),
});

const arithmetic = z.strictObject({
  is: z.enum(['sum', 'difference', 'product', 'least', 'greatest']),
  clause,
  of: operands,
  rounding,
});

const percentage = z.strictObject({
  is: z.literal('percent'),
  clause,
  percent: decimalText('Percent of the sum of the prices'),
  of: operands,
  rounding,
});

const mean = z.strictObject({
  is: z.literal('mean'),
  clause,
  of: rateText('A series above'),
  months: countText('Over so many calendar months'),
  through: z
    .enum(['this-month', 'month-before'])
    .check(z.describe('The last month that counts: that of the last day of the period, or the one before')),
  rounding: roundingSchema.check(z.describe('How the mean is rounded')),
});

/** A price by name: a dated list, or worked out from other prices. */
export const priceSchema = z.discriminatedUnion('is', [series, arithmetic, percentage, mean]);

/** A price by name. */
export type Price = z.infer<typeof priceSchema>;
