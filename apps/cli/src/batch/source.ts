import { close, fstatSync, openSync, read, type Stats } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import type { ByteSource } from './blocks.ts';
import { countLines, rowAfter } from './bytes.ts';
import { named } from './file-trouble.ts';

/** A table that is open. What goes wrong is told as a `FileTrouble`. */
export interface OpenTable extends ByteSource {
  /** Bytes it has; null: nobody knows before its end. */
  readonly size: number | null;
  /** When it was changed last, in milliseconds; null where there is no such time. */
  readonly changed: number | null;
  /** Go on at another place; only in a file that has a size. */
  readonly seek: (position: number) => void;
  /** Bytes at its beginning and at its end, to tell it from others; none where it has no size. */
  readonly ends: () => Promise<readonly Uint8Array[]>;
  readonly close: () => Promise<void>;
}

/** How long to wait for input that is not there yet, in milliseconds. */
const PATIENCE = 5;
const PIECE = 1 << 16;
/** No header is longer than this. */
const LONGEST = 1 << 20;
const STANDARD_INPUT = 0;

const readFrom = promisify(read);
const closeFile = promisify(close);

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

/** Open a file; a folder can be opened and not be read, so that it is refused here. */
async function openFile(path: string): Promise<{ readonly file: number; readonly stat: Stats }> {
  const file = path === '-' ? STANDARD_INPUT : openSync(path, 'r');
  const stat = fstatSync(file);
  if (!stat.isDirectory()) return { file, stat };
  await closeFile(file);
  throw Object.assign(new Error('a folder'), { code: 'EISDIR', syscall: 'open' });
}

/**
 * Open a table.
 *
 * @param path  "-": standard input
 * @throws      FileTrouble where it cannot be opened
 */
export async function openTable(path: string): Promise<OpenTable> {
  const name = path === '-' ? 'standard input' : path;
  const own = async <Result>(work: () => Promise<Result>): Promise<Result> => {
    try {
      return await work();
    } catch (error) {
      throw named(name, 'read', error);
    }
  };
  const { file, stat } = await own(() => openFile(path));
  const size = stat.isFile() ? stat.size : null;
  let position = 0;
  const endAt = async (place: number): Promise<Uint8Array> => {
    const piece = new Uint8Array(PIECE);
    return piece.subarray(0, await own(() => readSome(file, piece, place)));
  };
  return {
    size,
    changed: size === null ? null : stat.mtimeMs,
    read: async (into) => {
      const count = await own(() => readSome(file, into, size === null ? null : position));
      position += count;
      return count;
    },
    seek: (place) => {
      position = place;
    },
    ends: async () =>
      size === null ? [] : [await endAt(0), ...(size > PIECE ? [await endAt(size - PIECE)] : [])],
    close: () => (file === STANDARD_INPUT ? Promise.resolve() : closeFile(file)),
  };
}

/** The first row of a table. */
export interface FirstRow {
  /** Its bytes, with the line break where it has one. */
  readonly bytes: Uint8Array;
  /** Bytes that were read behind it already. */
  readonly rest: Uint8Array;
  readonly lines: number;
}

/**
 * Read the first row of a table.
 *
 * @returns null: it has none, or one that does not end
 */
export async function firstRow(source: ByteSource): Promise<FirstRow | null> {
  let held = new Uint8Array(0);
  for (;;) {
    const end = rowAfter(held, 0, held.length);
    if (end > 0) return rowOf(held, end);
    const piece = new Uint8Array(PIECE);
    const count = held.length > LONGEST ? 0 : await source.read(piece);
    if (count === 0) return held.length === 0 || held.length > LONGEST ? null : rowOf(held, held.length);
    held = new Uint8Array(Buffer.concat([held, piece.subarray(0, count)]));
  }
}

const rowOf = (held: Uint8Array, end: number): FirstRow => ({
  bytes: held.subarray(0, end),
  rest: held.subarray(end),
  lines: countLines(held, 0, end),
});

/** The first bytes of a source, as many as come at once, and a source that gives them again. */
export async function peek(
  source: ByteSource,
): Promise<{ readonly first: Uint8Array; readonly whole: ByteSource }> {
  const piece = new Uint8Array(PIECE);
  const first = piece.subarray(0, await source.read(piece));
  return { first, whole: after(first, source) };
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
    const count = await source.read(left < PIECE ? piece.subarray(0, left) : piece);
    if (count === 0) return lines;
    lines += countLines(piece, 0, count);
    left -= count;
  }
  return lines;
}
