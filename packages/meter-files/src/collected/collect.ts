import type { Finding } from '@unitbook/engine';
import type { FileClock, IntervalChunk, MeterSink, RegisterValue, Stream } from '../stream.ts';
import { keepFindings } from './finding-keeper.ts';
import { addChunk, emptyRows, type IntervalRows } from './interval-rows.ts';
import { seriesOfStream, type IntervalSeries } from './interval-series.ts';
import { registerSeries, type RegisterSeries } from './register-list.ts';

/** A meter file that was read to its end. */
export interface CollectedFile {
  /** The clock of the starts of intervals. */
  readonly clock: FileClock;
  /** By stream, in the order of their names; of one stream the shortest intervals first. */
  readonly intervals: readonly IntervalSeries[];
  readonly registers: readonly RegisterSeries[];
  /** Those of the reader, then those about what it read. */
  readonly findings: readonly Finding[];
}

/** Holds a meter file while it is read. */
export interface MeterCollector {
  /** For the reader. */
  readonly sink: MeterSink;
  /**
   * What was read, put in order.
   *
   * @param clock  of the reader
   */
  readonly result: (clock: FileClock) => CollectedFile;
}

/** What tells streams apart, in the order of their names. */
const namesOf = ({ point, meter, register, rate, quantity, unit }: Stream): readonly string[] => [
  point,
  meter,
  register,
  rate ?? '',
  quantity,
  unit,
];

/** Order of names by their characters, the same everywhere. */
export function byName(a: Stream, b: Stream): number {
  const others = namesOf(b);
  for (const [index, name] of namesOf(a).entries()) {
    const other = others[index] ?? '';
    if (name !== other) return name < other ? -1 : 1;
  }
  return 0;
}

/** The rows of a stream by the length of the intervals. */
type RowsByLength = Map<number, IntervalRows>;

function addInterval(streams: Map<Stream, RowsByLength>, chunk: IntervalChunk): void {
  const { stream, minutes } = chunk;
  const lengths = streams.get(stream) ?? new Map<number, IntervalRows>();
  streams.set(stream, lengths);
  const rows = lengths.get(minutes) ?? emptyRows(stream, minutes);
  addChunk(rows, chunk);
  lengths.set(minutes, rows);
}

const sortedByName = <Own>(streams: ReadonlyMap<Stream, Own>): readonly (readonly [Stream, Own])[] =>
  [...streams].sort(([a], [b]) => byName(a, b));

/**
 * Collect what a reader reads: columns of intervals and lists of register readings, in order of time and
 * each once, with findings about what is doubled. The order in which a file has them makes no difference.
 *
 * @example
 * const { sink, result } = collectMeterFile();
 * const stream = { point: '', meter: '', register: 'E1', quantity: 'import', rate: null, unit: 'kWh' };
 * sink.intervals({ stream, start: 15, minutes: 15, places: 3, values: new Float64Array([120]), qualities: null, line: 2 });
 * sink.intervals({ stream, start: 0, minutes: 15, places: 2, values: new Float64Array([25]), qualities: null, line: 3 });
 * Array.from(result({ offset: 0 }).intervals[0].values) //=> [250,120]
 */
export function collectMeterFile(): MeterCollector {
  const streams = new Map<Stream, RowsByLength>();
  const registers = new Map<Stream, RegisterValue[]>();
  const kept = keepFindings();
  const sink: MeterSink = {
    intervals: (chunk) => {
      addInterval(streams, chunk);
    },
    register: (value) => {
      const readings = registers.get(value.stream) ?? [];
      readings.push(value);
      registers.set(value.stream, readings);
    },
    finding: kept.add,
  };
  const result = (clock: FileClock): CollectedFile => {
    const own = keepFindings();
    const intervals = sortedByName(streams).flatMap(([stream, lengths]) =>
      seriesOfStream(stream, [...lengths.values()], own.add),
    );
    const lists = sortedByName(registers).map(([stream, readings]) =>
      registerSeries(stream, readings, own.add),
    );
    return { clock, intervals, registers: lists, findings: [...kept.findings(), ...own.findings()] };
  };
  return { sink, result };
}
