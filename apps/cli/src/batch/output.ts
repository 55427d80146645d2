import {
  fdatasyncSync,
  ftruncateSync,
  openSync,
  closeSync,
  writeSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import type { Tally } from './tally.ts';

/** Takes bytes; waits where the reader is slow. */
export interface Sink {
  readonly write: (bytes: Uint8Array) => Promise<void>;
  /** Bytes that were written, those before a resumption among them. */
  readonly length: () => number;
  /** What was written is on the disk when this returns. */
  readonly settle: () => void;
  readonly close: () => void;
}

/**
 * A file that is written from a place on; what stood behind it is cut off.
 *
 * @throws the error of the system
 */
export function fileSink(path: string, length: number): Sink {
  const file = openSync(path, length === 0 ? 'w' : 'r+');
  let at = length;
  if (length > 0) ftruncateSync(file, length);
  return {
    write: (bytes) => {
      for (let done = 0; done < bytes.length;) {
        const wrote = writeSync(file, bytes, done, bytes.length - done, at);
        done += wrote;
        at += wrote;
      }
      return Promise.resolve();
    },
    length: () => at,
    settle: () => {
      fdatasyncSync(file);
    },
    close: () => {
      closeSync(file);
    },
  };
}

/** Where bytes go that nobody wants. */
export const noSink = (): Sink => ({
  write: () => Promise.resolve(),
  length: () => 0,
  settle: () => undefined,
  close: () => undefined,
});

/** A stream that takes bytes, such as standard output. */
export function streamSink(write: (bytes: Uint8Array) => Promise<void>): Sink {
  let length = 0;
  return {
    write: async (bytes) => {
      length += bytes.length;
      if (bytes.length > 0) await write(bytes);
    },
    length: () => length,
    settle: () => undefined,
    close: () => undefined,
  };
}

/** How far a check has come: what is needed to go on after it was killed. */
export interface Journal {
  readonly format: 'unitbook-batch-journal-1';
  /** What the check was begun with, as one text: anything else cannot go on with it. */
  readonly of: string;
  /** Bytes of the table that are dealt with, and the line behind them. */
  readonly position: number;
  readonly line: number;
  /** Bytes of the findings, and of the rows set aside, that belong to them. */
  readonly findings: number;
  readonly side: number;
  readonly tally: Tally;
  readonly isDone: boolean;
}

/** Where the journal of a file of findings stands. */
const journalPath = (out: string): string => `${out}.journal`;

/** Write a journal so that whoever reads it finds the one before or this one, whole. */
export function writeJournal(out: string, journal: Journal): void {
  const path = journalPath(out);
  writeFileSync(`${path}.new`, JSON.stringify(journal), { flush: true });
  renameSync(`${path}.new`, path);
}

/** The journal of a file of findings; null: there is none that can be read. */
export function readJournal(out: string): Journal | null {
  try {
    const journal = JSON.parse(readFileSync(journalPath(out), 'utf8')) as
      Journal | { readonly format: unknown };
    return 'tally' in journal ? journal : null;
  } catch {
    return null;
  }
}
