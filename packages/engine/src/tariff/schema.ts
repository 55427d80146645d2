import * as z from 'zod/mini';
import { ROUNDING_MODES } from '../quantity/index.ts';
import { chargeSchema } from './charge-schema.ts';
import { ledgerSchema } from './ledger-schema.ts';
import { clauseText, dayText as day, decimalText, rateText, roundingSchema } from './names.ts';
import { priceSchema } from './price-schema.ts';
import { definitionSchema, measureSchema } from './quantity-schema.ts';
import { sharingSchema } from './sharing-schema.ts';
import { seasonSchema, timeBlocksSchema } from './time-block-schema.ts';

const source = z.strictObject({
  title: z.string().check(z.minLength(1)),
  publisher: z.string().check(z.minLength(1)),
  year: z.string().check(z.regex(/^(\d{4}|n\.d\.)$/), z.describe('Year of publication, or "n.d."')),
  note: z.optional(z.string()),
});

const units = z.strictObject({
  clause: clauseText,
  decimals: z
    .enum(['0', '1', '2', '3'])
    .check(z.describe('Decimals of a billed unit: "0" bills whole units')),
  rounding: z.enum(ROUNDING_MODES).check(z.describe('How decimals beyond that are dropped')),
  roundedAt: z
    .enum(['reading', 'difference'])
    .check(
      z.describe('reading: each reading (times the multiplying factor); difference: the units of a period'),
    ),
});

const rounding = z.strictObject({
  clause: clauseText,
  line: z
    .union([roundingSchema, z.literal('none')])
    .check(z.describe('Every line, where it says nothing else')),
  total: z.union([roundingSchema, z.literal('none')]),
  differenceLabel: z.optional(z.string().check(z.minLength(1))),
});

const dayRuleCommon = {
  clause: clauseText,
  unscaledFrom: z.optional(decimalText('From so many days …')),
  unscaledThrough: z.optional(decimalText('… through so many days nothing is scaled')),
  factor: z.optional(roundingSchema.check(z.describe('Rounding of the factor; left out: exact'))),
  limits: z.optional(roundingSchema.check(z.describe('Rounding of scaled limits; left out: exact'))),
};

const dayRule = z.discriminatedUnion('rule', [
  z.strictObject({
    rule: z.literal('days-over'),
    divisor: decimalText('Factor = billing days ÷ this'),
    ...dayRuleCommon,
  }),
  z.strictObject({
    rule: z.literal('calendar-months'),
    rounded: z.enum(['each-month', 'sum']).check(z.describe('What the rounding of the factor is applied to')),
    ...dayRuleCommon,
  }),
]);

const versionChange = z.discriminatedUnion('rule', [
  z.strictObject({
    rule: z.literal('split-by-days'),
    clause: clauseText,
    units: z.enum(['exact', 'whole']).check(z.describe('whole: whole units each, by largest remainder')),
    factor: z
      .enum(['days-of-part', 'share-of-period'])
      .check(z.describe('Day rules: on the days of each part, or the factor of the period shared by days')),
  }),
  z.strictObject({
    rule: z.enum(['in-force-on-first-day', 'in-force-on-last-day']),
    clause: clauseText,
  }),
]);

const trueUp = z.strictObject({
  clause: clauseText,
  spread: z
    .enum(['by-days', 'equal-parts'])
    .check(z.describe('How units read at last are spread over the periods that were billed provisionally')),
  units: z.enum(['exact', 'whole']).check(z.describe('whole: whole units each, by largest remainder')),
});

const version = z.strictObject({
  name: z.string().check(z.minLength(1)),
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
  clause: clauseText,
  charges: z.array(chargeSchema).check(z.minLength(1)),
});

const plantLimit = z.strictObject({
  clause: clauseText,
  most: z.optional(decimalText('kW of plant at most')),
  percentOfLoad: z.optional(decimalText('Percent of the sanctioned load at most')),
});

/** Up to which size a plant is admitted. */
const admitted = z.optional(
  plantLimit.check(z.describe('The largest plant that the rule admits; bills do not look at it, quotes do')),
);

const unitNetting = z.strictObject({
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
  scheme: z
    .literal('unit-netting')
    .check(z.describe('Units taken less units given, over the billing period')),
  clause: clauseText,
  plantLimit: admitted,
  cap: z.optional(
    z.strictObject({
      clause: clauseText,
      percent: decimalText('At most so much of the quantity is set off in a period'),
      of: z.enum(['import', 'generation', 'total-use']),
      excess: z.enum(['carried', 'lapses']),
    }),
  ),
  carry: z.optional(
    z.strictObject({ clause: clauseText }).check(z.describe('Left over units go to the next period')),
  ),
  close: z.strictObject({
    clause: clauseText,
    on: z
      .string()
      .check(
        z.regex(/^(every-period|\d{2}-\d{2})$/),
        z.describe(
          '"every-period", or the day of the year as mm-dd: the period that holds it closes the bank',
        ),
      ),
    surplus: z.enum(['paid', 'lapses']),
    rate: z.optional(rateText('Money per unit, where it is paid')),
    inBill: z.optional(z.enum(['same', 'next'])),
    label: z.optional(z.string().check(z.minLength(1))),
  }),
});

const ledgers = z.strictObject({
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
  scheme: z
    .literal('ledgers')
    .check(z.describe('Quantities worked out one by one, and ledgers of units or money')),
  clause: clauseText,
  plantLimit: admitted,
  quantities: z.optional(
    z.array(definitionSchema).check(z.describe('Worked out in this order, each from those above')),
  ),
  ledgers: z.optional(z.array(ledgerSchema).check(z.describe('What goes from one period to the next'))),
  sharing: z.optional(sharingSchema.check(z.describe('How the units of a pool are shared among accounts'))),
});

const named = z.string().check(z.regex(/^[a-z][a-z0-9-]*$/));

/** The tariff document as zod checks it. */
export const tariffSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-tariff-1'),
  id: z.string().check(z.regex(/^[a-z0-9-]+$/), z.describe('Small letters, digits and hyphens')),
  name: z.string().check(z.minLength(1)),
  supplier: z.string().check(z.minLength(1)),
  invented: z.optional(z.boolean().check(z.describe('true: for demos, no real place'))),
  currency: z.string().check(z.regex(/^[A-Z]{3}$/), z.describe('A currency code of ISO 4217, such as "INR"')),
  sources: z.record(z.string().check(z.regex(/^\S+$/)), source),
  units,
  rounding,
  measures: z.optional(
    z
      .record(named, measureSchema)
      .check(z.describe('Quantities that are given and that not every tariff knows, by name')),
  ),
  prices: z.optional(z.record(named, priceSchema).check(z.describe('Dated or worked-out prices, by name'))),
  timeBlocks: z.optional(
    timeBlocksSchema.check(z.describe('Hours of the day that are metered or priced apart')),
  ),
  seasons: z.optional(
    z
      .record(named, seasonSchema)
      .check(z.describe('Parts of every year in which charges or time blocks apply, by name')),
  ),
  dayRules: z.optional(z.record(z.string(), dayRule)),
  versionChange,
  trueUp: z.optional(trueUp.check(z.describe('How provisional bills are set right when the reading comes'))),
  versions: z.array(version).check(z.minLength(1)),
  settlements: z.array(z.discriminatedUnion('scheme', [unitNetting, ledgers])).check(z.minLength(1)),
});

/** A tariff document: the rules of one supplier's category, dated, with a clause beside every number. */
export type TariffDocument = z.infer<typeof tariffSchema>;

/** One dated version of the charges. */
export type TariffVersion = TariffDocument['versions'][number];

/** One charge of a version, of one of the closed list of kinds. */
export type Charge = TariffVersion['charges'][number];

/** One dated version of the settlement rules. */
export type SettlementRule = TariffDocument['settlements'][number];

/** Units set off against units over the billing period, with one bank: the commonest scheme, in few words. */
export type UnitNettingRule = SettlementRule & { readonly scheme: 'unit-netting' };

/** Any scheme, written as quantities worked out one by one and ledgers. */
export type LedgersRule = SettlementRule & { readonly scheme: 'ledgers' };

/** A rule for the billing days that scales limits and amounts. */
export type DayRule = NonNullable<TariffDocument['dayRules']>[string];

/**
 * The JSON Schema of a tariff document, for editors to complete and check one while it is written.
 *
 * @returns a JSON Schema (draft 2020-12) as a plain object
 * @example
 * tariffJsonSchema().type //=> "object"
 */
export function tariffJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(tariffSchema);
}
