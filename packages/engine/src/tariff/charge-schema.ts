import * as z from 'zod/mini';
import { clauseText, decimalText, labelText, quantityText, rateText, roundingSchema, slug } from './names.ts';

/** The quantities every tariff can name: readings and the account give them, or unit netting works them out. */
export const QUANTITIES = [
  'billed',
  'import',
  'export',
  'generation',
  'self-consumption',
  'total-use',
  'sanctioned-load',
  'plant-capacity',
] as const;

const common = {
  id: slug('Names the line, for other charges to refer to'),
  label: labelText,
  clause: clauseText,
  rounding: z.optional(
    z
      .union([roundingSchema, z.literal('none')])
      .check(z.describe('Overrides the rounding of lines for this charge.')),
  ),
  season: z.optional(slug('The season of the document in which alone it is charged')),
  inTotal: z.optional(
    z.literal(false).check(z.describe('false: worked out for other charges to name, but no part of the sum')),
  ),
};

const scaledBy = z.optional(slug('The day rule that scales it; left out: not scaled'));

const upTo = z.optional(decimalText('The upper limit, included; only the last has none'));

const slab = z.strictObject({
  upTo,
  rate: rateText('Money per unit (kWh)'),
  clause: z.optional(clauseText),
});

const slabs = z.array(slab).check(z.minLength(1), z.describe('In ascending order of `upTo`'));

const chosenBy = z.optional(
  quantityText('The quantity that chooses the slab; left out: the quantity charged'),
);

const slabsCharge = z.strictObject({
  kind: z.literal('slabs'),
  ...common,
  on: quantityText('The quantity charged'),
  method: z
    .enum(['telescopic', 'whole'])
    .check(
      z.describe('telescopic: each part at its own rate; whole: everything at the rate of the slab reached'),
    ),
  chosenBy,
  slabs,
  scaledBy,
});

const slabTablesCharge = z.strictObject({
  kind: z.literal('slab-tables'),
  ...common,
  on: quantityText('The quantity charged'),
  chosenBy,
  tables: z
    .array(z.strictObject({ upTo, slabs }))
    .check(
      z.minLength(1),
      z.describe('The whole quantity chooses the table; inside it slabs are telescopic'),
    ),
  scaledBy,
});

const perUnitCharge = z.strictObject({
  kind: z.literal('per-unit'),
  ...common,
  on: quantityText('The quantity charged'),
  rate: rateText('Money per unit (kWh); a minus sign makes it a subsidy'),
  firstUnits: z.optional(decimalText('Only the first so many units')),
  scaledBy,
});

const band = z.strictObject({ upTo, rate: rateText('Money per kW'), clause: z.optional(clauseText) });

const perKilowattCharge = z.strictObject({
  kind: z.literal('per-kilowatt'),
  ...common,
  on: quantityText('The power charged'),
  rate: z.optional(rateText('Money per kW, where there are no bands')),
  bands: z.optional(z.array(band).check(z.minLength(1))),
  method: z.optional(z.enum(['telescopic', 'whole'])),
  chosenBy,
  scaledBy,
});

const fixedCharge = z.strictObject({
  kind: z.literal('fixed'),
  ...common,
  amount: z.optional(rateText('Money, where it does not depend on a slab')),
  chosenBy,
  steps: z.optional(z.array(z.strictObject({ upTo, amount: rateText('Money') })).check(z.minLength(1))),
  scaledBy,
});

const base = z.union([
  slug('A line above'),
  z.strictObject({
    line: slug('A line above, charged again on another quantity for this base only'),
    recomputedOn: quantityText('That quantity'),
  }),
]);

const percentageCharge = z.strictObject({
  kind: z.literal('percentage'),
  ...common,
  percent: z.optional(rateText('Percent of the base; a minus sign makes it a rebate')),
  chosenBy,
  steps: z.optional(
    z.array(z.strictObject({ upTo, percent: rateText('Percent of the base') })).check(z.minLength(1)),
  ),
  of: z.array(base).check(z.minLength(1), z.describe('The base: lines above, summed')),
  inside: z.optional(
    z
      .literal(true)
      .check(
        z.describe(
          'true: the percentage is of the base with the tax in it, so that it comes to base × percent ÷ (100 − percent)',
        ),
      ),
  ),
});

const minimumCharge = z.strictObject({
  kind: z.literal('minimum'),
  ...common,
  amount: rateText('The least that the lines named must come to'),
  of: z.array(slug('A line above')).check(z.minLength(1)),
  as: z
    .enum(['shortfall', 'floor'])
    .check(
      z.describe(
        'shortfall: a line of its own for what is missing; floor: one line in place of the lines named',
      ),
    ),
  scaledBy,
});

const creditCharge = z.strictObject({
  kind: z.literal('credit'),
  ...common,
  earned: z.optional(
    z
      .array(slug('A line above'))
      .check(
        z.minLength(1),
        z.describe('Lines above whose amounts are the credit earned; they are no part of the sum'),
      ),
  ),
  ledger: z.optional(
    slug('The money ledger whose balance is used first, and which takes what the bill leaves'),
  ),
  against: z
    .array(slug('A line above'))
    .check(z.minLength(1), z.describe('The lines above that the credit may meet')),
  percent: z.optional(decimalText('At most so much of those lines is met; left out: all')),
  left: z
    .enum(['lapses', 'carried'])
    .check(z.describe('What becomes of credit that these lines do not take; "carried" needs a ledger')),
});

export const chargeSchema = z.discriminatedUnion('kind', [
  slabsCharge,
  slabTablesCharge,
  perUnitCharge,
  perKilowattCharge,
  fixedCharge,
  percentageCharge,
  minimumCharge,
  creditCharge,
]);
