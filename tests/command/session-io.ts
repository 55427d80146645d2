import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseDay, type DayNumber } from '@unitbook/engine';
import type { CommandIo, FilePiece, FileRead } from '../../apps/cli/src/io.ts';
import type { SessionFile } from './read-session.ts';

const ROOT = new URL('../../', import.meta.url);

/** What a command printed. */
export interface Printed {
  out: string;
  err: string;
}

function readHeld(file: SessionFile, limit: number): FileRead {
  if ('size' in file) {
    if (file.size <= limit) throw new Error('A file that has only a size was read.');
    return { kind: 'too-large', size: file.size };
  }
  return file.bytes.length > limit
    ? { kind: 'too-large', size: file.bytes.length }
    : { kind: 'read', bytes: file.bytes };
}

const FOLDERS = ['tariffs-examples/', 'tests/published/data/'];

/** The examples of the repository and published files are there under their own names. */
function readExample(path: string): FileRead {
  const place = fileURLToPath(new URL(path, ROOT));
  return FOLDERS.some((folder) => path.startsWith(folder)) && existsSync(place)
    ? { kind: 'read', bytes: readFileSync(place) }
    : { kind: 'missing' };
}

/** Pieces so short that numbers and line ends lie across their edges. */
const PIECE = 1000;
/** No file of a session has more bytes than this; one that has only a size is larger. */
const MOST = 8 * 1024 * 1024;

/** A file in pieces, as a disk hands it on. */
async function* piecesOf(read: FileRead): AsyncGenerator<FilePiece> {
  if (read.kind === 'too-large') throw new Error('A file that has only a size was read.');
  if (read.kind !== 'read') {
    yield await Promise.resolve(read);
    return;
  }
  for (let from = 0; from < read.bytes.length; from += PIECE)
    yield await Promise.resolve({ kind: 'bytes', bytes: read.bytes.subarray(from, from + PIECE) });
}

/**
 * Files, streams and clock of a session: nothing outside it is touched but the examples.
 *
 * @param files  by name
 * @param input  standard input
 */
export function sessionIo(
  files: ReadonlyMap<string, SessionFile>,
  input: string,
): { io: CommandIo; printed: Printed } {
  const printed: Printed = { out: '', err: '' };
  const read = (path: string, limit: number): FileRead => {
    const held = path === '-' ? { bytes: Buffer.from(input) } : files.get(path);
    return held === undefined ? readExample(path) : readHeld(held, limit);
  };
  const io: CommandIo = {
    read: (path, limit) => Promise.resolve(read(path, limit)),
    pieces: (path) => piecesOf(read(path, MOST)),
    out: (text) => void (printed.out += text),
    err: (text) => void (printed.err += text),
    today: parseDay('2026-04-15') as DayNumber,
    batch: () => ({
      write: (bytes) => {
        printed.out += new TextDecoder().decode(bytes);
        return Promise.resolve();
      },
      err: (text) => void (printed.err += text),
      isTerminal: false,
      now: () => 0,
      entry: null,
      cores: 1,
    }),
    // Sessions are those of a program without its optional part.
    parquet: () => Promise.resolve(null),
  };
  return { io, printed };
}
