import { dayText, parseDay, type DayNumber, type Finding, type Path } from '../quantity/index.ts';
import { readDayWithoutYear, readTypedDay } from './day-text.ts';
import { readingFinding } from './findings.ts';
import { spanBefore, spanOn } from './meter-spans.ts';
import {
  answered,
  estimatedIn,
  readShown,
  strayFindings,
  valuesOf,
  wantedRegisters,
  type RowContext,
} from './read-registers.ts';
import { isUsualBill, type Reading, type ReadingRow } from './reading.ts';
import { plainReading } from './register-text.ts';
import type { Register } from './register.ts';

const NONE: readonly never[] = [];

/** Any day, to ask whether a text is a day and month at all. */
const SOME_DAY = 0 as DayNumber;

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

function readDate(row: ReadingRow, { path, findings, before }: Omit<RowContext, 'span'>): DayNumber | null {
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
function readPrintedDays(row: ReadingRow, { path, findings }: Omit<RowContext, 'span'>): number | null {
  const typed = row.printedDays?.trim() ?? '';
  if (typed === '') return null;
  if (/^\d{1,3}$/.test(typed)) return Number.parseInt(typed, 10);
  findings.push(readingFinding('reading/printed-days', { path: [...path, 'printedDays'] }, { value: typed }));
  return null;
}

/** The short way for nearly all rows: plain numbers for the two or three registers there are. */
function plainRow(row: ReadingRow, { span, path }: RowContext, day: DayNumber): Reading | null {
  const { import: taken, export: given, generation: made } = span.totals;
  const isUsual =
    row.event === undefined &&
    row.rates === undefined &&
    row.status !== 'estimated' &&
    row.estimated === undefined;
  if (!isUsual || row.printedDays !== undefined || span.counted.length > (made === null ? 2 : 3)) return null;
  const read = [
    plainReading(row.import ?? '', taken),
    plainReading(row.export ?? '', given),
    made === null ? 0 : plainReading(row.generation ?? '', made),
  ] as const;
  const hasNone = made === null && (row.generation ?? '').trim() !== '';
  if (read[0] < 0 || read[1] < 0 || read[2] < 0 || hasNone) return null;
  return {
    day,
    event: null,
    isEstimated: false,
    estimated: NONE,
    import: read[0],
    export: read[1],
    generation: made === null ? null : read[2],
    rates: null,
    printedDays: null,
    confirmed: row.confirmed ?? NONE,
    path,
  };
}

/** Where an event is about no register at all. */
function emptyEvent(row: ReadingRow, wanted: readonly Register[], path: Path): Finding[] {
  if (row.event === undefined || wanted.length > 0) return [];
  return [readingFinding('reading/event-empty', { path: [...path, 'event'] }, { event: row.event })];
}

/**
 * Understand one row by itself.
 *
 * @returns the reading, or null when a part of it cannot be used; why is added to the findings
 */
export function readRow(row: ReadingRow, typed: Omit<RowContext, 'span'>): Reading | null {
  const { account, path, findings } = typed;
  const known = findings.length;
  const day = readDate(row, typed);
  const at = day ?? typed.before?.day ?? SOME_DAY;
  const span = row.event === 'final' ? spanBefore(account.spans, at) : spanOn(account.spans, at);
  const context = { ...typed, span };
  const plain = day === null ? null : plainRow(row, context, day);
  if (
    plain !== null &&
    day !== null &&
    findings.every(({ severity }, index) => index < known || severity !== 'error')
  )
    return plain;
  const printedDays = readPrintedDays(row, typed);
  const wanted = wantedRegisters(row, span);
  findings.push(...emptyEvent(row, wanted, path), ...strayFindings(row, span, path));
  const shown = readShown(row, wanted, context);
  const values = shown === null ? null : valuesOf(row, shown, context);
  const estimated = estimatedIn(row, wanted);
  if (estimated.length > 0) {
    const values = { registers: estimated.length === wanted.length ? '' : estimated.join(' and ') };
    findings.push(readingFinding('reading/estimated', { path: [...path, 'status'] }, values));
  }
  const isBarred = findings.slice(known).some(({ severity }) => severity === 'error');
  if (day === null || values === null || isBarred) return null;
  return {
    day,
    event: row.event ?? null,
    isEstimated: estimated.length > 0,
    estimated,
    ...values,
    printedDays,
    confirmed: row.confirmed ?? NONE,
    path,
  };
}
