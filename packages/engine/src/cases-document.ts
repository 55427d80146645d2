import * as z from 'zod/mini';
import { isDecimalText, type Outcome } from './quantity/index.ts';
import { readDocument, type SourceText } from './tariff/index.ts';
import { unitsAccountSchema, unitsPeriodSchema } from './periods-document.ts';

const exact = z.string().check(
  z.refine((text) => isDecimalText(text) || /^-?\d{1,40}\/0*[1-9]\d{0,14}$/.test(text), {
    error: 'decimal',
    abort: true,
  }),
  z.describe('A decimal number written as text, such as "3.10", or a fraction such as "190/3".'),
);

const ledgerColumns = z.strictObject({
  opening: z.optional(exact),
  added: z.optional(exact),
  used: z.optional(exact),
  paid: z.optional(exact),
  lapsed: z.optional(exact),
  closing: z.optional(exact),
});

const expected = z.strictObject({
  payable: z.optional(exact.check(z.describe('What is to be paid; below 0 in the favour of the account'))),
  sum: z.optional(exact.check(z.describe('The sum of the lines, before the total is rounded'))),
  lines: z.optional(z.record(z.string(), exact).check(z.describe('Amounts by the id of the charge'))),
  quantities: z.optional(z.record(z.string(), exact).check(z.describe('Units and powers by name'))),
  ledgers: z.optional(
    z
      .record(z.string(), ledgerColumns)
      .check(z.describe('By the id of the ledger; "credit" for the bank of unit netting')),
  ),
});

const source = z.strictObject({
  title: z.string().check(z.minLength(1)),
  publisher: z.string().check(z.minLength(1)),
  year: z
    .string()
    .check(z.regex(/^(\d{4}([-–]\d{2,4})?|n\.d\.)$/), z.describe('Year of publication, or "n.d."')),
  address: z.optional(z.string()),
});

const workedCase = z.strictObject({
  id: z.string().check(z.regex(/^[A-Za-z0-9-]+$/)),
  title: z.string().check(z.minLength(1)),
  kind: z
    .enum(['published', 'constructed', 'invented', 'from-memory'])
    .check(
      z.describe(
        'published: figures read in the source; constructed: worked out by hand from a published rule; invented; from-memory: not read again',
      ),
    ),
  rules: z.optional(
    z
      .array(z.string())
      .check(z.describe('What the case shows, in a word or two each, such as "time blocks"')),
  ),
  source: z.optional(source),
  notes: z.optional(z.array(z.string())),
  account: z.optional(unitsAccountSchema),
  periods: z
    .array(z.extend(unitsPeriodSchema, { expected: z.optional(expected) }))
    .check(z.minLength(1), z.describe('Billing periods in order, each beginning where the one before ends')),
});

/** The file of worked cases as zod checks it. */
export const casesSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-cases-1'),
  cases: z.array(workedCase).check(z.minLength(1)),
});

/** Worked bills with what they come to. */
export type CasesDocument = z.infer<typeof casesSchema>;

/** One worked bill, of one period or several. */
export type WorkedCase = CasesDocument['cases'][number];

/** What a period of a case comes to. */
export type ExpectedFigures = NonNullable<WorkedCase['periods'][number]['expected']>;

/** Cases that were read, with their text. */
export interface ReadCases extends Outcome<CasesDocument | null> {
  readonly source: SourceText;
}

/**
 * Read a file of worked cases: every problem of form at once, with line and column.
 *
 * @param text  the JSON file, whole
 * @example
 * readCases('{}').value //=> null
 */
export function readCases(text: string): ReadCases {
  const { value, findings, source: read } = readDocument<CasesDocument>(text, casesSchema);
  return { value, findings, source: read };
}

/** The JSON Schema of a file of worked cases. */
export function casesJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(casesSchema);
}
