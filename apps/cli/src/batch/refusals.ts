import { about, type PlacedFinding } from '../findings.ts';
import { batchFinding } from './findings.ts';
import { journalPath } from './journal.ts';
import type { BatchOptions } from './options.ts';
import { isOddFile, sharedFiles, type RoleOfFile } from './own-files.ts';

interface Refusal {
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

type Options = Omit<BatchOptions, 'tariff'>;

const FINDINGS = 'the findings';
const UNREAD = 'rows that cannot be used';
const JOURNAL = 'the journal';

/** What to do about an output that is no plain file. */
const INSTEAD: Readonly<Record<string, string>> = {
  [FINDINGS]: 'Leave --findings out to have them printed.',
  [UNREAD]: 'Name a file with --unread.',
  [JOURNAL]: 'Name other findings with --findings.',
};

/**
 * The file beside the findings for rows that cannot be used.
 *
 * @returns undefined: they are kept nowhere
 * @example
 * sidePath({ out: 'found.ndjson' }) //=> "found.ndjson.unread.csv"
 */
export const sidePath = ({ side, out, form }: Pick<Options, 'side' | 'out' | 'form'>): string | undefined =>
  side ?? (out === undefined ? undefined : `${out}.unread.${form ?? 'csv'}`);

function partRefusals({ part, rows }: Options): readonly Refusal[] {
  if (part === undefined) return [];
  const refusals: Refusal[] = [];
  if (!(part.index >= 1 && part.index <= part.count))
    refusals.push({
      found: `part ${String(part.index)} of ${String(part.count)}`,
      expected: 'a part from 1 to as many as there are',
      remedy: 'Number the parts from 1.',
    });
  // What comes through a pipe cannot be shared out: nobody knows how much there is.
  if (rows === '-' || isOddFile(rows))
    refusals.push({
      found: `a part of ${rows === '-' ? 'standard input' : 'what is no plain file'}`,
      expected: 'a file, of which every part reads its own rows',
      remedy: 'Name the file.',
    });
  return refusals;
}

/** Everything that a check writes, in the order in which it is told of. */
function outputsOf(options: Options): readonly RoleOfFile[] {
  const { out } = options;
  const side = sidePath(options);
  return [
    ...(out === undefined ? [] : [{ path: out, role: FINDINGS }]),
    ...(side === undefined ? [] : [{ path: side, role: UNREAD }]),
    ...(out === undefined ? [] : [{ path: journalPath(out), role: JOURNAL }]),
  ];
}

/**
 * Outputs that are no plain files, or would be written over what is read or over one another.
 *
 * @param read     everything that is read
 * @param written  everything that is written
 * @param options  the options that name outputs, for the message
 */
export function fileRefusals(
  read: readonly RoleOfFile[],
  written: readonly RoleOfFile[],
  options = '--findings or --unread',
): readonly Refusal[] {
  const odd = written.filter(({ path }) => isOddFile(path));
  return [
    ...odd.map(({ path, role }) => ({
      found: `${role} to ${path}, which is no plain file`,
      expected: 'a file, or the name of one that is to be made',
      remedy: INSTEAD[role] ?? '',
    })),
    ...sharedFiles(read, written).map(({ one, other, path }) => ({
      found: `one file for ${one} and ${other}: ${path}`,
      expected: 'a file for each of them',
      remedy: `Name another with ${options}.`,
    })),
  ];
}

/** Refusals as findings about the command. */
export const refused = (refusals: readonly Refusal[]): readonly PlacedFinding[] =>
  about(
    'unitbook check',
    refusals.map((values) => batchFinding('batch/options', { path: [] }, { ...values })),
  );

/** Everything that cannot be done about the options of a check, before anything is opened or written. */
export function batchRefusals(options: Options): readonly PlacedFinding[] {
  const { rows, out, isResumed, tariffFiles = [] } = options;
  const read = [
    { path: rows, role: 'the table' },
    ...tariffFiles.map((path) => ({ path, role: 'a tariff' })),
  ];
  const idle: readonly Refusal[] =
    isResumed === true && out === undefined
      ? [
          {
            found: 'a check to go on with, whose findings go to standard output',
            expected: 'a file of findings',
            remedy: 'Name it with --findings.',
          },
        ]
      : [];
  return refused([...partRefusals(options), ...idle, ...fileRefusals(read, outputsOf(options))]);
}
