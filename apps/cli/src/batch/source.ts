import { close, fstatSync, openSync, read } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import { countLines, NEWLINE, QUOTE, rowAfter } from './bytes.ts';
import type { ByteSource } from './blocks.ts';

/** A table that is open. */
export interface OpenTable extends ByteSource {
  /** Bytes it has; null: nobody knows before its end. */
  readonly size: number | null;
  /** When it was changed last, in milliseconds; null where there is no such time. */
  readonly changed: number | null;
  /** Go on at another place; only in a file that has a size. */
  readonly seek: (position: number) => void;
  readonly close: () => Promise<void>;
}

/** How long to wait for input that is not there yet, in milliseconds. */
const PATIENCE = 5;

const readFrom = promisify(read);
const closeFile = promisify(close);
const STANDARD_INPUT = 0;

/** Read, where the input may have nothing yet. */
async function readSome(file: number, into: Uint8Array, position: number | null): Promise<number> {
  for (;;) {
    try {
      const { bytesRead } = await readFrom(file, into, 0, into.length, position);
      return bytesRead;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw error;
      await setTimeout(PATIENCE);
    }
  }
}

/**
 * Open a table.
 *
 * @param path  "-": standard input
 * @throws      the error of the system where it cannot be opened
 */
export async function openTable(path: string): Promise<OpenTable> {
  const file = path === '-' ? STANDARD_INPUT : openSync(path, 'r');
  const stat = fstatSync(file);
  if (stat.isDirectory()) {
    await closeFile(file);
    throw Object.assign(new Error('a folder'), { code: 'EISDIR', syscall: 'open' });
  }
  let position = 0;
  return {
    size: stat.isFile() ? stat.size : null,
    changed: stat.isFile() ? stat.mtimeMs : null,
    read: async (into) => {
      const count = await readSome(file, into, stat.isFile() ? position : null);
      position += count;
      return count;
    },
    seek: (place) => {
      position = place;
    },
    close: () => (file === STANDARD_INPUT ? Promise.resolve() : closeFile(file)),
  };
}

/** The first row of a table, without its line break. */
export interface FirstRow {
  readonly text: string;
  /** Bytes that were read behind it already. */
  readonly rest: Uint8Array;
  /** Its own bytes, with the line break. */
  readonly length: number;
  readonly lines: number;
}

const PIECE = 1 << 16;
/** No header is longer than this. */
const LONGEST = 1 << 20;

/** Read the first row of a table; null: it has none. */
export async function firstRow(source: ByteSource): Promise<FirstRow | null> {
  let held = new Uint8Array(0);
  for (;;) {
    const end = rowAfter(held, 0, held.length);
    if (end > 0) return rowOf(held, end);
    const piece = new Uint8Array(PIECE);
    const read = held.length > LONGEST ? 0 : await source.read(piece);
    if (read === 0) return held.length === 0 || held.length > LONGEST ? null : rowOf(held, held.length);
    held = new Uint8Array(Buffer.concat([held, piece.subarray(0, read)]));
  }
}

function rowOf(held: Uint8Array, end: number): FirstRow {
  const text = new TextDecoder('utf-8', { ignoreBOM: false })
    .decode(held.subarray(0, end))
    .replace(/\r?\n$/, '');
  return { text, rest: held.subarray(end), length: end, lines: countLines(held, 0, end) };
}

/** A source that gives some bytes first. */
export function after(first: Uint8Array, source: ByteSource): ByteSource {
  let at = 0;
  return {
    read: async (into) => {
      if (at >= first.length) return source.read(into);
      const count = Math.min(into.length, first.length - at);
      into.set(first.subarray(at, at + count));
      at += count;
      return count;
    },
  };
}

/** Pass over bytes of a source; returns the lines that ended in them. */
export async function skip(source: ByteSource, bytes: number): Promise<number> {
  const piece = new Uint8Array(PIECE);
  let [left, lines] = [bytes, 0];
  while (left > 0) {
    const read = await source.read(left < PIECE ? piece.subarray(0, left) : piece);
    if (read === 0) return lines;
    lines += countLines(piece, 0, read);
    left -= read;
  }
  return lines;
}

/** The names in the first row of a table. */
export function headerCells(text: string): readonly string[] {
  const bytes = new TextEncoder().encode(`${text}\n`);
  const cells: string[] = [];
  let at = 0;
  while (at < bytes.length) {
    const isQuoted = bytes[at] === QUOTE;
    const match = isQuoted
      ? /^"((?:[^"]|"")*)"/.exec(textFrom(bytes, at))
      : /^[^,\n]*/.exec(textFrom(bytes, at));
    const own = match?.[0] ?? '';
    cells.push((isQuoted ? (match?.[1] ?? '').replaceAll('""', '"') : own).trim());
    at += new TextEncoder().encode(own).length;
    if (bytes[at] === NEWLINE) break;
    at += 1;
  }
  return cells;
}

const textFrom = (bytes: Uint8Array, at: number): string => new TextDecoder().decode(bytes.subarray(at));
