import type { Finding } from '@unitbook/engine';
import type {
  FileClock,
  IntervalChunk,
  MeterSink,
  RegisterValue,
} from '../../packages/meter-files/src/stream.ts';
import {
  tableReader,
  type TableColumn,
  type TableLayout,
} from '../../packages/meter-files/src/table/index.ts';

/** Everything that a reader of a table handed on; arrays are copies, as a reader uses its own again. */
export interface TableFile {
  readonly clock: FileClock;
  readonly chunks: readonly IntervalChunk[];
  readonly registers: readonly RegisterValue[];
  readonly findings: readonly Finding[];
}

/** Read a table, whole or in pieces. */
export function readTable(layout: TableLayout, ...pieces: readonly string[]): TableFile {
  const chunks: IntervalChunk[] = [];
  const registers: RegisterValue[] = [];
  const findings: Finding[] = [];
  const sink: MeterSink = {
    intervals: (chunk) => {
      const qualities = chunk.qualities === null ? null : chunk.qualities.slice();
      chunks.push({ ...chunk, values: chunk.values.slice(), qualities });
    },
    register: (value) => registers.push(value),
    finding: (finding) => findings.push(finding),
  };
  const reader = tableReader(layout, sink);
  for (const piece of pieces) reader.write(piece);
  reader.end();
  return { clock: reader.clock, chunks, registers, findings };
}

const COLUMNS: readonly TableColumn[] = [{ is: 'date-time' }, { is: 'import', unit: 'kWh' }];

const REGISTERS: TableLayout = {
  format: 'unitbook-columns-1',
  header: ['time', 'import'],
  holds: 'registers',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  clock: 'local',
  columns: [...COLUMNS],
  confirmed: true,
};

/** Registers "time,import" in kWh by a local clock, but for what is said. */
export function registerLayout(parts: Partial<TableLayout> = {}): TableLayout {
  return { ...REGISTERS, ...parts };
}

/** Quarter hours "time,import" in kWh, local and by their start, but for what is said. */
export function intervalLayout(parts: Partial<TableLayout> = {}): TableLayout {
  return { ...REGISTERS, holds: 'intervals', label: 'start', minutes: '15', ...parts };
}

/** Every value of the chunks with the minute at which it begins, in the order of the file; null for a missing one. */
export function valuesOf(
  chunks: readonly IntervalChunk[],
): readonly (readonly [start: number, whole: number | null])[] {
  return chunks.flatMap(({ start, minutes, values }) =>
    Array.from(values, (value, at): readonly [number, number | null] => [
      start + at * minutes,
      Number.isNaN(value) ? null : value,
    ]),
  );
}
