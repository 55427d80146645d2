import type { Finding } from '@unitbook/engine';
import { collectMeterFile, type CollectedFile } from '../collected/collect.ts';
import { collectedFinding, type CollectedFindingCode } from '../collected/collected-findings.ts';
import { decodePieces } from './decode-pieces.ts';
import { meterFileKind, type MeterFileKind, type ToldKind } from './kind.ts';
import { openMeterFile, type OpenOptions } from './open-meter-file.ts';

const MEGABYTE = 1024 * 1024;

/** The most bytes (of a text: characters) that are read in one piece. */
export const LARGEST_METER_FILE: number = 200 * MEGABYTE;

/** How a file is to be read. */
export interface ReadOptions extends OpenOptions {
  /** What it is; left out: what its content tells. */
  readonly kind?: MeterFileKind;
}

/** A meter file that was read. */
export interface ReadMeterFile extends ToldKind {
  /** null where it could not be read. */
  readonly file: CollectedFile | null;
  /** Those of the file, too. */
  readonly findings: readonly Finding[];
}

/** So much is read at a time. */
const PIECE = 65_536;
/** So much tells what a file is. */
const HEAD = 65_536;

/** The text of a file in pieces. */
interface Pieces {
  readonly texts: Iterable<string>;
  readonly findings: () => readonly Finding[];
}

function piecesOfText(text: string): Pieces {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  function* texts(): Generator<string> {
    for (let at = 0; at < plain.length; at += PIECE) yield plain.slice(at, at + PIECE);
  }
  const values = { what: 'bytes that are no text' };
  const isText = !text.includes('\0');
  return isText
    ? { texts: texts(), findings: () => [] }
    : { texts: [], findings: () => [collectedFinding('meter-file/not-text', { path: [] }, values)] };
}

function piecesOfBytes(bytes: Uint8Array): Pieces {
  const decoder = decodePieces();
  function* texts(): Generator<string> {
    for (let at = 0; at < bytes.length && !decoder.isNoText(); at += PIECE)
      yield decoder.write(bytes.subarray(at, at + PIECE));
    yield decoder.end();
  }
  return { texts: texts(), findings: decoder.findings };
}

/** What stands at the beginning, and an iterator that still has it. */
function withHead(texts: Iterable<string>): { head: string; all: Iterable<string> } {
  const iterator = texts[Symbol.iterator]();
  const first: string[] = [];
  let length = 0;
  for (let next = iterator.next(); next.done !== true; next = iterator.next()) {
    first.push(next.value);
    length += next.value.length;
    if (length >= HEAD) break;
  }
  function* all(): Generator<string> {
    yield* first;
    for (let next = iterator.next(); next.done !== true; next = iterator.next()) yield next.value;
  }
  return { head: first.join('').slice(0, HEAD), all: all() };
}

/** What keeps a kind of file from being read here. */
function obstacle({ kind, why }: ToldKind, { layout }: ReadOptions): CollectedFindingCode | null {
  if (why === 'an empty file') return 'meter-file/empty';
  if (kind === null) return 'meter-file/kind-not-known';
  if (kind === 'own-register-list') return 'meter-file/own-register-list';
  return kind === 'table' && layout?.confirmed !== true ? 'meter-file/needs-layout' : null;
}

function tooLarge(size: number): ReadMeterFile {
  const values = {
    size: String(Math.ceil(size / MEGABYTE)),
    most: String(LARGEST_METER_FILE / MEGABYTE),
  };
  const finding = collectedFinding('meter-file/too-many-bytes', { path: [] }, values);
  return { kind: null, why: 'a file that is too large', file: null, findings: [finding] };
}

/**
 * Read a whole meter file of any kind.
 *
 * @param input    its bytes, or its text
 * @param options  what it is and what its reader has to be told
 * @returns        what it is, what was read, and findings about all of it
 * @throws RangeError  for a layout that is not sound
 */
export function readMeterFile(input: string | Uint8Array, options: ReadOptions = {}): ReadMeterFile {
  if (input.length > LARGEST_METER_FILE) return tooLarge(input.length);
  const pieces = typeof input === 'string' ? piecesOfText(input) : piecesOfBytes(input);
  const { head, all } = withHead(pieces.texts);
  const broken = pieces.findings().filter(({ severity }) => severity === 'error');
  if (broken.length > 0) return { kind: null, why: 'no text', file: null, findings: broken };
  const told = meterFileKind(head);
  const own: ToldKind =
    options.kind === undefined || told.why === 'an empty file'
      ? told
      : { kind: options.kind, why: 'the kind that was named' };
  const code = obstacle(own, options);
  if (code !== null)
    return { ...own, file: null, findings: [collectedFinding(code, { path: [] }, { why: own.why })] };
  const { sink, result } = collectMeterFile();
  // The obstacles leave no other kind.
  const reader = openMeterFile(own.kind as Exclude<MeterFileKind, 'own-register-list'>, sink, options);
  for (const text of all) reader.write(text);
  reader.end();
  const file = result(reader.clock);
  return { ...own, file, findings: [...pieces.findings(), ...file.findings] };
}
