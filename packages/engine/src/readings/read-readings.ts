import * as z from 'zod/mini';
import { dayText, type DayNumber, type Finding, type Outcome } from '../quantity/index.ts';
import { inFileOrder, readDocument } from '../tariff/index.ts';
import type { Account } from './account.ts';
import { checkPair, isInFuture } from './check-pair.ts';
import { readingFinding } from './findings.ts';
import { changeInside, checkChangedPeriod } from './meter-change.ts';
import { spanOn } from './meter-spans.ts';
import { readRow } from './read-row.ts';
import { EDIT_METHODS, type Reading, type ReadingPair, type ReadingRow } from './reading.ts';

const registerId = z.enum(['import', 'export', 'generation']);
/** A register by its key: "import", "import-1". */
const REGISTER_KEY = /^(?:import|export|generation)(?:-[A-Za-z0-9]{1,12})?$/;
const rateTexts = z.optional(z.record(z.string(), z.string()));

/** The readings document as zod checks it. */
export const readingsSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-readings-1'),
  readings: z.array(
    z.strictObject({
      date: z.string(),
      import: z.optional(z.string()),
      export: z.optional(z.string()),
      generation: z.optional(z.string()),
      rates: z.optional(z.strictObject({ import: rateTexts, export: rateTexts })),
      event: z.optional(z.enum(['final', 'first'])),
      estimated: z.optional(z.array(registerId)),
      edits: z.optional(
        z.array(
          z.strictObject({
            register: z.string().check(z.regex(REGISTER_KEY)),
            raw: z.string(),
            wasEstimated: z.optional(z.boolean()),
            method: z.enum(EDIT_METHODS),
            note: z.optional(z.string()),
          }),
        ),
      ),
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

/** Pairs readings one after the other. */
class Pairing {
  readonly findings: Finding[] = [];
  readonly pairs: ReadingPair[] = [];
  private readonly account: Account;
  private before: Reading | null = null;
  /** The last reading before that one in which nothing was estimated. */
  private actual: Reading | null = null;
  /** The days of the last period; null before there was one. */
  private daysBefore: number | null = null;
  private events: Reading[] = [];
  private isUnbroken = true;
  private follows = false;

  constructor(account: Account) {
    this.account = account;
  }

  /** Take one row. */
  take(row: ReadingRow, index: number, today: DayNumber | undefined): void {
    const { account, findings } = this;
    const last = this.events.at(-1) ?? this.before;
    const before = row.event === 'first' ? null : last;
    const reading = readRow(row, { account, before, path: ['readings', index], findings });
    if (reading === null || isInFuture(reading, today, findings)) this.isUnbroken = false;
    // After a row that cannot be read, the days and units to the reading before it would puzzle for nothing.
    const from = this.follows ? this.before : null;
    this.follows = reading !== null;
    if (reading === null) return;
    if (reading.event !== null) this.takeEvent(reading, last);
    else this.pairWith(from, reading);
  }

  private takeEvent(event: Reading, last: Reading | null): void {
    if (last !== null && event.day < last.day) {
      const values = { day: dayText(event.day), before: dayText(last.day) };
      this.findings.push(readingFinding('reading/day-not-after', { path: [...event.path, 'date'] }, values));
      this.isUnbroken = false;
    }
    this.events.push(event);
  }

  private pairWith(from: Reading | null, to: Reading): void {
    const { account, events, findings } = this;
    const { actual } = this;
    this.events = [];
    this.before = to;
    if (!to.isEstimated) this.actual = to;
    if (from === null) return;
    const pair =
      events.length > 0
        ? checkChangedPeriod({ account, from, events, to }, findings)
        : this.plainPair(from, to, actual);
    this.daysBefore = to.day > from.day ? to.day - from.day : null;
    if (pair === null) this.isUnbroken = false;
    else if (this.isUnbroken) this.pairs.push(pair);
  }

  private plainPair(from: Reading, to: Reading, actual: Reading | null): ReadingPair | null {
    const { account, findings } = this;
    const { spans } = account;
    if (spans.length > 1) {
      const changes = (['grid', 'generation'] as const).flatMap(
        (meter) => changeInside(account, { from, to }, meter) ?? [],
      );
      findings.push(...changes);
      if (changes.length > 0) return null;
    }
    const span = spanOn(spans, from.day);
    return checkPair({ account, span, from, to, actual, daysBefore: this.daysBefore }, findings);
  }

  /** Readings of a change that no usual reading follows. */
  end(): void {
    const [first] = this.events;
    if (first === undefined) return;
    this.findings.push(
      readingFinding(
        'reading/change-at-end',
        { path: [...first.path, 'event'] },
        { day: dayText(first.day) },
      ),
    );
  }
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
  const pairing = new Pairing(account);
  rows.forEach((row, index) => {
    pairing.take(row, index, options.today);
  });
  pairing.end();
  const { findings, pairs } = pairing;
  const usual = rows.filter(({ event }) => event === undefined).length;
  if (usual < 2) {
    findings.unshift(readingFinding('reading/none', { path: ['readings'] }, { count: String(usual) }));
  }
  return { value: pairs, findings };
}
