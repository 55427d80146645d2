import type { Finding } from '@unitbook/engine';
import { decodePieces } from '@unitbook/meter-files';
import { failureFinding } from '../file-failure.ts';
import type { CommandIo, FilePiece } from '../io.ts';

/** So many characters tell what a file is. */
const HEAD = 65_536;

/** A file of which the beginning has been read. */
export interface OpenedFile {
  /** Its first characters; '' for a file that is no text. */
  readonly head: string;
  /** All of its bytes from the beginning on, once. */
  readonly bytes: AsyncIterable<Uint8Array>;
  /** Why it could not be opened, or what keeps it from being text; none: it can be read. */
  readonly findings: readonly Finding[];
  /** Why it could not be read to its end, once that was tried; null: it could. */
  readonly failure: () => Finding | null;
  /** No more of it is wanted. */
  readonly close: () => Promise<void>;
}

/** The pieces of a file one after the other, and why they ended. */
class PieceReader {
  failure: Finding | null = null;
  private readonly iterator: AsyncIterator<FilePiece>;

  constructor(pieces: AsyncIterable<FilePiece>) {
    this.iterator = pieces[Symbol.asyncIterator]();
  }

  /** The next bytes; null at the end. */
  async next(): Promise<Uint8Array | null> {
    const next = await this.iterator.next();
    if (next.done === true) return null;
    if (next.value.kind === 'bytes') return next.value.bytes;
    this.failure = failureFinding(next.value);
    return null;
  }

  async close(): Promise<void> {
    await this.iterator.return?.();
  }

  /** Read on: first what was read already, then the rest. */
  async *all(held: readonly Uint8Array[]): AsyncGenerator<Uint8Array> {
    yield* held;
    if (this.failure !== null) return;
    for (let bytes = await this.next(); bytes !== null; bytes = await this.next()) yield bytes;
  }
}

/**
 * Open a file and look at its beginning.
 *
 * @param path  or "-" for standard input
 */
export async function openFile(io: CommandIo, path: string): Promise<OpenedFile> {
  const reader = new PieceReader(io.pieces(path));
  const decoder = decodePieces();
  const held: Uint8Array[] = [];
  let head = '';
  while (head.length < HEAD && !decoder.isNoText()) {
    const bytes = await reader.next();
    if (bytes === null) {
      head += decoder.end();
      break;
    }
    // Whoever reads the file may use the bytes again.
    held.push(bytes.slice());
    head += decoder.write(bytes);
  }
  const { failure } = reader;
  const noText = decoder.findings().filter(({ severity }) => severity === 'error');
  return {
    head: head.slice(0, HEAD),
    bytes: reader.all(held),
    findings: failure !== null && held.length === 0 ? [failure] : noText,
    failure: () => reader.failure,
    close: () => reader.close(),
  };
}
