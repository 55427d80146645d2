import type { Finding, QuoteProfile } from '@unitbook/engine';
import { localColumns, type LocalIntervals } from '@unitbook/meter-files';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { readColumnsFile } from './columns-file.ts';
import { readIntervalsFile } from './intervals-file.ts';
import { fileName } from './read-bytes.ts';

/** Files that a profile is read from. */
export interface ProfilePaths {
  readonly profile: string;
  readonly columns: string | undefined;
  readonly zone: string | undefined;
}

/** A profile that was read; null where it cannot be used. */
export interface ReadProfileFile {
  readonly value: QuoteProfile | null;
  readonly findings: readonly PlacedFinding[];
}

/**
 * Use and generation of a house that has no plant yet: what it takes from the grid is what it uses.
 *
 * @returns null where one of the two channels is not there, or not for every interval
 */
function profileOf({ columns }: LocalIntervals): QuoteProfile | Finding {
  const { import: use, generation, minutes, starts } = columns;
  const lacks = [...(use === null ? ['import'] : []), ...(generation === null ? ['generation'] : [])];
  if (use === null || generation === null) {
    return commandFinding('command/profile-channels', { path: [] }, { missing: lacks.join(' and ') });
  }
  return {
    minutes,
    starts,
    use: Float64Array.from(use),
    generation: Float64Array.from(generation),
  };
}

/** Read a year of intervals as the shape of a quote. */
export async function readProfileFile(io: CommandIo, paths: ProfilePaths): Promise<ReadProfileFile> {
  const columns = await readColumnsFile(io, paths.columns);
  if (columns.isBroken) return { value: null, findings: columns.findings };
  const subject = fileName(paths.profile);
  const read = await readIntervalsFile(io, paths.profile, columns.layout);
  const findings = [...columns.findings, ...about(subject, read.findings)];
  if (read.file === null) return { value: null, findings };
  const zone = paths.zone ?? columns.layout?.zone ?? null;
  const local = localColumns(read.file, { zone });
  const told = [...findings, ...about(subject, local.findings)];
  if (local.value === null) return { value: null, findings: told };
  const made = profileOf(local.value);
  return 'code' in made
    ? { value: null, findings: [...told, ...about(subject, [made])] }
    : { value: made, findings: told };
}
