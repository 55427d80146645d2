import * as z from 'zod/mini';
import { decimalText } from '../../tariff/index.ts';
import { plainText, wholeText } from './fields.ts';

/** What is paid for the plant. */
export const priceSchema = z
  .array(
    z.strictObject({
      item: plainText('What it is paid for: modules, meter, fees …'),
      amount: decimalText('Price before tax'),
      fixed: z.optional(
        z
          .literal(true)
          .check(z.describe('true: the same for a smaller or larger plant; left out: by its kWp')),
      ),
      tax: z.optional(decimalText('Percent of tax on it; left out: it is in the amount, or there is none')),
    }),
  )
  .check(z.minLength(1), z.describe('The price item by item'));

/** What the state adds. */
export const subsidySchema = z.strictObject({
  amount: z.optional(decimalText('The amount, where it is known')),
  tiers: z.optional(
    z
      .array(
        z.strictObject({
          upTo: z.optional(decimalText('Up to so many kW; left out in the last: beyond')),
          perKilowatt: decimalText('Amount for each kW in this tier'),
        }),
      )
      .check(z.describe('Amounts by capacity, added up tier by tier')),
  ),
  most: z.optional(decimalText('The most that is paid')),
  paidAfter: wholeText('Months from the start until it is paid'),
  to: z.enum(['customer', 'seller']).check(z.describe('Who receives it')),
  source: plainText('The scheme, and its date'),
});

/** A loan on the plant. */
export const loanSchema = z.strictObject({
  amount: decimalText('Amount borrowed'),
  rate: decimalText('Percent a year'),
  months: wholeText('Instalments'),
  kind: z
    .enum(['reducing', 'flat'])
    .check(
      z.describe('reducing: interest on what is still owed; flat: on the whole amount for the whole time'),
    ),
  fees: z.optional(decimalText('Fees paid on the first day')),
});

/** Whether something is paid out of the maintenance of each year. */
const paidOfUpkeep = (description: string) =>
  z.optional(z.enum(['included', 'not-included']).check(z.describe(description)));

/** What the plant costs while it runs. */
export const upkeepSchema = z.strictObject({
  perYear: decimalText('Maintenance of the first year'),
  growth: decimalText('How much it grows each year, in percent'),
  cleaning: paidOfUpkeep('Whether the cleaning of the modules is in it'),
  insurance: paidOfUpkeep('Whether an insurance of the plant is in it'),
  replacements: z.array(
    z.strictObject({
      item: plainText('What is replaced'),
      year: wholeText('In which year'),
      amount: decimalText('Price then'),
    }),
  ),
});

/** How rates rise. */
export const escalationSchema = z.strictObject({
  charges: z
    .record(z.string(), decimalText('Percent each year'))
    .check(z.describe('By charge of the tariff: those not listed stay as they are')),
  surplus: z.optional(
    z
      .strictObject({
        percent: decimalText('Percent each year'),
        step: decimalText('What a risen rate is rounded to, half-up, such as "0.01"'),
      })
      .check(z.describe('How what surplus is paid rises; left out: it stays as it is')),
  ),
  basis: plainText('Why so much'),
});
