import * as z from 'zod/mini';
import { isDecimalText, ROUNDING_MODES } from '../quantity/index.ts';

/** A number written as text, so that no reader turns it into a binary fraction on the way. */
export const decimalText = (description: string): z.ZodMiniString =>
  z.string().check(
    z.refine((text) => isDecimalText(text), { error: 'decimal', abort: true }),
    z.describe(`${description}. A decimal number written as text, such as "3.10".`),
  );

/** The clause a number stands in: the key of a source, then the place in it. */
export const clauseText: z.ZodMiniString = z
  .string()
  .check(
    z.minLength(1),
    z.describe('The clause: the key of one of the sources, then the place, such as "TO-2024 cl. 4.2".'),
  );

const name = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^[a-z][a-z0-9-]*$/), z.describe(description));

const label = z.string().check(z.minLength(1), z.describe('What the bill prints beside the amount.'));

/** The quantities a charge can be counted on. */
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

const quantity = (description: string): z.ZodMiniEnum<{ [Key in (typeof QUANTITIES)[number]]: Key }> =>
  z.enum(QUANTITIES).check(z.describe(description));

const POWERS = ['sanctioned-load', 'plant-capacity'] as const;

export const roundingSchema = z.strictObject({
  step: decimalText('Round to whole multiples of this'),
  mode: z
    .enum(ROUNDING_MODES)
    .check(z.describe('half-up, half-even … on the magnitude; floor, ceiling … signed')),
});

const common = {
  id: name('Names the line, for other charges to refer to'),
  label,
  clause: clauseText,
  rounding: z.optional(
    z
      .union([roundingSchema, z.literal('none')])
      .check(z.describe('Overrides the rounding of lines for this charge.')),
  ),
};

const scaledBy = z.optional(name('The day rule that scales it; left out: not scaled'));

const upTo = z.optional(decimalText('The upper limit, included; only the last has none'));

const slab = z.strictObject({
  upTo,
  rate: decimalText('Money per unit (kWh)'),
  clause: z.optional(clauseText),
});

const slabs = z.array(slab).check(z.minLength(1), z.describe('In ascending order of `upTo`'));

const chosenBy = z.optional(quantity('The quantity that chooses the slab; left out: the quantity charged'));

const slabsCharge = z.strictObject({
  kind: z.literal('slabs'),
  ...common,
  on: quantity('The quantity charged'),
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
  on: quantity('The quantity charged'),
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
  on: quantity('The quantity charged'),
  rate: decimalText('Money per unit (kWh); a minus sign makes it a subsidy'),
  firstUnits: z.optional(decimalText('Only the first so many units')),
  scaledBy,
});

const band = z.strictObject({ upTo, rate: decimalText('Money per kW'), clause: z.optional(clauseText) });

const perKilowattCharge = z.strictObject({
  kind: z.literal('per-kilowatt'),
  ...common,
  on: z.enum(POWERS).check(z.describe('The power charged')),
  rate: z.optional(decimalText('Money per kW, where there are no bands')),
  bands: z.optional(z.array(band).check(z.minLength(1))),
  method: z.optional(z.enum(['telescopic', 'whole'])),
  chosenBy,
  scaledBy,
});

const fixedCharge = z.strictObject({
  kind: z.literal('fixed'),
  ...common,
  amount: z.optional(decimalText('Money, where it does not depend on a slab')),
  chosenBy,
  steps: z.optional(z.array(z.strictObject({ upTo, amount: decimalText('Money') })).check(z.minLength(1))),
  scaledBy,
});

const base = z.union([
  name('A line above'),
  z.strictObject({
    line: name('A line above, charged again on another quantity for this base only'),
    recomputedOn: quantity('That quantity'),
  }),
]);

const percentageCharge = z.strictObject({
  kind: z.literal('percentage'),
  ...common,
  percent: z.optional(decimalText('Percent of the base; a minus sign makes it a rebate')),
  chosenBy,
  steps: z.optional(
    z.array(z.strictObject({ upTo, percent: decimalText('Percent of the base') })).check(z.minLength(1)),
  ),
  of: z.array(base).check(z.minLength(1), z.describe('The base: lines above, summed')),
});

const minimumCharge = z.strictObject({
  kind: z.literal('minimum'),
  ...common,
  amount: decimalText('The least that the lines named must come to'),
  of: z.array(name('A line above')).check(z.minLength(1)),
  as: z
    .enum(['shortfall', 'floor'])
    .check(
      z.describe(
        'shortfall: a line of its own for what is missing; floor: one line in place of the lines named',
      ),
    ),
  scaledBy,
});

export const chargeSchema = z.discriminatedUnion('kind', [
  slabsCharge,
  slabTablesCharge,
  perUnitCharge,
  perKilowattCharge,
  fixedCharge,
  percentageCharge,
  minimumCharge,
]);
