import { readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { isSystemError } from '../file-failure.ts';
import { about, type PlacedFinding } from '../findings.ts';
import { named, withFile } from './file-trouble.ts';
import { batchFinding } from './findings.ts';
import { isTally, type Tally } from './tally.ts';

/** How far a check has come: what is needed to go on after it was killed. */
export interface Journal {
  readonly format: 'unitbook-batch-journal-1';
  /** What the check was begun with, as one text: anything else cannot go on with it. */
  readonly of: string;
  /** Bytes of the table that are dealt with, and the line behind them. */
  readonly position: number;
  readonly line: number;
  /** Bytes of the findings, and of the rows set aside, that belong to them. */
  readonly findings: number;
  readonly side: number;
  readonly tally: Tally;
  readonly isDone: boolean;
}

/**
 * Where the journal of a file of findings stands.
 *
 * @example
 * journalPath('found.ndjson') //=> "found.ndjson.journal"
 */
export const journalPath = (out: string): string => `${out}.journal`;

/** Write a journal so that whoever reads it finds the one before or this one, whole. */
export function writeJournal(out: string, journal: Journal): void {
  const path = journalPath(out);
  withFile(path, 'write', () => {
    writeFileSync(`${path}.new`, JSON.stringify(journal), { flush: true });
    renameSync(`${path}.new`, path);
  });
}

const NUMBERS = ['position', 'line', 'findings', 'side'] as const;

function isJournal(value: unknown): value is Journal {
  if (typeof value !== 'object' || value === null) return false;
  const journal = value as Partial<Record<keyof Journal, unknown>>;
  return (
    journal.format === 'unitbook-batch-journal-1' &&
    typeof journal.of === 'string' &&
    typeof journal.isDone === 'boolean' &&
    NUMBERS.every((key) => Number.isSafeInteger(journal[key])) &&
    isTally(journal.tally)
  );
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** The journal of a file of findings; null: there is none; "unreadable": what is there is none. */
function readJournal(out: string): Journal | null | 'unreadable' {
  const path = journalPath(out);
  try {
    const value = parsed(readFileSync(path, 'utf8'));
    return isJournal(value) ? value : 'unreadable';
  } catch (error) {
    if (isSystemError(error) && error.code === 'ENOENT') return null;
    throw named(path, 'read', error);
  }
}

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

/** The files of a check that can be resumed. */
export interface ResumedFiles {
  readonly out: string;
  /** Rows that cannot be used; undefined: they are kept nowhere. */
  readonly side: string | undefined;
}

/** The journal to go on with, or why it is none; both null: there is no journal, and the check begins anew. */
export interface ResumedJournal {
  readonly journal: Journal | null;
  readonly findings: readonly PlacedFinding[];
}

/**
 * The journal of a check to go on with, beside files that hold at least what it tells of.
 *
 * @param of  what the check is of: another one cannot go on with the journal
 */
export function resumedJournal({ out, side }: ResumedFiles, of: string): ResumedJournal {
  const journal = readJournal(out);
  if (journal === null) return { journal, findings: [] };
  const refused = (path: string, reason: string) =>
    about(path, [batchFinding('batch/cannot-resume', { path: [] }, { reason })]);
  if (journal === 'unreadable')
    return { journal: null, findings: refused(journalPath(out), 'a file that is no journal') };
  const reason = 'the journal of a check of another table, tariff or choice of options';
  if (journal.of !== of) return { journal: null, findings: refused(journalPath(out), reason) };
  const short = [
    ...(sizeOf(out) < journal.findings ? refused(out, 'fewer findings than its journal tells of') : []),
    ...(side !== undefined && sizeOf(side) < journal.side
      ? refused(side, 'fewer rows that cannot be used than its journal tells of')
      : []),
  ];
  return short.length > 0 ? { journal: null, findings: short } : { journal, findings: [] };
}
