import { LARGEST_WHOLE } from '@unitbook/engine';
import type { IntervalChunk, Stream } from '../stream.ts';
import { addToTally, emptyTally, type Tally } from './tally.ts';
import { MISSING } from './quality.ts';

/** Intervals of one stream and one length as they came. The columns have room for more than `count` rows. */
export interface IntervalRows {
  readonly stream: Stream;
  readonly minutes: number;
  count: number;
  /** Decimal places of a kWh that the values are counted in. */
  places: number;
  starts: Int32Array;
  values: Float64Array;
  qualities: Uint8Array;
  lines: Int32Array;
  /** Whether each row begins after the one before. */
  isOrdered: boolean;
  /** Values that cannot be counted exactly in so many places. */
  readonly tooFine: Tally;
}

const FIRST_ROOM = 512;
const GROWTH = 1.5;
const FARTHEST = 2 ** 31;
/** More than readers hand on: 15 digits, and 3 more where the file counts watt-hours. */
const MOST_PLACES = 18;

/** No rows yet. */
export function emptyRows(stream: Stream, minutes: number): IntervalRows {
  return {
    stream,
    minutes,
    count: 0,
    places: 0,
    starts: new Int32Array(FIRST_ROOM),
    values: new Float64Array(FIRST_ROOM),
    qualities: new Uint8Array(FIRST_ROOM),
    lines: new Int32Array(FIRST_ROOM),
    isOrdered: true,
    tooFine: emptyTally(),
  };
}

/** Make room for more rows. */
function reserve(rows: IntervalRows, more: number): void {
  const needed = rows.count + more;
  if (needed <= rows.starts.length) return;
  const room = Math.max(needed, Math.ceil(rows.starts.length * GROWTH));
  const { starts, values, qualities, lines } = rows;
  rows.starts = new Int32Array(room);
  rows.starts.set(starts);
  rows.values = new Float64Array(room);
  rows.values.set(values);
  rows.qualities = new Uint8Array(room);
  rows.qualities.set(qualities);
  rows.lines = new Int32Array(room);
  rows.lines.set(lines);
}

/** Count some rows in more places; what is then too large to be exact has no value any more. */
function scaleRows(rows: IntervalRows, from: number, places: number): void {
  if (places === 0) return;
  const factor = 10 ** places;
  for (let row = from; row < rows.count; row += 1) {
    const value = (rows.values[row] as number) * factor;
    rows.values[row] = value;
    if (Math.abs(value) <= LARGEST_WHOLE || Number.isNaN(value)) continue;
    rows.values[row] = NaN;
    rows.qualities[row] = MISSING;
    addToTally(rows.tooFine, rows.starts[row] as number, rows.lines[row]);
  }
}

/**
 * Check what only a mistake in a reader can bring about.
 *
 * @throws RangeError
 */
export function checkChunk({ start, minutes, places, values, qualities }: IntervalChunk): void {
  if (!Number.isInteger(minutes) || minutes < 1) throw new RangeError(`intervals of ${minutes} minutes`);
  const end = start + values.length * minutes;
  if (!Number.isInteger(start) || start < -FARTHEST || end >= FARTHEST)
    throw new RangeError(`intervals from ${start} to ${end}, which are no minutes of 32 bits`);
  if (!Number.isInteger(places) || places < 0 || places > MOST_PLACES)
    throw new RangeError(`${places} decimal places`);
  if (qualities !== null && qualities.length < values.length)
    throw new RangeError(`${qualities.length} qualities of ${values.length} values`);
}

/** Copy the values of a chunk behind the rows; a value without a number is missing, and the other way round. */
function copyValues(rows: IntervalRows, { start, minutes, values, qualities, line }: IntervalChunk): void {
  for (let index = 0; index < values.length; index += 1) {
    const row = rows.count + index;
    const value = values[index] as number;
    const quality = qualities === null ? 0 : (qualities[index] as number);
    const isMissing = Number.isNaN(value) || quality === MISSING;
    if (!isMissing && !Number.isSafeInteger(value)) throw new RangeError(`${value} is no whole number`);
    rows.starts[row] = start + index * minutes;
    rows.values[row] = isMissing ? NaN : value;
    rows.qualities[row] = isMissing ? MISSING : quality;
    rows.lines[row] = line;
  }
}

/**
 * Add a chunk of the same stream and length to the rows.
 *
 * @throws RangeError  for a chunk that no reader should make
 */
export function addChunk(rows: IntervalRows, chunk: IntervalChunk): void {
  checkChunk(chunk);
  const { length } = chunk.values;
  if (length === 0) return;
  reserve(rows, length);
  if (rows.count > 0 && chunk.start <= (rows.starts[rows.count - 1] as number)) rows.isOrdered = false;
  const places = Math.max(rows.places, chunk.places);
  scaleRows(rows, 0, places - rows.places);
  rows.places = places;
  copyValues(rows, chunk);
  const from = rows.count;
  rows.count += length;
  scaleRows(rows, from, places - chunk.places);
}
