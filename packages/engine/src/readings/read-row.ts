import { dayText, parseDay, type DayNumber, type Finding, type Path } from '../quantity/index.ts';
import type { Account } from './account.ts';
import { readDayWithoutYear, readTypedDay } from './day-text.ts';
import { readingFinding } from './findings.ts';
import { confirmationKey, isUsualBill, type Reading, type ReadingRow } from './reading.ts';
import { plainReading, readRegisterText } from './register-text.ts';
import type { Register, RegisterId } from './register.ts';

const NONE: readonly never[] = [];

/** Any day, to ask whether a text is a day and month at all. */
const SOME_DAY = 0 as DayNumber;

/** What one row is read against; findings are added to the list. */
export interface RowContext {
  readonly account: Account;
  /** The reading before, for commas that could be either mark. */
  readonly before: Reading | null;
  readonly path: Path;
  readonly findings: Finding[];
}

/** A question that whoever read the meter has answered stays as a note. */
function answered(finding: Finding, place: RegisterId | 'date', row: ReadingRow): Finding {
  const isAnswered = row.confirmed?.includes(confirmationKey(finding.code, place)) ?? false;
  return isAnswered && finding.severity === 'question' ? { ...finding, severity: 'note' } : finding;
}

/** What a date lacks: its year, which the reading before gives, or more. */
function dayMissing(value: string, path: Path, before: Reading | null): Finding {
  const day = before === null ? null : readDayWithoutYear(value, before.day);
  if (day !== null) {
    const offer = dayText(day);
    return readingFinding('reading/no-year', { path, offer }, { value, offer });
  }
  const isShort = readDayWithoutYear(value, SOME_DAY) !== null;
  return readingFinding(isShort ? 'reading/no-year' : 'reading/no-day', { path }, { value });
}

function readDate(row: ReadingRow, { path, findings, before }: RowContext): DayNumber | null {
  const plain = parseDay(row.date);
  if (plain !== null) return plain;
  const typed = readTypedDay(row.date);
  const at = [...path, 'date'];
  if (typed === null) {
    findings.push(dayMissing(row.date, at, before));
    return null;
  }
  if (typed.other === null) return typed.day;
  const other = dayText(typed.other);
  const values = { value: row.date, read: dayText(typed.day), other };
  const finding = readingFinding('reading/day-or-month', { path: at, offer: other }, values);
  // Day first is how most bills write it: a question only where the days since the reading before are odd.
  const isNote = before === null || isUsualBill(typed.day - before.day);
  findings.push(isNote ? { ...finding, severity: 'note' } : answered(finding, 'date', row));
  return typed.day;
}

/** The days a bill prints: null where nothing was typed. */
function readPrintedDays(row: ReadingRow, { path, findings }: RowContext): number | null {
  const typed = row.printedDays?.trim() ?? '';
  if (typed === '') return null;
  if (/^\d{1,3}$/.test(typed)) return Number.parseInt(typed, 10);
  findings.push(readingFinding('reading/printed-days', { path: [...path, 'printedDays'] }, { value: typed }));
  return null;
}

function readRegister(row: ReadingRow, register: Register, context: RowContext): number | null {
  const text = row[register.id] ?? '';
  const plain = plainReading(text, register);
  if (plain >= 0) return plain;
  const { before, path, findings } = context;
  const at = [...path, register.id];
  const read = readRegisterText(text, { register, before: before?.[register.id] ?? null, path: at });
  for (const finding of read.findings) findings.push(answered(finding, register.id, row));
  return read.value;
}

function readGeneration(row: ReadingRow, context: RowContext): number | null {
  const { generation } = context.account.registers;
  if (generation !== null) return readRegister(row, generation, context);
  if ((row.generation ?? '').trim() !== '') {
    context.findings.push(
      readingFinding('reading/extra-register', { path: [...context.path, 'generation'] }),
    );
  }
  return null;
}

/**
 * Understand one row by itself.
 *
 * @returns the reading, or null when a part of it cannot be used; why is added to the findings
 */
export function readRow(row: ReadingRow, context: RowContext): Reading | null {
  const { account, path, findings } = context;
  const known = findings.length;
  const day = readDate(row, context);
  const printedDays = readPrintedDays(row, context);
  const taken = readRegister(row, account.registers.import, context);
  const given = readRegister(row, account.registers.export, context);
  const generation = readGeneration(row, context);
  const isEstimated = row.status === 'estimated';
  if (isEstimated) findings.push(readingFinding('reading/estimated', { path: [...path, 'status'] }));
  const isComplete = account.registers.generation === null || generation !== null;
  const isBarred =
    findings.length > known && findings.slice(known).some(({ severity }) => severity === 'error');
  if (day === null || taken === null || given === null || !isComplete || isBarred) return null;
  const confirmed = row.confirmed ?? NONE;
  return { day, isEstimated, import: taken, export: given, generation, printedDays, confirmed, path };
}
