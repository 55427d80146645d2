import { readTableLayout, type TableLayout } from '@unitbook/meter-files';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** What the columns of a table are, as a file says it. */
export interface ColumnsFile {
  /** null where no file was named, or none that can be used. */
  readonly layout: TableLayout | null;
  readonly findings: readonly PlacedFinding[];
  /** Whether a file was named and cannot be used. */
  readonly isBroken: boolean;
}

/**
 * Read what the columns of a table are.
 *
 * @param path  left out: no file was named
 */
export async function readColumnsFile(io: CommandIo, path: string | undefined): Promise<ColumnsFile> {
  if (path === undefined) return { layout: null, findings: [], isBroken: false };
  const { text, findings } = await readDocumentText(io, path, 'unitbook-columns-1');
  const read = text === null ? { value: null, findings } : readTableLayout(text);
  return {
    layout: read.value,
    findings: about(fileName(path), read.findings),
    isBroken: read.value === null,
  };
}
