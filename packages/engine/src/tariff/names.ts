import * as z from 'zod/mini';
import { isDecimalText, ROUNDING_MODES } from '../quantity/index.ts';

const SLUG = /^[a-z][a-z0-9-]*$/;
/** A quantity: its name; `netting.name` for what a netting left of it; `@block` for its part in a time block. */
const QUANTITY = /^[a-z][a-z0-9-]*(\.[a-z][a-z0-9-]*)?(@[a-z][a-z0-9-]*)?$/;

/** A name that a document gives to something: small letters, digits, hyphens. */
export const slug = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(SLUG), z.describe(description));

/** The name of a quantity: of the list, of a measure, worked out, or of a time block. */
export const quantityText = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(QUANTITY), z.describe(description));

/** A number written as text, so that no reader turns it into a binary fraction on the way. */
export const decimalText = (description: string): z.ZodMiniString =>
  z.string().check(
    z.refine((text) => isDecimalText(text), { error: 'decimal', abort: true }),
    z.describe(`${description}. A decimal number written as text, such as "3.10".`),
  );

/** A number, or the name of one of the document's prices, which stands for the number of the day. */
export const rateText = (description: string): z.ZodMiniString =>
  z.string().check(
    z.refine((text) => isDecimalText(text) || SLUG.test(text), { error: 'decimal', abort: true }),
    z.describe(
      `${description}. A decimal number written as text, such as "3.10", or the name of one of the prices.`,
    ),
  );

/** A number, or the name of a quantity. */
export const operandText = (description: string): z.ZodMiniString =>
  z.string().check(
    z.refine((text) => isDecimalText(text) || QUANTITY.test(text), { error: 'decimal', abort: true }),
    z.describe(
      `${description}. The name of a quantity, or a decimal number written as text, such as "3.10".`,
    ),
  );

/** The clause a number stands in: the key of a source, then the place in it. */
export const clauseText: z.ZodMiniString = z
  .string()
  .check(
    z.minLength(1),
    z.describe('The clause: the key of one of the sources, then the place, such as "TO-2024 cl. 4.2".'),
  );

/** A day of the calendar. */
export const dayText = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/), z.describe(`${description}, as yyyy-mm-dd`));

/** A day of every year. */
export const monthDayText = (description: string): z.ZodMiniString =>
  z.string().check(z.regex(/^\d{2}-\d{2}$/), z.describe(`${description}, as mm-dd`));

/** What a document calls something on a bill. */
export const labelText: z.ZodMiniString = z
  .string()
  .check(z.minLength(1), z.describe('What the bill prints beside the amount.'));

/** A whole number from 1 on, as text. */
export const countText = (description: string): z.ZodMiniString =>
  z
    .string()
    .check(z.regex(/^[1-9]\d{0,2}$/), z.describe(`${description}. A whole number as text, such as "12".`));

/** A rounding as data: to which step, and how. */
export const roundingSchema = z.strictObject({
  step: decimalText('Round to whole multiples of this'),
  mode: z
    .enum(ROUNDING_MODES)
    .check(z.describe('half-up, half-even … on the magnitude; floor, ceiling … signed')),
});
