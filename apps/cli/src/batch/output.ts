import { closeSync, fdatasyncSync, ftruncateSync, openSync, writeSync } from 'node:fs';
import { named, STANDARD_OUTPUT, withFile } from './file-trouble.ts';

/** Takes bytes; waits where the reader is slow. What goes wrong is told as a `FileTrouble`. */
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
 * @param length  bytes of it that stay; 0: it is made, or emptied
 * @throws        FileTrouble where it cannot be opened
 */
export function fileSink(path: string, length: number): Sink {
  const own = <Result>(work: () => Result): Result => withFile(path, 'write', work);
  const file = own(() => openSync(path, length === 0 ? 'w' : 'r+'));
  let at = length;
  if (length > 0)
    own(() => {
      ftruncateSync(file, length);
    });
  const writeAll = (bytes: Uint8Array): void => {
    for (let done = 0; done < bytes.length;) {
      const wrote = writeSync(file, bytes, done, bytes.length - done, at);
      done += wrote;
      at += wrote;
    }
  };
  return {
    // An error is one of the promise, as with a stream.
    write: (bytes) =>
      new Promise((resolve) => {
        own(() => {
          writeAll(bytes);
        });
        resolve();
      }),
    length: () => at,
    settle: () => {
      own(() => {
        fdatasyncSync(file);
      });
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

/** Standard output. */
export function streamSink(write: (bytes: Uint8Array) => Promise<void>): Sink {
  let length = 0;
  return {
    write: async (bytes) => {
      length += bytes.length;
      if (bytes.length === 0) return;
      try {
        await write(bytes);
      } catch (error) {
        throw named(STANDARD_OUTPUT, 'write', error);
      }
    },
    length: () => length,
    settle: () => undefined,
    close: () => undefined,
  };
}
