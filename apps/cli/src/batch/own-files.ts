import { fstatSync, lstatSync, readlinkSync, realpathSync, statSync, type Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** A file of a check: what it is called, and what it holds. */
export interface RoleOfFile {
  readonly path: string;
  /** Such as "the findings". */
  readonly role: string;
}

/** Links that lead to links; more lead in a circle. */
const MOST_LINKS = 40;
const STANDARD_INPUT = 0;

const idOf = ({ dev, ino }: Stats): string => `${String(dev)}:${String(ino)}`;

/** The state of a file; null: it is not there, or nobody may look at it. */
function stateOf(path: string): Stats | null {
  try {
    return path === '-' ? fstatSync(STANDARD_INPUT) : statSync(path);
  } catch {
    return null;
  }
}

/**
 * Whether a path leads to something that is there and is no plain file: a device, a pipe or a folder.
 *
 * @param path  "-": standard input
 * @example
 * isOddFile('/') //=> true
 */
export const isOddFile = (path: string): boolean => stateOf(path)?.isFile() === false;

/** Where a file is made that is not there yet: behind the links that lead to it. */
function madeAt(path: string, links = 0): string {
  try {
    if (links < MOST_LINKS && lstatSync(path).isSymbolicLink())
      return madeAt(resolve(dirname(path), readlinkSync(path)), links + 1);
  } catch {
    // No such link: it is made under this name.
  }
  try {
    return join(realpathSync(dirname(path)), basename(path));
  } catch {
    return resolve(path);
  }
}

/** What tells a file from others, whatever it is called: one that is not there yet, by its folder and its name. */
function identityOf(path: string): string | null {
  const state = stateOf(path);
  if (state === null) return madeAt(resolve(path));
  return state.isFile() ? idOf(state) : null;
}

/** Two files of a check that are one. */
export interface SharedFile {
  readonly one: string;
  readonly other: string;
  readonly path: string;
}

/**
 * Files that would be written over: an output that is an input, or another output, by whatever name or link.
 *
 * @param read     what is read; several of them can be one
 * @param written  what is written, in the order in which it is told of
 * @example
 * sharedFiles([{ path: 'rows.csv', role: 'the table' }], [{ path: './rows.csv', role: 'the findings' }]).length //=> 1
 */
export function sharedFiles(
  read: readonly RoleOfFile[],
  written: readonly RoleOfFile[],
): readonly SharedFile[] {
  const taken = new Map<string, string>();
  for (const { path, role } of read) {
    const identity = identityOf(path);
    if (identity !== null && !taken.has(identity)) taken.set(identity, role);
  }
  return written.flatMap(({ path, role }) => {
    const identity = identityOf(path);
    if (identity === null) return [];
    const one = taken.get(identity);
    taken.set(identity, one ?? role);
    return one === undefined || one === role ? [] : [{ one, other: role, path }];
  });
}
