import { DOCUMENT_LIMITS, type Finding, type FindingPlace } from '@unitbook/engine';
import { commandFinding } from '../findings.ts';
import { otherDocument, type DocumentFormat } from './document-format.ts';
import { failureFinding } from '../file-failure.ts';
import type { CommandIo, FileRead } from '../io.ts';

const MEGABYTE = 1024 * 1024;
const HERE: FindingPlace = { path: [] };

/** The bytes that the longest document the engine reads can have: 4,000,000 characters, each of up to three. */
const LARGEST_DOCUMENT: number = Math.ceil((3 * DOCUMENT_LIMITS.text) / MEGABYTE) * MEGABYTE;

/** What is printed for a file: standard input has no name. */
export function fileName(path: string): string {
  return path === '-' ? 'standard input' : path;
}

/** Why a file could not be read, as a finding; null when it could. */
function readFinding(read: FileRead, limit: number): Finding | null {
  if (read.kind === 'read') return null;
  if (read.kind !== 'too-large') return failureFinding(read);
  const [whole, most] = [read.size, limit].map((bytes) => Math.floor(bytes / MEGABYTE)) as [number, number];
  const size = whole > most ? `${String(whole)} MB` : `more than ${String(most)} MB`;
  return commandFinding('command/file-too-large', HERE, { size, most: String(most) });
}

/** The bytes of a file, or the reason there are none. */
export async function readBytes(
  io: CommandIo,
  path: string,
  tooLarge?: { readonly limit: number; readonly finding: (size: number) => Finding },
): Promise<{ bytes: Uint8Array | null; findings: readonly Finding[] }> {
  const limit = tooLarge?.limit ?? LARGEST_DOCUMENT;
  const read = await io.read(path, limit);
  if (read.kind === 'read') return { bytes: read.bytes, findings: [] };
  if (read.kind === 'too-large' && tooLarge !== undefined)
    return { bytes: null, findings: [tooLarge.finding(read.size)] };
  const finding = readFinding(read, limit);
  return { bytes: null, findings: finding === null ? [] : [finding] };
}

/** A JSON document as text, its mark at the beginning off; null where it is none, or another one. */
export function documentText(
  bytes: Uint8Array,
  wanted: DocumentFormat,
): { text: string | null; findings: readonly Finding[] } {
  const text = decoded(bytes);
  if (text === null) return { text: null, findings: [commandFinding('command/not-text', HERE)] };
  const other = otherDocument(text, wanted);
  return other === null ? { text, findings: [] } : { text: null, findings: [other] };
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/**
 * Read a JSON document as text.
 *
 * @param wanted  what it should hold; a document of ours that holds something else is not read
 */
export async function readDocumentText(
  io: CommandIo,
  path: string,
  wanted: DocumentFormat,
): Promise<{ text: string | null; findings: readonly Finding[] }> {
  const { bytes, findings } = await readBytes(io, path);
  return bytes === null ? { text: null, findings } : documentText(bytes, wanted);
}
