import type { DayNumber } from '@unitbook/engine';
import type { BatchIo } from './batch/index.ts';
import type { FileFailure } from './file-failure.ts';
import type { ParquetEngine } from './parquet/engine.ts';

/** What became of an attempt to read a file. */
export type FileRead =
  | { readonly kind: 'read'; readonly bytes: Uint8Array }
  /** `size` in bytes, or as many as were counted before reading stopped. */
  | { readonly kind: 'too-large'; readonly size: number }
  | FileFailure;

/** A part of a file as it is read; after a failure nothing comes. */
export type FilePiece = { readonly kind: 'bytes'; readonly bytes: Uint8Array } | FileFailure;

/** Everything outside the program that a command can touch. */
export interface CommandIo {
  /**
   * Read a file, or standard input for "-", but no more than a limit.
   *
   * @param limit  bytes; a larger file is not read
   */
  readonly read: (path: string, limit: number) => Promise<FileRead>;
  /** Read a file of any size, or standard input for "-", piece by piece. */
  readonly pieces: (path: string) => AsyncIterable<FilePiece>;
  /** Write to standard output. */
  readonly out: (text: string) => void;
  /** Write to standard error. */
  readonly err: (text: string) => void;
  /** The day on the clock where the program runs. */
  readonly today: DayNumber;
  /** What a check of a whole table touches: threads, a clock that only goes on, bytes of any number. */
  readonly batch: () => BatchIo;
  /** What reads and writes Parquet; null: it is not installed. */
  readonly parquet: () => Promise<ParquetEngine | null>;
}
