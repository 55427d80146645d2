import { readDispute, type DisputeDocument } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName, readDocumentText } from './read-bytes.ts';

/** Rules for disputes as they were read, or null. */
export interface ReadDisputeFile {
  readonly value: DisputeDocument | null;
  readonly findings: readonly PlacedFinding[];
}

/** Read the rules for disputes of a place. */
export async function readDisputeFile(io: CommandIo, path: string): Promise<ReadDisputeFile> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-dispute-1');
  if (text === null) return { value: null, findings: about(subject, findings) };
  const { value, findings: own } = readDispute(text);
  return { value, findings: about(subject, own) };
}
