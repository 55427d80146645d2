import { VALUE_QUALITIES, type IntervalChunk, type MeterSink, type Stream } from '../stream.ts';

/** Values in one chunk; a longer block is handed on in several. */
export const CHUNK_VALUES = 4096;

const ACTUAL = VALUE_QUALITIES.indexOf('actual');

/** One interval that can be handed on. */
interface Interval {
  readonly stream: Stream;
  readonly places: number;
  /** Minutes of UTC since 1970. */
  readonly start: number;
  readonly minutes: number;
  /** A whole number of 10^-places kWh. */
  readonly value: number;
  /** An index into VALUE_QUALITIES. */
  readonly quality: number;
  readonly line: number;
}

/** Puts intervals that follow each other into chunks. */
export interface ChunkBuilder {
  readonly add: (interval: Interval) => void;
  /** Hand on what there is: a block has ended. */
  readonly flush: () => void;
}

type Head = Pick<IntervalChunk, 'stream' | 'start' | 'minutes' | 'places' | 'line'>;

/** Make chunks of intervals; the arrays of one are used again for the next. */
export function chunkBuilder(sink: MeterSink): ChunkBuilder {
  const values = new Float64Array(CHUNK_VALUES);
  const qualities = new Uint8Array(CHUNK_VALUES);
  let head: Head | null = null;
  let count = 0;
  let isActual = true;

  const flush = (): void => {
    if (head === null) return;
    const marks = isActual ? null : qualities.subarray(0, count);
    sink.intervals({ ...head, values: values.subarray(0, count), qualities: marks });
    head = null;
  };
  const goesOn = ({ stream, start, minutes }: Interval): boolean =>
    head !== null &&
    count < CHUNK_VALUES &&
    head.stream === stream &&
    head.minutes === minutes &&
    head.start + count * minutes === start;

  return {
    add: (interval) => {
      if (!goesOn(interval)) {
        flush();
        const { stream, start, minutes, places, line } = interval;
        head = { stream, start, minutes, places, line };
        count = 0;
        isActual = true;
      }
      values[count] = interval.value;
      qualities[count] = interval.quality;
      if (interval.quality !== ACTUAL) isActual = false;
      count += 1;
    },
    flush,
  };
}
