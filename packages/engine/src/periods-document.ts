import * as z from 'zod/mini';

const day = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/), z.describe(`${description}, as yyyy-mm-dd`));

const decimal = (description: string): z.ZodMiniString =>
  z.string().check(
    z.refine((text) => /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(text) && text.length <= 40, { error: 'decimal' }),
    z.describe(`${description}. A decimal number written as text, such as "3.10".`),
  );

const quantities = z
  .record(z.string(), decimal('Units, or a power'))
  .check(
    z.describe('By the names of the tariff: import, export, generation, import@peak, sanctioned-load …'),
  );

/** An account of which units are known, not readings. */
export const unitsAccountSchema = z.strictObject({
  since: z.optional(day('The first day of the account, where the settlement goes by it')),
  settlementDay: z.optional(
    z.string().check(z.regex(/^\d{2}-\d{2}$/), z.describe('The day of the year its owner chose, as mm-dd')),
  ),
  quantities: z.optional(quantities),
  registers: z.optional(
    z
      .record(z.string(), z.string())
      .check(z.describe('Which quantity a register counts, by the name it has on the meter or the bill')),
  ),
  opening: z.optional(
    z
      .record(z.string(), decimal('Units or money'))
      .check(z.describe('Balances brought forward: "credit" of unit netting, or a ledger by its id')),
  ),
});

/** A billing period of which units are known. */
export const unitsPeriodSchema = z.strictObject({
  from: day('First day'),
  to: day('The day after the last, on which the next period begins'),
  quantities,
  provisional: z.optional(
    z.literal(true).check(z.describe('true: units estimated, until a later period replaces it')),
  ),
  replaces: z.optional(
    z
      .string()
      .check(
        z.regex(/^[1-9]\d?$/),
        z.describe(
          'So many provisional periods before this one, whose days it begins with: its units are those read at last',
        ),
      ),
  ),
  changes: z.optional(
    z
      .array(z.strictObject({ from: day('From this day on'), quantities }))
      .check(z.describe('Powers and classes that changed inside the period, in order of time')),
  ),
});

/** An account of which units are known, not readings: what the settlement goes by besides. */
export type UnitsAccount = z.infer<typeof unitsAccountSchema>;

/** A billing period with its units by the names that the tariff uses. */
export type UnitsPeriod = z.infer<typeof unitsPeriodSchema>;
