import * as z from 'zod/mini';
import { clauseText, countText, decimalText, operandText, quantityText } from './names.ts';
import { labelText, roundingSchema, slug } from './names.ts';

/** What a quantity is counted in: energy, power, anything else that is counted, or a number that only chooses. */
export const QUANTITY_UNITS = ['kWh', 'kVAh', 'kW', 'kVA', 'count', 'class'] as const;

/** What a quantity is counted in. */
export type QuantityUnit = (typeof QUANTITY_UNITS)[number];

const unit = z
  .enum(QUANTITY_UNITS)
  .check(
    z.describe(
      'What it is counted in; kWh, kVAh and count are shared by days where a period is split; class is a number that only tells which',
    ),
  );

/** A quantity that readings, the bill or the account give and that every tariff does not know of itself. */
export const measureSchema = z.strictObject({
  label: labelText,
  unit,
  clause: z.optional(clauseText),
  whenMissing: z.optional(
    z.literal('zero').check(z.describe('"zero": counts as 0 where it is not given; left out: an error')),
  ),
  window: z.optional(
    z
      .strictObject({
        of: quantityText('The channel as metered'),
        less: quantityText('The channel set off against it'),
        within: z.enum(['interval', 'hour', 'day', 'day-hours']),
        from: z.optional(z.string().check(z.regex(/^\d{2}:\d{2}$/), z.describe('Of day-hours'))),
        to: z.optional(z.string().check(z.regex(/^\d{2}:\d{2}$/), z.describe('Of day-hours'))),
      })
      .check(z.describe('Worked out from interval data: what is left of one channel inside each window')),
  ),
});

const common = {
  id: slug('Names the quantity, for others and for charges to refer to'),
  label: labelText,
  clause: clauseText,
  unit: z.optional(
    z
      .enum(QUANTITY_UNITS)
      .check(z.describe('What the result is counted in; left out: as the first quantity')),
  ),
};

const rounding = z.optional(roundingSchema.check(z.describe('Rounding of the result; left out: exact')));

const operands = z
  .array(operandText('A quantity above'))
  .check(z.minLength(1), z.describe('Quantities above, or numbers'));

const through = z
  .enum(['this-period', 'previous-period'])
  .check(z.describe('Whether the period that is billed counts itself'));

const arithmetic = z.strictObject({
  is: z
    .enum(['sum', 'difference', 'excess', 'least', 'greatest', 'product'])
    .check(
      z.describe(
        'sum, least, greatest, product of all; difference: the first less the others; excess: the same, but not below 0',
      ),
    ),
  ...common,
  of: operands,
  rounding,
});

const quotient = z.strictObject({
  is: z.literal('quotient'),
  ...common,
  of: operandText('What is divided'),
  by: operandText('What it is divided by'),
  rounding: roundingSchema.check(z.describe('A quotient seldom ends: how it is rounded')),
});

const percentage = z.strictObject({
  is: z.literal('percent'),
  ...common,
  percent: decimalText('Percent of the sum of the quantities'),
  of: operands,
  rounding,
});

const part = z.strictObject({
  is: z.literal('part'),
  ...common,
  of: operandText('The quantity a part is taken of'),
  above: z.optional(operandText('The part above this; left out: from 0')),
  upTo: z.optional(operandText('The part up to this; left out: without end')),
});

const choice = z.strictObject({
  is: z.literal('choice'),
  ...common,
  by: quantityText('The quantity that chooses'),
  steps: z
    .array(
      z.strictObject({
        upTo: z.optional(decimalText('The upper limit, included; only the last has none')),
        take: operandText('What is taken where this step is reached'),
      }),
    )
    .check(z.minLength(2)),
});

const runningTotal = z.strictObject({
  is: z.literal('running-total'),
  ...common,
  of: quantityText('What is added up over periods'),
  since: z.optional(
    z
      .string()
      .check(
        z.regex(/^(\d{2}-\d{2}|anniversary|chosen)$/),
        z.describe(
          'Over the periods that begin on or after this day of the year, as mm-dd, or the day the account began, or the day after the one its owner chose; left out: see `periods`',
        ),
      ),
  ),
  periods: z.optional(countText('Over so many periods; left out with `since`: since the account began')),
  through,
});

const mean = z.strictObject({
  is: z.literal('mean'),
  ...common,
  of: quantityText('What the mean is of'),
  periods: countText('Over so many periods'),
  through,
  whenFewer: z
    .enum(['mean-of-those', 'refused'])
    .check(z.describe('Where there are fewer periods: their mean (0 where there is none), or no bill')),
  rounding: roundingSchema.check(z.describe('How the mean is rounded')),
});

const daysShare = z.strictObject({
  is: z.literal('days-share'),
  ...common,
  of: quantityText('The quantity, taken evenly over the days of the period'),
  days: z
    .string()
    .check(
      z.regex(/^([1-9]\d{0,2}|month-of-first-day|month-of-last-day)$/),
      z.describe('The days it is counted for: a number, or those of a calendar month'),
    ),
  when: z
    .enum(['longer', 'always'])
    .check(z.describe('longer: only where the period has more days; always: also where it has fewer')),
  rounding: roundingSchema.check(z.describe('How the share is rounded')),
});

const route = z.strictObject({
  from: quantityText('One of the supply'),
  to: quantityText('One of the demand'),
  worth: z.optional(decimalText('What a unit given is worth here, in percent; left out: 100')),
});

const netting = z.strictObject({
  is: z.literal('netting'),
  ...common,
  supply: z
    .array(quantityText('Units given, or the balance of a ledger'))
    .check(z.minLength(1), z.describe('What may be set off, in the order in which it is used')),
  demand: z
    .array(quantityText('Units taken'))
    .check(z.minLength(1), z.describe('What it is set off against, in the order in which it is met')),
  routes: z
    .union([z.enum(['any', 'same-block', 'same-block-first']), z.array(route).check(z.minLength(1))])
    .check(
      z.describe(
        'any: each of the demand in turn from each of the supply in turn; same-block: only inside a time block; same-block-first: there first, then any; or a list, in order',
      ),
    ),
  most: z.optional(quantityText('At most so many units are set off in all')),
  rounding: z.optional(
    roundingSchema.check(
      z.describe(
        'Where a unit is worth more or less than 100 %: how what units are worth is rounded; the fewest whole steps that are worth so much are used',
      ),
    ),
  ),
});

/** A quantity worked out from others. */
export const definitionSchema = z.discriminatedUnion('is', [
  arithmetic,
  quotient,
  percentage,
  part,
  choice,
  runningTotal,
  mean,
  daysShare,
  netting,
]);

/** A quantity that a document works out from others. */
export type Definition = z.infer<typeof definitionSchema>;

/** A measure that a document declares. */
export type Measure = z.infer<typeof measureSchema>;
