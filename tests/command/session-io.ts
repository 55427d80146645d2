import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseDay, type DayNumber } from '@unitbook/engine';
import type { CommandIo, FileRead } from '../../apps/cli/src/io.ts';
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

/** The examples of the repository are there under their own names. */
function readExample(path: string): FileRead {
  const place = fileURLToPath(new URL(path, ROOT));
  return path.startsWith('tariffs-examples/') && existsSync(place)
    ? { kind: 'read', bytes: readFileSync(place) }
    : { kind: 'missing' };
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
  const io: CommandIo = {
    read: (path, limit) => {
      const held = path === '-' ? { bytes: Buffer.from(input) } : files.get(path);
      return Promise.resolve(held === undefined ? readExample(path) : readHeld(held, limit));
    },
    out: (text) => void (printed.out += text),
    err: (text) => void (printed.err += text),
    today: parseDay('2026-04-15') as DayNumber,
  };
  return { io, printed };
}
