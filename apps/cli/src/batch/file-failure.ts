import { about, type PlacedFinding } from '../findings.ts';
import { batchFinding } from './findings.ts';

interface Words {
  readonly reason: string;
  readonly expected: string;
  readonly remedy: string;
}

const READABLE = 'a file that can be read';
const WRITABLE = 'room and leave to write';

const WORDS: Readonly<Record<string, Words>> = {
  ENOENT: { reason: 'no such file', expected: READABLE, remedy: 'Check the path.' },
  ENOTDIR: { reason: 'no such file', expected: READABLE, remedy: 'Check the path.' },
  EISDIR: { reason: 'a folder', expected: READABLE, remedy: 'Name a file.' },
  EACCES: { reason: 'permission denied', expected: READABLE, remedy: 'Give leave to read and write it.' },
  ENOSPC: {
    reason: 'no space is left on the disk',
    expected: WRITABLE,
    remedy: 'Make room, and go on with --resume: what is written stays.',
  },
  EDQUOT: {
    reason: 'the quota of the disk is used up',
    expected: WRITABLE,
    remedy: 'Make room, and go on with --resume: what is written stays.',
  },
  EFBIG: {
    reason: 'a file larger than the disk allows',
    expected: WRITABLE,
    remedy: 'Write to another disk, or in parts with --part.',
  },
};

/** Whether something went wrong with a file, as against with the program. */
export const isFileError = (error: unknown): error is NodeJS.ErrnoException =>
  error instanceof Error && typeof (error as NodeJS.ErrnoException).code === 'string' && 'syscall' in error;

/** What the system said of a file, in words. */
export function fileFailure(path: string, error: NodeJS.ErrnoException): readonly PlacedFinding[] {
  const words = WORDS[error.code ?? ''] ?? {
    reason: error.message,
    expected: 'files that can be read and written',
    remedy: 'Put that right, and go on with --resume.',
  };
  return about(path, [batchFinding('batch/file', { path: [] }, { ...words })]);
}
