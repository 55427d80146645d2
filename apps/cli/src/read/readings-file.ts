import {
  locate,
  readDocument,
  readingsSchema,
  type Finding,
  type ReadingRow,
  type ReadingsDocument,
} from '@unitbook/engine';
import {
  DELIMITER_WORDS,
  LARGEST_FILE,
  locateInCsv,
  readRegisterCsv,
  tooLargeFinding,
} from '@unitbook/meter-files';
import type { CommandIo } from '../io.ts';
import { documentText, fileName, readBytes } from './read-bytes.ts';

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
function isJson(bytes: Uint8Array): boolean {
  const head = new TextDecoder().decode(bytes.subarray(0, 4096)).trimStart();
  return head.startsWith('{') || head.startsWith('[');
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

function fromCsv(bytes: Uint8Array, subject: string): ReadReadingsFile {
  const { value, findings, source, gaps } = readRegisterCsv(bytes);
  if (source === null) return { readings: null, findings };
  const words = `${subject}, cells separated by ${DELIMITER_WORDS[source.header.delimiter]}`;
  const place = (finding: Finding): Finding => locateInCsv(source, finding);
  return { readings: { subject, words, rows: value, gaps, place }, findings };
}

/**
 * Read a file of readings, CSV or JSON as its content has it.
 *
 * @param path  or "-" for standard input
 */
export async function readReadingsFile(io: CommandIo, path: string): Promise<ReadReadingsFile> {
  const { bytes, findings } = await readBytes(io, path, { limit: LARGEST_FILE, finding: tooLargeFinding });
  if (bytes === null) return { readings: null, findings };
  const subject = fileName(path);
  return isJson(bytes) ? fromJson(bytes, subject) : fromCsv(bytes, subject);
}
