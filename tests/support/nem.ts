import type { Finding } from '@unitbook/engine';
import { nem12Reader, nem13Reader } from '../../packages/meter-files/src/nem/index.ts';
import type {
  IntervalChunk,
  MeterReader,
  MeterSink,
  RegisterValue,
} from '../../packages/meter-files/src/stream.ts';

/** Everything that a reader handed on; arrays are copies, as a reader uses its own again. */
export interface NemFile {
  readonly chunks: readonly IntervalChunk[];
  readonly registers: readonly RegisterValue[];
  readonly findings: readonly Finding[];
}

function readBy(make: (sink: MeterSink) => MeterReader, pieces: Iterable<string>): NemFile {
  const chunks: IntervalChunk[] = [];
  const registers: RegisterValue[] = [];
  const findings: Finding[] = [];
  const reader = make({
    intervals: (chunk) => {
      const qualities = chunk.qualities === null ? null : chunk.qualities.slice();
      chunks.push({ ...chunk, values: chunk.values.slice(), qualities });
    },
    register: (value) => registers.push(value),
    finding: (finding) => findings.push(finding),
  });
  for (const piece of pieces) reader.write(piece);
  reader.end();
  return { chunks, registers, findings };
}

/** Read a NEM12 file, whole or in pieces. */
export const readNem12 = (...pieces: readonly string[]): NemFile => readBy(nem12Reader, pieces);

/** Read a NEM13 file, whole or in pieces. */
export const readNem13 = (...pieces: readonly string[]): NemFile => readBy(nem13Reader, pieces);

/** The sum of values of one stream as a whole number of 10^-places kWh, added one by one; missing ones left out. */
export function energyOf(chunks: readonly IntervalChunk[], register: string, places: number): bigint {
  let sum = 0n;
  for (const chunk of chunks.filter(({ stream }) => stream.register === register)) {
    const scale = 10n ** BigInt(places - chunk.places);
    for (const value of chunk.values) if (!Number.isNaN(value)) sum += BigInt(value) * scale;
  }
  return sum;
}

/** Each finding as "code line cell": the text of the file that stands where the finding says, up to a comma. */
export function placedIn(text: string, findings: readonly Finding[]): readonly string[] {
  const lines = text.split('\n');
  return findings.map(({ code, position }) => {
    const { line = 0, column = 0 } = position ?? {};
    return `${code} ${line} ${lines[line - 1]?.slice(column - 1).split(',')[0] ?? ''}`;
  });
}
