import { failureFinding, isSystemError, readFailure, systemReason } from '../file-failure.ts';
import { about, type PlacedFinding } from '../findings.ts';
import { batchFinding } from './findings.ts';

/** What is printed for standard output, which has no name. */
export const STANDARD_OUTPUT = 'standard output';

type Use = 'read' | 'write';

/** Something that went wrong with a file: with which, and what the operating system said. */
export class FileTrouble extends Error {
  readonly path: string;
  readonly use: Use;
  override readonly cause: NodeJS.ErrnoException;

  constructor(path: string, use: Use, cause: NodeJS.ErrnoException) {
    super(`${path}: ${cause.message}`);
    this.path = path;
    this.use = use;
    this.cause = cause;
  }

  /** Whether whoever read what was written reads no more. */
  get isClosedPipe(): boolean {
    return this.cause.code === 'EPIPE' || this.cause.code === 'ERR_STREAM_DESTROYED';
  }
}

/**
 * An error with the name of the file it is about; one of the program stays as it is.
 *
 * @example
 * named('found.ndjson', 'write', Object.assign(new Error(), { code: 'EIO', syscall: 'write' })).path //=> "found.ndjson"
 */
export function named(path: string, use: Use, error: unknown): unknown {
  // A stream that was closed already is told of without a call of the system.
  const isOfStream = (error as NodeJS.ErrnoException).code === 'ERR_STREAM_DESTROYED';
  return isSystemError(error) || isOfStream
    ? new FileTrouble(path, use, error as NodeJS.ErrnoException)
    : error;
}

/**
 * Do something with a file, so that an error names it.
 *
 * @throws FileTrouble for what the operating system says
 * @example
 * withFile('found.ndjson', 'write', () => 3) //=> 3
 */
export function withFile<Result>(path: string, use: Use, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw named(path, use, error);
  }
}

interface Words {
  readonly expected: string;
  readonly remedy: string;
  readonly reason?: string;
}

const LEAVE: Words = {
  expected: 'room and leave to write',
  remedy: 'Give leave to write there, or name another file.',
};
const NO_FOLDER: Words = {
  reason: 'no folder of this name',
  expected: 'a folder that is there',
  remedy: 'Make the folder, or name another.',
};
const ROOM: Words = { expected: LEAVE.expected, remedy: 'Make room, and check again.' };

/** What to do about a file that cannot be written, by what the operating system says. */
const WORDS: Readonly<Record<string, Words>> = {
  ENOENT: NO_FOLDER,
  ENOTDIR: NO_FOLDER,
  EISDIR: { reason: 'a folder', expected: 'the name of a file', remedy: 'Name a file.' },
  EACCES: LEAVE,
  EPERM: LEAVE,
  EROFS: LEAVE,
  ENOSPC: ROOM,
  EDQUOT: ROOM,
  EFBIG: { expected: LEAVE.expected, remedy: 'Write to another disk, or in parts with --part.' },
};

/** What is written stays, so that a check can go on where there was no room for more. */
const GO_ON: Readonly<Record<string, string>> = {
  ENOSPC: 'Make room, and go on with --resume: what is written stays.',
  EDQUOT: 'Make room, and go on with --resume: what is written stays.',
};

/**
 * What went wrong with a file, as findings.
 *
 * @param isResumable  whether the check has a journal to go on with
 */
export function troubleFindings(
  { path, use, cause }: FileTrouble,
  isResumable: boolean,
): readonly PlacedFinding[] {
  if (use === 'read') return about(path, [failureFinding(readFailure(cause))]);
  const { code = '' } = cause;
  const {
    reason = systemReason(cause),
    expected,
    remedy,
  } = WORDS[code] ?? {
    expected: 'a file that can be written',
    remedy: 'Name another file.',
  };
  const values = { reason, expected, remedy: (isResumable ? GO_ON[code] : undefined) ?? remedy };
  return about(path, [batchFinding('batch/file', { path: [] }, values)]);
}
