import {
  locate,
  readDocument,
  readingsSchema,
  type Finding,
  type ReadingRow,
  type ReadingsDocument,
} from '@unitbook/engine';
import { DELIMITER_WORDS, locateInCsv, meterFileKind, readRegisterCsv } from '@unitbook/meter-files';
import { commandFinding } from '../findings.ts';
import { documentText } from './read-bytes.ts';

/** The rows of a file of readings, and how findings about them get their place in it. */
export interface ReadingsFile {
  /** The file, as messages name it. */
  readonly subject: string;
  /** Where the rows come from, in words. */
  readonly words: string;
  readonly rows: readonly ReadingRow[];
  /** Where rows are missing that could not be read: before each of these indexes. */
  readonly gaps: readonly number[];
  readonly place: (finding: Finding) => Finding;
}

/** Readings, or null where none could be read; with findings. */
export interface ReadReadingsFile {
  readonly readings: ReadingsFile | null;
  readonly findings: readonly Finding[];
}

/** JSON begins with a brace or a bracket, a list of registers with the name of a column. */
export function isJson(head: string): boolean {
  return /^\s*[[{]/.test(head);
}

function fromJson(bytes: Uint8Array, subject: string): ReadReadingsFile {
  const { text, findings } = documentText(bytes, 'unitbook-readings-1');
  if (text === null) return { readings: null, findings };
  const read = readDocument<ReadingsDocument>(text, readingsSchema);
  if (read.value === null) return { readings: null, findings: read.findings };
  const rows = read.value.readings;
  const place = (finding: Finding): Finding => locate(read.source, finding);
  return { readings: { subject, words: subject, rows, gaps: [], place }, findings: read.findings };
}

/** A note where a file is a table, but its first line has no column of our list. */
function otherTable(bytes: Uint8Array, findings: readonly Finding[]): readonly Finding[] {
  const isOther = findings.some(({ code }) => code === 'readings-file/no-header');
  const { kind } = meterFileKind(new TextDecoder().decode(bytes.subarray(0, 4096)));
  return isOther && kind === 'table' ? [commandFinding('command/other-table', { path: [] })] : [];
}

function fromCsv(bytes: Uint8Array, subject: string): ReadReadingsFile {
  const { value, findings, source, gaps } = readRegisterCsv(bytes);
  if (source === null) return { readings: null, findings: [...findings, ...otherTable(bytes, findings)] };
  const words = `${subject}, cells separated by ${DELIMITER_WORDS[source.header.delimiter]}`;
  const place = (finding: Finding): Finding => locateInCsv(source, finding);
  return { readings: { subject, words, rows: value, gaps, place }, findings };
}

/**
 * Read a list or document of ours from its bytes.
 *
 * @param head     its first characters
 * @param subject  the file, as messages name it
 */
export function readOwnReadings(bytes: Uint8Array, head: string, subject: string): ReadReadingsFile {
  return isJson(head) ? fromJson(bytes, subject) : fromCsv(bytes, subject);
}
