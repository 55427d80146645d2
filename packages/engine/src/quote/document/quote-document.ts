import * as z from 'zod/mini';
import { decimalText } from '../../tariff/index.ts';
import {
  batterySchema,
  degradationSchema,
  generationSchema,
  offeredPlantSchema,
  selfUseSchema,
  useSchema,
} from './energy-part.ts';
import { dayText, plainText, wholeText } from './fields.ts';
import { escalationSchema, loanSchema, priceSchema, subsidySchema, upkeepSchema } from './money-part.ts';

const offer = z.strictObject({
  date: dayText('The day of the quote'),
  validUntil: z.optional(dayText('Last day on which it stands')),
  customer: z.optional(plainText('Who it is for')),
  site: z.optional(plainText('Where the plant will stand')),
  seller: z.optional(plainText('Who sells')),
  licence: z.optional(plainText('Licence of the seller')),
  installer: z.optional(plainText('Who installs')),
  promise: z.optional(plainText('What the seller warrants, and how it is measured')),
  contact: z.optional(plainText('Whom to call after the sale, and how')),
});

const policy = z.strictObject({
  name: plainText('What the case is called'),
  from: wholeText('From the beginning of which year'),
  settlement: z.optional(
    z
      .record(z.string(), z.unknown())
      .check(z.describe('A settlement rule as a tariff has it, in the place of the one in force')),
  ),
  selfUse: z.optional(decimalText('Percent of the generation used at home in this case')),
});

const uncertainty = z.strictObject({
  generation: decimalText('One sigma of the generation over the life, in percent'),
  yearToYear: z.optional(decimalText('One sigma of a year against others, in percent')),
  use: decimalText('One sigma of the use, in percent'),
  escalation: decimalText('One sigma of what rates rise by each year, in percentage points'),
  degradation: decimalText('One sigma of the yearly degradation, in percentage points'),
  useWithEscalation: z.optional(decimalText('Correlation of use and rates, −1 to 1')),
  policy: z.optional(
    z.strictObject({
      name: plainText('The case that may come'),
      percent: decimalText('Chance that it comes within the life, in percent'),
    }),
  ),
  seed: z.optional(wholeText('Seed of the random numbers')),
});

const carbon = z.strictObject({
  factor: decimalText('kg CO2 per kWh'),
  version: plainText('Version and year of the factor'),
  variant: plainText('Average, marginal or life cycle, with or without imports'),
});

/** The quote document as zod checks it. */
export const quoteSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-quote-1'),
  offer,
  locale: z.optional(plainText('Language and grouping of numbers, such as en-IN')),
  tariff: z.optional(
    z
      .strictObject({ id: plainText('Its id'), name: z.optional(plainText('Its name')) })
      .check(z.describe('The tariff that the quote is worked out by; under another one that is asked about')),
  ),
  start: dayText('First day of the plant: the first day of a month'),
  years: wholeText('Life that is looked at'),
  settlementDay: z.optional(
    z.string().check(z.describe('The day of the year that the account chooses for its settlement, as mm-dd')),
  ),
  quantities: z
    .record(z.string(), decimalText('A power'))
    .check(z.describe('Powers of the account by the names of the tariff: sanctioned-load …')),
  use: useSchema,
  plant: offeredPlantSchema,
  generation: generationSchema,
  selfUse: z.optional(selfUseSchema),
  battery: z.optional(batterySchema),
  degradation: degradationSchema,
  escalation: escalationSchema,
  price: priceSchema,
  subsidy: z.optional(subsidySchema),
  loan: z.optional(loanSchema),
  upkeep: upkeepSchema,
  discountRate: decimalText('Percent a year'),
  units: z.optional(
    z
      .enum(['whole', 'thousandths'])
      .check(z.describe('whole: units of a month are rounded half-up to whole ones; left out: whole')),
  ),
  payable: z
    .enum(['as-billed', 'before-rounding'])
    .check(
      z.describe('Whether bills are rounded to what is payable, as the tariff says, or left as their lines'),
    ),
  policies: z.optional(z.array(policy).check(z.describe('Cases of other rules, as data'))),
  uncertainty: z.optional(uncertainty),
  carbon: z.optional(carbon),
});

/** A quote as it is written down: every number a text. */
export type QuoteDocument = z.infer<typeof quoteSchema>;
