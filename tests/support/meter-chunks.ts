import { parseDay, type DayNumber, type Finding } from '@unitbook/engine';
import { collectMeterFile, type CollectedFile } from '../../packages/meter-files/src/collected/index.ts';
import {
  VALUE_QUALITIES,
  type FileClock,
  type IntervalChunk,
  type MeterSink,
  type RegisterValue,
  type Stream,
  type ValueQuality,
} from '../../packages/meter-files/src/stream.ts';

/** A register E1 of import, but for what is said. */
export function streamOf(parts: Partial<Stream> = {}): Stream {
  return { point: '', meter: '', register: 'E1', quantity: 'import', rate: null, unit: 'kWh', ...parts };
}

/** The day of a text such as 2025-04-01. */
export function dayOf(text: string): DayNumber {
  const day = parseDay(text);
  if (day === null) throw new RangeError(`"${text}" is no day`);
  return day;
}

/** The minute since 1970 of a text such as "2025-04-01 06:15". */
export function minuteOf(text: string): number {
  const [day = '', time = '00:00'] = text.split(' ');
  const [hour = '', minute = ''] = time.split(':');
  return dayOf(day) * 1440 + Number.parseInt(hour, 10) * 60 + Number.parseInt(minute, 10);
}

/** What a test says of a chunk; the rest is whole watt-hours every 15 minutes, on line 1. */
export interface ChunkParts {
  readonly start: string | number;
  readonly values: readonly (number | null)[];
  readonly stream?: Stream;
  readonly minutes?: number;
  readonly places?: number;
  /** One for each value, or one for all. */
  readonly quality?: ValueQuality | readonly ValueQuality[];
  readonly line?: number;
}

const E1 = streamOf();

/** The chunk of some parts. */
export function chunkOf(parts: ChunkParts): IntervalChunk {
  const { start, values, quality = 'actual' } = parts;
  const qualities = typeof quality === 'string' ? values.map(() => quality) : quality;
  return {
    stream: parts.stream ?? E1,
    start: typeof start === 'string' ? minuteOf(start) : start,
    minutes: parts.minutes ?? 15,
    places: parts.places ?? 3,
    values: Float64Array.from(values, (value) => value ?? NaN),
    qualities: Uint8Array.from(qualities, (one) => VALUE_QUALITIES.indexOf(one)),
    line: parts.line ?? 1,
  };
}

/** A reading "2025-04-01" or "2025-04-01 06:15" of a register. */
export function readingOf(
  stream: Stream,
  moment: string,
  value: string,
  more: { readonly quality?: ValueQuality; readonly line?: number } = {},
): RegisterValue {
  const minute = moment.includes(' ') ? minuteOf(moment) % 1440 : null;
  return {
    stream,
    day: dayOf(moment.slice(0, 10)),
    minute,
    value,
    quality: more.quality ?? 'actual',
    line: more.line ?? 1,
  };
}

/** What a file has in it. */
export interface FileParts {
  readonly chunks?: readonly ChunkParts[];
  readonly readings?: readonly RegisterValue[];
  readonly findings?: readonly Finding[];
}

/** Put the parts of a file into a sink. */
export function fill(sink: MeterSink, { chunks = [], readings = [], findings = [] }: FileParts): void {
  for (const chunk of chunks) sink.intervals(chunkOf(chunk));
  for (const reading of readings) sink.register(reading);
  for (const finding of findings) sink.finding(finding);
}

/** A file of such parts, collected; its clock is UTC if nothing else is said. */
export function fileOf(parts: FileParts, clock: FileClock = { offset: 0 }): CollectedFile {
  const { sink, result } = collectMeterFile();
  fill(sink, parts);
  return result(clock);
}

/** The codes of findings, in their order. */
export function codesOf(findings: readonly Finding[]): readonly string[] {
  return findings.map(({ code }) => code);
}
