import type { DayNumber } from '@unitbook/engine';

/** What became of an attempt to read a file. */
export type FileRead =
  | { readonly kind: 'read'; readonly bytes: Uint8Array }
  /** `size` in bytes, or as many as were counted before reading stopped. */
  | { readonly kind: 'too-large'; readonly size: number }
  | { readonly kind: 'missing' | 'folder' }
  | { readonly kind: 'unreadable'; readonly reason: string };

/** Everything outside the program that a command can touch. */
export interface CommandIo {
  /**
   * Read a file, or standard input for "-", but no more than a limit.
   *
   * @param limit  bytes; a larger file is not read
   */
  readonly read: (path: string, limit: number) => Promise<FileRead>;
  /** Write to standard output. */
  readonly out: (text: string) => void;
  /** Write to standard error. */
  readonly err: (text: string) => void;
  /** The day on the clock where the program runs. */
  readonly today: DayNumber;
}
