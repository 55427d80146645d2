import * as z from 'zod/mini';
import { ROUNDING_MODES } from '../../quantity/index.ts';
import { decimalText } from '../../tariff/index.ts';

/** How days become a part of a year. */
const DAY_COUNTS = ['365', '360', 'calendar'] as const;

const text = (description: string): z.ZodMiniString =>
  z.string().check(z.minLength(1), z.describe(description));
const day = (description: string): z.ZodMiniString =>
  z.string().check(z.describe(`${description}, as yyyy-mm-dd`));
const clause = text('The clause: the key of one of the sources, then the place, such as "SC-2020 cl. 8.2"');
const name = z.string().check(z.regex(/^[a-z][a-z0-9-]*$/), z.describe('Small letters, digits and hyphens'));
const dated = {
  from: day('First day in force'),
  through: z.optional(day('Last day in force; left out: still in force')),
};

const source = z.strictObject({
  title: text('Title'),
  publisher: text('Who published it'),
  year: z.string().check(z.regex(/^(\d{4}|n\.d\.)$/), z.describe('Year of publication, or "n.d."')),
  note: z.optional(z.string()),
});

const limit = z.strictObject({
  of: text('What has to happen in that time, such as "the answer about an arithmetic error"'),
  within: decimalText('So many; "0": on the same day. A whole number'),
  unit: z.enum(['days', 'working-days', 'months']),
  from: text('What the time runs from, such as "the complaint"'),
  clause,
});

const step = z.strictObject({
  id: name,
  name: text('What the step is called'),
  body: text('Who is written to'),
  clause,
  limits: z.optional(z.array(limit).check(z.describe('Times that belong to it'))),
});

const rate = z.strictObject({ ...dated, percent: decimalText('Percent a year'), clause });

const interest = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('simple'),
    clause,
    on: z
      .enum(['payable', 'sum'])
      .check(z.describe('Interest on what was to be paid as rounded, or on the sum before it was rounded')),
    dayCount: z
      .enum(DAY_COUNTS)
      .check(z.describe('365, 360: days of every year; calendar: 366 in a leap year')),
    rounding: z.strictObject({
      step: decimalText('Round to whole multiples of this'),
      mode: z.enum(ROUNDING_MODES),
    }),
    roundedAt: z.enum(['bill', 'sum']).check(z.describe('Interest is rounded for each bill, or once in all')),
    rates: z.array(rate).check(z.minLength(1), z.describe('Rates, each with the days on which it runs')),
  }),
  z.strictObject({ kind: z.literal('none'), clause }),
]);

const months = z.strictObject({
  months: decimalText('Whole months'),
  from: z
    .enum(['period-end', 'issued', 'due', 'paid'])
    .check(z.describe('From the last reading of the bill, its day, the day it was due or the payment')),
  clause,
});

const version = z.strictObject({
  ...dated,
  clause,
  steps: z.array(step).check(z.minLength(1), z.describe('The usual steps in their order')),
  interest: z.optional(interest.check(z.describe('Interest on a refund; left out: not known'))),
  claim: z.optional(months.check(z.describe('How far back a household can claim'))),
  arrears: z.optional(months.check(z.describe('How far back a supplier can claim'))),
  lateFee: z.optional(
    z.strictObject({ percent: decimalText('Percent a month'), on: text('What it is taken on'), clause }),
  ),
});

/** The dispute document as zod checks it. */
export const disputeSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-dispute-1'),
  id: name,
  name: text('What these rules are called'),
  place: text('Where they hold'),
  invented: z.optional(z.boolean().check(z.describe('true: for demos, no real place'))),
  sources: z.record(z.string().check(z.regex(/^\S+$/)), source),
  versions: z.array(version).check(z.minLength(1)),
});

/** How a wrong bill is disputed in a place, dated, with a clause beside every number. */
export type DisputeDocument = z.infer<typeof disputeSchema>;

/** One dated version of it. */
export type DisputeVersion = DisputeDocument['versions'][number];

/** A step: who is written to, and the times that belong to it. */
export type DisputeStep = DisputeVersion['steps'][number];

/** A rule for interest on a refund. */
export type InterestRule = NonNullable<DisputeVersion['interest']>;

/** Interest that is paid: simple, at dated rates. */
export type SimpleInterest = Extract<InterestRule, { readonly kind: 'simple' }>;

/** A time within which something can be claimed. */
export type ClaimLimit = NonNullable<DisputeVersion['claim']>;

/**
 * The JSON Schema of a dispute document, for editors.
 *
 * @returns a JSON Schema (draft 2020-12) as a plain object
 * @example
 * disputeJsonSchema().type //=> "object"
 */
export function disputeJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(disputeSchema);
}
