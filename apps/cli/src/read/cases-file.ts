import { readCases, type CasesDocument, type SourceText } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** Worked cases as they were read from a file, or null. */
export interface CasesFile {
  readonly value: CasesDocument | null;
  /** Their text; null where there is none. */
  readonly source: SourceText | null;
  readonly findings: readonly PlacedFinding[];
}

/**
 * Read a file of worked cases.
 *
 * @param path  or "-" for standard input
 */
export async function readCasesFile(io: CommandIo, path: string): Promise<CasesFile> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-cases-1');
  if (text === null) return { value: null, source: null, findings: about(subject, findings) };
  const read = readCases(text);
  return { value: read.value, source: read.source, findings: about(subject, read.findings) };
}
