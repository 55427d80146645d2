import * as z from 'zod/mini';
import { parseDay, type DayNumber, type Finding, type Outcome } from './quantity/index.ts';
import { inFileOrder, locate, readDocument, type SourceText, type Tariff } from './tariff/index.ts';
import {
  accountSchema,
  checkAccount,
  readingsSchema,
  type Account,
  type AccountDocument,
  type ReadingRow,
} from './readings/index.ts';
import {
  checkFinding,
  printedBillSchema,
  readPrintedBill,
  type PrintedBill,
  type PrintedBillDocument,
} from './audit/index.ts';
import { tariffOf } from './household.ts';

const isObject = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const checkSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-check-1'),
  tariff: z.unknown().check(
    z.refine((value) => typeof value === 'string' || isObject(value)),
    z.describe('A tariff document, or the id of a tariff that the program brings along'),
  ),
  account: accountSchema,
  readings: z.optional(readingsSchema.shape.readings),
  connected: z.optional(
    z.string().check(z.describe('The day on which the plant was connected, as yyyy-mm-dd')),
  ),
  opening: z.optional(
    z
      .literal('unknown')
      .check(z.describe('unknown: nobody knows what was brought forward into the first period')),
  ),
  bills: z.array(printedBillSchema).check(z.describe('Printed bills in order of time')),
});

/** Printed bills with what they are checked against, in one file. */
export interface CheckDocument {
  readonly tariff: unknown;
  readonly account: AccountDocument;
  readonly readings?: readonly ReadingRow[] | undefined;
  readonly connected?: string | undefined;
  readonly opening?: 'unknown' | undefined;
  readonly bills: readonly PrintedBillDocument[];
}

/** What a check document holds; each part null when it cannot be used. */
export interface CheckFile {
  /** The id of a tariff that the reader has to know, or the tariff itself. */
  readonly tariff: string | Tariff | null;
  readonly account: Account | null;
  readonly readings: readonly ReadingRow[] | null;
  /** Bills that could be read, in order of time; null where one could not. */
  readonly bills: readonly PrintedBill[] | null;
  readonly connected: DayNumber | null;
  /** false: nobody knows what was brought forward into the first period. */
  readonly isOpeningKnown: boolean;
}

/** A check document that was read, with its text: `locate` puts later findings in their place. */
export interface ReadCheck extends Outcome<CheckFile> {
  readonly source: SourceText;
}

function billsOf(documents: readonly PrintedBillDocument[]): Outcome<readonly PrintedBill[] | null> {
  const read = documents.map((document, at) => readPrintedBill(document, ['bills', at]));
  const findings = read.flatMap((one) => one.findings);
  if (documents.length === 0) findings.push(checkFinding('check/no-bill', { path: ['bills'] }));
  documents.forEach(({ from }, at) => {
    const before = documents[at - 1]?.from;
    if (before !== undefined && from <= before)
      findings.push(
        checkFinding('check/bills-out-of-order', { path: ['bills', at, 'from'] }, { from, before }),
      );
  });
  const bills = read.flatMap(({ value }) => (value === null ? [] : [value]));
  return { value: findings.length > 0 ? null : bills, findings };
}

function connectedOf({ connected }: CheckDocument): Outcome<DayNumber | null> {
  if (connected === undefined) return { value: null, findings: [] };
  const value = parseDay(connected);
  const findings =
    value === null ? [checkFinding('check/no-such-day', { path: ['connected'] }, { value: connected })] : [];
  return { value, findings };
}

/**
 * Read a check document: printed bills, and what they are checked against.
 *
 * @param text  the JSON file, whole
 * @returns     its parts and every finding about its form, its tariff, its account and its bills, with line and
 *              column, in file order
 * @example
 * readCheck('{"format":"unitbook-check-1"}').value.account //=> null
 */
export function readCheck(text: string): ReadCheck {
  const read = readDocument<CheckDocument>(text, checkSchema);
  const { source, mended } = read;
  const tariff = tariffOf(source, mended);
  const account = mended === null ? { value: null, findings: [] } : checkAccount(mended.account);
  const bills = mended === null ? { value: null, findings: [] } : billsOf(mended.bills);
  const connected = mended === null ? { value: null, findings: [] } : connectedOf(mended);
  const own = [
    ...account.findings.map((finding): Finding => ({ ...finding, path: ['account', ...finding.path] })),
    ...bills.findings,
    ...connected.findings,
  ];
  const isWhole = read.value !== null;
  return {
    value: {
      tariff: tariff.value,
      account: isWhole ? account.value : null,
      readings: isWhole ? (read.value.readings ?? []) : null,
      bills: isWhole ? bills.value : null,
      connected: connected.value,
      isOpeningKnown: mended?.opening !== 'unknown',
    },
    findings: inFileOrder([
      ...read.findings,
      ...tariff.findings,
      ...own.map((finding) => locate(source, finding)),
    ]),
    source,
  };
}
