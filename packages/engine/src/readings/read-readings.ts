import * as z from 'zod/mini';
import { dayText, type DayNumber, type Finding, type Outcome, type Path } from '../quantity/index.ts';
import { readDocument } from '../tariff/index.ts';
import type { Account } from './account.ts';
import { checkPair, futureFindings, registersOf } from './check-pair.ts';
import { readTypedDay } from './day-text.ts';
import { readingFinding } from './findings.ts';
import { confirmationKey, type Reading, type ReadingPair, type ReadingRow } from './reading.ts';
import { readRegisterText } from './register-text.ts';
import type { RegisterId } from './register.ts';

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
  return { value: read.value?.readings ?? null, findings: read.findings };
}

function readDate(row: ReadingRow, path: Path): { day: DayNumber | null; findings: readonly Finding[] } {
  const typed = readTypedDay(row.date);
  const at = [...path, 'date'];
  if (typed === null)
    return { day: null, findings: [readingFinding('reading/no-day', { path: at }, { value: row.date })] };
  if (typed.other === null) return { day: typed.day, findings: [] };
  const other = dayText(typed.other);
  const finding = readingFinding(
    'reading/day-or-month',
    { path: at, offer: other },
    { value: row.date, read: dayText(typed.day), other },
  );
  const confirmed = row.confirmed?.includes(confirmationKey('reading/day-or-month', 'date')) ?? false;
  return { day: typed.day, findings: [confirmed ? { ...finding, severity: 'note' } : finding] };
}

/** The days a bill prints: null where nothing was typed. */
function readPrintedDays(row: ReadingRow, path: Path): { days: number | null; findings: Finding[] } {
  const typed = (row.printedDays ?? '').trim();
  if (typed === '') return { days: null, findings: [] };
  if (/^\d{1,3}$/.test(typed)) return { days: Number.parseInt(typed, 10), findings: [] };
  return {
    days: null,
    findings: [readingFinding('reading/printed-days', { path: [...path, 'printedDays'] }, { value: typed })],
  };
}

/** Understand one row by itself, with the reading before for commas that could be either mark. */
function readRow(
  row: ReadingRow,
  account: Account,
  before: Reading | null,
  path: Path,
): { value: Reading | null; findings: Finding[] } {
  const { day, findings: ofDate } = readDate(row, path);
  const printed = readPrintedDays(row, path);
  const findings = [...ofDate, ...printed.findings];
  const values: Record<RegisterId, number | null> = { import: null, export: null, generation: null };
  for (const register of registersOf(account)) {
    const context = { register, before: before?.[register.id] ?? null, path: [...path, register.id] };
    const read = readRegisterText(row[register.id] ?? '', context);
    values[register.id] = read.value;
    if (read.findings.length > 0)
      findings.push(...read.findings.map((finding) => answeredAt(finding, register.id, row)));
  }
  if (account.registers.generation === null && (row.generation ?? '') !== '') {
    findings.push(readingFinding('reading/extra-register', { path: [...path, 'generation'] }));
  }
  if (row.status === 'estimated')
    findings.push(readingFinding('reading/estimated', { path: [...path, 'status'] }));
  const complete = account.registers.generation === null || values.generation !== null;
  if (day === null || values.import === null || values.export === null || !complete)
    return { value: null, findings };
  const confirmed = row.confirmed ?? [];
  return {
    value: {
      day,
      isEstimated: row.status === 'estimated',
      ...values,
      import: values.import,
      export: values.export,
      printedDays: printed.days,
      confirmed,
      path,
    },
    findings,
  };
}

function answeredAt(finding: Finding, register: RegisterId, row: ReadingRow): Finding {
  const confirmed = row.confirmed?.includes(confirmationKey(finding.code, register)) ?? false;
  return confirmed && finding.severity === 'question' ? { ...finding, severity: 'note' } : finding;
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
  let unbroken = true;
  rows.forEach((row, index) => {
    const read = readRow(row, account, before, ['readings', index]);
    findings.push(...read.findings);
    const reading = read.value;
    if (reading === null) unbroken = false;
    else {
      const future = futureFindings(reading, options.today);
      findings.push(...future);
      if (future.length > 0) unbroken = false;
      if (before !== null) {
        const pair = checkPair(account, before, reading);
        findings.push(...pair.findings);
        if (pair.value === null) unbroken = false;
        else if (unbroken) pairs.push(pair.value);
      }
      before = reading;
    }
  });
  if (rows.length < 2)
    findings.unshift(readingFinding('reading/none', { path: ['readings'] }, { count: String(rows.length) }));
  return { value: pairs, findings };
}
