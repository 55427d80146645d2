import type { Finding } from '@unitbook/engine';
import {
  collectedFinding,
  decodePieces,
  meterFileKind,
  openMeterFile,
  type CollectedFindingCode,
  type FileClock,
  type MeterSink,
  type OpenOptions,
  type StreamedKind,
  type ToldKind,
} from '@unitbook/meter-files';
import type { OpenedFile } from './open-file.ts';
import { isJson } from './own-readings.ts';

/**
 * What a file is: a table where somebody said what its columns are, else what its content tells.
 *
 * @param isTable  whether its columns were named
 */
export function kindOf({ head }: Pick<OpenedFile, 'head'>, isTable: boolean): ToldKind {
  const told = meterFileKind(head);
  if (told.why === 'an empty file') return told;
  if (isTable) return { kind: 'table', why: '--columns' };
  return isJson(head) ? { kind: 'own-register-list', why: 'a bracket at its beginning, as JSON has' } : told;
}

/** Why a kind of file holds no meter data that can be read; null where it may. */
export function kindFinding({ kind, why }: ToldKind): Finding | null {
  const make = (code: CollectedFindingCode): Finding => collectedFinding(code, { path: [] }, { why });
  if (why === 'an empty file') return make('meter-file/empty');
  return kind === null ? make('meter-file/kind-not-known') : null;
}

/** How a file is to be read. */
export interface StreamOptions extends OpenOptions {
  readonly kind: StreamedKind;
}

/**
 * Read an opened file piece by piece to its end; what is held does not grow with it.
 *
 * @param sink  where values and findings go, findings about its bytes last
 * @returns     its clock
 */
export async function streamMeterFile(
  file: OpenedFile,
  sink: MeterSink,
  { kind, ...options }: StreamOptions,
): Promise<FileClock> {
  const decoder = decodePieces();
  const reader = openMeterFile(kind, sink, options);
  for await (const bytes of file.bytes) {
    reader.write(decoder.write(bytes));
    if (decoder.isNoText()) break;
  }
  reader.write(decoder.end());
  reader.end();
  const failure = file.failure();
  for (const finding of [...decoder.findings(), ...(failure === null ? [] : [failure])])
    sink.finding(finding);
  return reader.clock;
}
