import * as z from 'zod/mini';
import type { DayNumber, Finding, Outcome } from '../quantity/index.ts';
import { inFileOrder, readDocument } from '../tariff/index.ts';
import type { Account } from './account.ts';
import { checkPair, isInFuture } from './check-pair.ts';
import { readingFinding } from './findings.ts';
import { readRow } from './read-row.ts';
import type { Reading, ReadingPair, ReadingRow } from './reading.ts';

/** The readings document as zod checks it. */
export const readingsSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-readings-1'),
  readings: z.array(
    z.strictObject({
      date: z.string(),
      import: z.string(),
      export: z.string(),
      generation: z.optional(z.string()),
      status: z.optional(z.enum(['actual', 'estimated'])),
      printedDays: z.optional(z.string()),
      confirmed: z.optional(z.array(z.string())),
    }),
  ),
});

/** A readings document: rows in order of time, numbers as text. */
export type ReadingsDocument = z.infer<typeof readingsSchema>;

/**
 * Read a readings document.
 *
 * @param text  the JSON file, whole
 * @returns     its rows, or null when it has not the right form; findings with line and column
 * @example
 * readReadingsDocument('{"format":"unitbook-readings-1","readings":[]}').value.length //=> 0
 */
export function readReadingsDocument(text: string): Outcome<readonly ReadingRow[] | null> {
  const read = readDocument<ReadingsDocument>(text, readingsSchema);
  return { value: read.value?.readings ?? null, findings: inFileOrder(read.findings) };
}

/** How readings are read. */
export interface ReadReadingsOptions {
  /** The last day a reading can have; left out: not checked. */
  readonly today?: DayNumber;
}

/**
 * Understand readings in order of time and pair each with the one before.
 *
 * @param rows     as typed
 * @param account  whose registers they are
 * @returns        the pairs from the first reading up to the first that cannot be used, since the credit
 *                 of every later bill hangs on it; findings about all rows
 */
export function readReadings(
  rows: readonly ReadingRow[],
  account: Account,
  options: ReadReadingsOptions = {},
): Outcome<readonly ReadingPair[]> {
  const findings: Finding[] = [];
  const pairs: ReadingPair[] = [];
  let before: Reading | null = null;
  let isUnbroken = true;
  let follows = false;
  rows.forEach((row, index) => {
    const reading = readRow(row, { account, before, path: ['readings', index], findings });
    if (reading === null || isInFuture(reading, options.today, findings)) isUnbroken = false;
    // After a row that cannot be read, the days and units to the reading before it would puzzle for nothing.
    const from = follows ? before : null;
    follows = reading !== null;
    if (reading === null) return;
    const pair = from === null ? null : checkPair({ account, from, to: reading }, findings);
    if (from !== null && pair === null) isUnbroken = false;
    if (isUnbroken && pair !== null) pairs.push(pair);
    before = reading;
  });
  if (rows.length < 2) {
    findings.unshift(readingFinding('reading/none', { path: ['readings'] }, { count: String(rows.length) }));
  }
  return { value: pairs, findings };
}
