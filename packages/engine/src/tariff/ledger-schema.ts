import * as z from 'zod/mini';
import {
  clauseText,
  countText,
  decimalText,
  labelText,
  monthDayText,
  quantityText,
  rateText,
  roundingSchema,
  slug,
} from './names.ts';

const payment = z.strictObject({
  clause: clauseText,
  label: labelText,
  rate: z.optional(rateText('Money per unit; a money ledger has none')),
  inBill: z.enum(['same', 'next']).check(z.describe('The bill that pays')),
  above: z.optional(decimalText('Paid only where the balance is above this')),
  atLeast: z.optional(decimalText('Paid only where the balance is this or more')),
  pays: z.optional(
    z
      .enum(['whole', 'excess'])
      .check(z.describe('With `above` or `atLeast`: the whole balance, or what exceeds it')),
  ),
  most: z.optional(quantityText('At most so much is paid')),
  rest: z.optional(
    z
      .enum(['carried', 'lapses'])
      .check(z.describe('What becomes of what is not paid; needed with `above`, `atLeast` or `most`')),
  ),
  rounding: z.optional(roundingSchema.check(z.describe('Rounding of the payment; left out: as lines are'))),
});

const life = z.strictObject({
  clause: clauseText,
  months: countText('Months'),
  of: z
    .enum(['each-unit', 'time-in-credit'])
    .check(
      z.describe(
        'each-unit: of every unit from the end of the period it was earned in, the oldest used first; time-in-credit: of the balance, counted in months in a row that end with one',
      ),
    ),
});

const close = z.strictObject({
  clause: clauseText,
  on: z
    .union([
      z.enum(['every-period', 'anniversary', 'chosen']),
      z.array(monthDayText('A day of the year')).check(z.minLength(1)),
    ])
    .check(
      z.describe(
        'Every period; the end of each year since the account began; the day its owner chose; or a list of days of the year, such as ["03-31"]: the period that holds the day closes the ledger',
      ),
    ),
  everyYears: z.optional(
    countText(
      'Only in every so manieth year: of days of the year and the day chosen, counted from the first such day after the account began; of an anniversary, from that day',
    ),
  ),
  surplus: z.enum(['lapses', 'paid']).check(z.describe('What becomes of the balance')),
});

/** An account of units or money that goes from one period to the next. */
export const ledgerSchema = z.strictObject({
  id: slug('Names the ledger: its balance brought forward is a quantity of that name'),
  label: labelText,
  unit: z.enum(['kWh', 'kVAh', 'money']).check(z.describe('What it counts')),
  clause: clauseText,
  adds: z.optional(quantityText('The units that come in; a money ledger gets them from its credit charge')),
  keeps: z.optional(quantityText('What this period leaves of the balance brought forward')),
  life: z.optional(life),
  close: z.optional(close),
  payment: z.optional(payment.check(z.describe('How a balance is paid, where it is'))),
});

/** An account of units or money that goes from one period to the next. */
export type LedgerRule = z.infer<typeof ledgerSchema>;
