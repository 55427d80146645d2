import type { Finding } from '@unitbook/engine';
import {
  collectedFinding,
  collectMeterFile,
  VALUE_QUALITIES,
  type CollectedFile,
  type MeterFileKind,
  type TableLayout,
} from '@unitbook/meter-files';
import { commandFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { KIND_WORDS } from '../render/kind-words.ts';
import { openFile, type OpenedFile } from './open-file.ts';
import { kindFinding, kindOf, streamMeterFile } from './stream-meter-file.ts';

/** Interval data of a file, or null where none could be read. */
export interface IntervalsFile {
  readonly file: CollectedFile | null;
  /** What the file is, in words. */
  readonly words: string;
  readonly findings: readonly Finding[];
}

const nothing = (findings: readonly Finding[]): IntervalsFile => ({ file: null, words: '', findings });

/** Why a file that can be opened holds no interval data for a bill; null where it may. */
function refusal(kind: MeterFileKind | null, why: string, layout: TableLayout | null): Finding | null {
  if (kind === 'own-register-list') return collectedFinding('meter-file/no-intervals', { path: [] });
  if (kind !== 'table' || layout !== null) return null;
  const remedy =
    'Type unitbook readings FILE: it prints what the columns may be, and what to do to have the file read by them.';
  return commandFinding('command/needs-columns', { path: [] }, { why, remedy });
}

async function collect(file: OpenedFile, layout: TableLayout | null): Promise<IntervalsFile> {
  if (file.findings.length > 0) return nothing(file.findings);
  const told = kindOf(file, layout !== null);
  const { kind, why } = told;
  const found = kindFinding(told) ?? refusal(kind, why, layout);
  if (found !== null) return nothing([found]);
  if (kind === null || kind === 'own-register-list') return nothing([]);
  const { sink, result } = collectMeterFile();
  const options = { kind, ...(layout === null ? {} : { layout }) };
  const collected = result(await streamMeterFile(file, sink, options));
  return { file: collected, words: KIND_WORDS[kind], findings: collected.findings };
}

/**
 * Read the interval data of a file of any size.
 *
 * @param path    or "-" for standard input
 * @param layout  what the columns of a table are; null: the file says it itself
 */
export async function readIntervalsFile(
  io: CommandIo,
  path: string,
  layout: TableLayout | null,
): Promise<IntervalsFile> {
  const file = await openFile(io, path);
  try {
    return await collect(file, layout);
  } finally {
    await file.close();
  }
}

/** How many interval values of a file nobody measured: estimated or substituted. */
export function estimatedCount({ intervals }: CollectedFile): number {
  const isEstimate = VALUE_QUALITIES.map((quality) => quality === 'estimated' || quality === 'substituted');
  return intervals.reduce(
    (sum, { qualities }) =>
      qualities.reduce((own, quality) => own + (isEstimate[quality] === true ? 1 : 0), sum),
    0,
  );
}
