import type { Finding, Severity } from '@unitbook/engine';
import { findingLine } from './render/finding-line.ts';
import type { CommandIo } from './io.ts';

/** So many messages of one code are printed; the others are counted. */
const MOST_OF_ONE_CODE = 200;

/** How often a code was told, and where. */
export interface CodeCount {
  readonly code: string;
  readonly severity: Severity;
  readonly count: number;
  /** The first line of the file that it was told of, and the last; null where it was of none. */
  readonly first: number | null;
  readonly last: number | null;
}

/** Prints findings as they come. */
export interface MessageStream {
  readonly add: (finding: Finding) => void;
  /** By code and severity, in the order in which they came. */
  readonly counts: () => readonly CodeCount[];
}

type Mutable<Type> = { -readonly [Key in keyof Type]: Type[Key] };

function countIn(counts: Map<string, Mutable<CodeCount>>, { code, severity, position }: Finding): CodeCount {
  const key = `${severity} ${code}`;
  const known = counts.get(key) ?? { code, severity, count: 0, first: null, last: null };
  counts.set(key, known);
  known.count += 1;
  const line = position?.line ?? null;
  if (line !== null) {
    known.first = Math.min(known.first ?? line, line);
    known.last = Math.max(known.last ?? line, line);
  }
  return known;
}

/**
 * Print findings to standard error as they come: of each code the first 200, then how many more there are
 * can be asked. What is held does not grow with their number.
 *
 * @param subject  the file, as messages name it
 */
export function messageStream(io: Pick<CommandIo, 'err'>, subject: string): MessageStream {
  const counts = new Map<string, Mutable<CodeCount>>();
  const add = (finding: Finding): void => {
    const { count } = countIn(counts, finding);
    if (count <= MOST_OF_ONE_CODE) io.err(`${findingLine({ subject, finding })}\n`);
    else if (count === MOST_OF_ONE_CODE + 1)
      io.err(`… and more of the kind ${finding.code}: they are counted, but not printed.\n`);
  };
  return { add, counts: () => [...counts.values()] };
}
