import * as z from 'zod/mini';
import { decimalText } from '../../tariff/index.ts';

/** Calendar months by their two digits, January to December. */
export const MONTH_KEYS = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'] as const;

/** A calendar month by its two digits. */
export type MonthKey = (typeof MONTH_KEYS)[number];

/** A day as text. */
export const dayText = (description: string): z.ZodMiniString =>
  z.string().check(z.describe(`${description}, as yyyy-mm-dd`));

/** A text that is printed as it stands. */
export const plainText = (description: string): z.ZodMiniString => z.string().check(z.describe(description));

/** A whole number of years or months as text. */
export const wholeText = (description: string): z.ZodMiniString =>
  decimalText(`${description}. A whole number`);

/** Values by calendar month; months may be missing. */
export const byMonth = (description: string): z.ZodMiniRecord<z.ZodMiniString, z.ZodMiniString> =>
  z
    .record(z.string(), decimalText('Value of the month'))
    .check(z.describe(`${description}, by calendar month "01" to "12"`));
