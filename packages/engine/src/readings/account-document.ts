import * as z from 'zod/mini';

/** A number as text, the way people type it: "3 kW" and "3,3" are read. */
const typedNumber = (description: string): z.ZodMiniString =>
  z.string().check(z.describe(`${description}. A number written as text, such as "3.3".`));

/** Classes of accuracy that nameplates name. */
export const ACCURACY_CLASSES = ['0.2S', '0.5S', '1', '2', 'A', 'B', 'C'] as const;

/** One register as zod checks it. */
export const registerSchema = z.strictObject({
  digits: z.enum(['4', '5', '6', '7', '8']).check(z.describe('Digits before the point')),
  decimals: z.enum(['0', '1', '2', '3']).check(z.describe('Digits after the point, often red')),
});

const rateSchema = z.strictObject({
  id: z
    .string()
    .check(z.regex(/^[A-Za-z0-9]{1,12}$/), z.describe('The rate as the display numbers it, such as "1"')),
  block: z.optional(z.string().check(z.describe('The time block of the tariff that this rate stands for'))),
});

/** A register of the two-way meter as zod checks it: it can count several rates. */
export const gridRegisterSchema = z.strictObject({
  ...registerSchema.shape,
  rates: z.optional(
    z
      .array(rateSchema)
      .check(z.minLength(2), z.describe('The registers of the rates, where the meter has one for each')),
  ),
});

const meterCommon = {
  serial: z.string(),
  multiplyingFactor: typedNumber('What a reading is multiplied by: 1 on a meter connected directly'),
  accuracyClass: z.optional(
    z
      .enum(ACCURACY_CLASSES)
      .check(z.describe('The class on the nameplate: how far the meter may be from the truth')),
  ),
};

const laterCommon = {
  from: z.string().check(z.describe('The day from which it counts, as yyyy-mm-dd')),
  ...meterCommon,
};

/** The account document as zod checks it. */
export const accountSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-account-1'),
  id: z.string(),
  name: z.optional(z.string()),
  locale: z.optional(z.string().check(z.describe('How numbers are grouped, such as "en-IN"'))),
  sanctionedLoad: typedNumber('Sanctioned load of the connection in kW, from the bill'),
  plantCapacity: typedNumber('Capacity of the solar plant in kWp, from the invoice'),
  batteryCapacity: z.optional(
    typedNumber('What the battery of the house holds in kWh; left out: there is none'),
  ),
  since: z.optional(
    z
      .string()
      .check(z.describe('The first day of the account, where the settlement goes by it, as yyyy-mm-dd')),
  ),
  settlementDay: z.optional(
    z.string().check(z.describe('The day of the year that its owner chose for the settlement, as mm-dd')),
  ),
  openingCredit: typedNumber('Credit units brought forward into the first period; "0" for none'),
  confirmed: z.optional(
    z
      .array(z.string())
      .check(z.describe('Questions about this document answered with "it is right": code:key')),
  ),
  meters: z.strictObject({
    grid: z.strictObject({
      ...meterCommon,
      import: gridRegisterSchema,
      export: gridRegisterSchema,
      later: z.optional(
        z
          .array(z.strictObject({ ...laterCommon, import: gridRegisterSchema, export: gridRegisterSchema }))
          .check(z.describe('Meters that took its place, and factors that changed, in order of time')),
      ),
    }),
    generation: z.optional(
      z.strictObject({
        ...meterCommon,
        generation: registerSchema,
        later: z.optional(z.array(z.strictObject({ ...laterCommon, generation: registerSchema }))),
      }),
    ),
  }),
});

/** An account document: the connection, the plant and the meters of one household. */
export type AccountDocument = z.infer<typeof accountSchema>;
