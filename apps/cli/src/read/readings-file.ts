import type { DayNumber, Finding } from '@unitbook/engine';
import {
  LARGEST_FILE,
  meterFileKind,
  readMeterFile,
  tooLargeFinding,
  type MeterFileKind,
  type TableLayout,
} from '@unitbook/meter-files';
import { commandFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { METER_READINGS } from '../render/finding-line.ts';
import { KIND_WORDS } from '../render/kind-words.ts';
import { meterRows, type WantedDays } from './meter-rows.ts';
import { isJson, readOwnReadings, type ReadReadingsFile } from './own-readings.ts';
import { fileName, readBytes } from './read-bytes.ts';

/** How a file is to be read that is no list of ours. */
export interface ReadingsOptions {
  /** What the columns of a table are; null: the file is no other table than our list. */
  readonly layout: TableLayout | null;
  /** The day of a list of registers that has none; null: it has. */
  readonly day: DayNumber | null;
  readonly on: WantedDays;
}

/** As a list of ours is read. */
export const PLAIN_READINGS: ReadingsOptions = { layout: null, day: null, on: null };

/** The meter files that hold readings of registers, or may. */
const METER_KINDS: readonly (MeterFileKind | null)[] = [
  'nem12',
  'nem13',
  'espi',
  'telegram',
  'register-list',
];
/** Those that can be without a day. */
const DAYLESS: readonly (MeterFileKind | null)[] = ['telegram', 'register-list'];

/** A finding about a row of readings that came from a meter file, at the line on which they begin. */
function placedOn(lines: readonly number[], finding: Finding): Finding {
  const [, index, ...rest] = finding.path;
  const line = typeof index === 'number' ? lines[index] : undefined;
  if (index === undefined || line === undefined) return finding;
  return { ...finding, path: [METER_READINGS, index, ...rest], position: { line, column: 1 } };
}

function fromMeterFile(
  bytes: Uint8Array,
  subject: string,
  { layout, day, on }: ReadingsOptions,
): ReadReadingsFile {
  const asTable = layout === null ? {} : { kind: 'table' as const, layout };
  const { kind, file, findings } = readMeterFile(bytes, { ...asTable, ...(day === null ? {} : { day }) });
  if (file === null) return { readings: null, findings };
  const { rows, lines, findings: ofRows } = meterRows(file, on);
  const all = [...findings, ...ofRows];
  if (rows.length === 0) return { readings: null, findings: all };
  const words = `${subject}, ${kind === null ? '' : KIND_WORDS[kind]}`;
  const place = (finding: Finding): Finding => placedOn(lines, finding);
  return { readings: { subject, words, rows, gaps: [], place }, findings: all };
}

/**
 * Options that say nothing about a file of this kind.
 *
 * @param kind  null: a document or list of ours
 */
export function idleOptions(
  kind: MeterFileKind | null,
  { day, on }: Pick<ReadingsOptions, 'day' | 'on'>,
): readonly Finding[] {
  const idle = (name: string, wanted: string): Finding =>
    commandFinding('command/option-idle', { path: [] }, { name, wanted });
  const isOwn = kind === null || kind === 'own-register-list';
  return [
    ...(day === null || DAYLESS.includes(kind) ? [] : [idle('--day', 'a list of registers without a day')]),
    ...(on === null || !isOwn
      ? []
      : [idle('--on', 'a meter file, which has more readings than a bill needs')]),
  ];
}

function readAs(bytes: Uint8Array, subject: string, options: ReadingsOptions): ReadReadingsFile {
  const head = new TextDecoder().decode(bytes.subarray(0, 65_536));
  const told = isJson(head) ? null : meterFileKind(head).kind;
  const isMeterFile = options.layout !== null || METER_KINDS.includes(told);
  const kind = options.layout !== null ? 'table' : isMeterFile ? told : null;
  const idle = idleOptions(kind, options);
  if (idle.length > 0) return { readings: null, findings: idle };
  if (isMeterFile) return fromMeterFile(bytes, subject, options);
  return readOwnReadings(bytes, head, subject);
}

/**
 * Read a file of readings as its content has it: our list or document, or a meter file with registers.
 *
 * @param path  or "-" for standard input
 */
export async function readReadingsFile(
  io: CommandIo,
  path: string,
  options: ReadingsOptions = PLAIN_READINGS,
): Promise<ReadReadingsFile> {
  const { bytes, findings } = await readBytes(io, path, { limit: LARGEST_FILE, finding: tooLargeFinding });
  return bytes === null ? { readings: null, findings } : readAs(bytes, fileName(path), options);
}
