import type { Finding, FindingPlace } from '@unitbook/engine';
import { commandFinding } from './findings.ts';

/** Why a file could not be read, or not to its end. */
export type FileFailure =
  { readonly kind: 'missing' | 'folder' } | { readonly kind: 'unreadable'; readonly reason: string };

/** What the operating system says of a file, in words. */
const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'a disk that is only read',
  ELOOP: 'a link that leads back to itself',
  ENAMETOOLONG: 'a name too long for a file',
  EMFILE: 'too many files open',
  ENOSPC: 'no space is left on the disk',
  EDQUOT: 'the quota of the disk is used up',
  EFBIG: 'a file larger than the disk allows',
  EIO: 'a disk that fails',
};

const HERE: FindingPlace = { path: [] };

/** Whether an error is of the operating system, as against one of the program. */
export const isSystemError = (error: unknown): error is NodeJS.ErrnoException =>
  error instanceof Error && typeof (error as NodeJS.ErrnoException).code === 'string' && 'syscall' in error;

/**
 * The reason of an error of the operating system, in words.
 *
 * @returns the code where there are no words for it
 * @example
 * systemReason({ code: 'EACCES' }) //=> "permission denied"
 */
export function systemReason({ code = '' }: { readonly code?: string | undefined }): string {
  return REASONS[code] ?? (code || 'an unknown reason');
}

/**
 * What kept a file from being read.
 *
 * @param error  as the operating system gave it
 * @example
 * readFailure({ code: 'ENOTDIR' }) //=> {"kind":"missing"}
 */
export function readFailure(error: unknown): FileFailure {
  const { code = '' } = error as NodeJS.ErrnoException;
  if (code === 'ENOENT' || code === 'ENOTDIR') return { kind: 'missing' };
  if (code === 'EISDIR') return { kind: 'folder' };
  return { kind: 'unreadable', reason: systemReason({ code }) };
}

/**
 * Why a file could not be read, as a finding.
 *
 * @example
 * failureFinding({ kind: 'folder' }).code //=> "command/folder"
 */
export function failureFinding(failure: FileFailure): Finding {
  switch (failure.kind) {
    case 'missing':
      return commandFinding('command/missing-file', HERE);
    case 'folder':
      return commandFinding('command/folder', HERE);
    case 'unreadable':
      return commandFinding('command/unreadable-file', HERE, { reason: failure.reason });
  }
}
