import * as z from 'zod/mini';
import { ROUNDING_MODES } from '../quantity/index.ts';
import { chargeSchema, clauseText, decimalText, roundingSchema } from './charge-schema.ts';

const day = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/), z.describe(`${description}, as yyyy-mm-dd`));

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

const version = z.strictObject({
  name: z.string().check(z.minLength(1)),
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
  clause: clauseText,
  charges: z.array(chargeSchema).check(z.minLength(1)),
});

const settlement = z.strictObject({
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
  scheme: z
    .literal('unit-netting')
    .check(z.describe('Units taken less units given, over the billing period')),
  clause: clauseText,
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
    rate: z.optional(decimalText('Money per unit, where it is paid')),
    inBill: z.optional(z.enum(['same', 'next'])),
    label: z.optional(z.string().check(z.minLength(1))),
  }),
});

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
  dayRules: z.optional(z.record(z.string(), dayRule)),
  versionChange,
  versions: z.array(version).check(z.minLength(1)),
  settlements: z.array(settlement).check(z.minLength(1)),
});

/** A tariff document: the rules of one supplier's category, dated, with a clause beside every number. */
export type TariffDocument = z.infer<typeof tariffSchema>;

/** One dated version of the charges. */
export type TariffVersion = TariffDocument['versions'][number];

/** One charge of a version, of one of the closed list of kinds. */
export type Charge = TariffVersion['charges'][number];

/** One dated version of the settlement rules. */
export type SettlementRule = TariffDocument['settlements'][number];

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
