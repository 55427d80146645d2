import type { Stream } from '../stream.ts';

/** The most streams of one file; each is kept in memory. */
const MOST_STREAMS = 10_000;

/** A text of its own: part of a line would keep the whole line in memory. */
const owned = (text: string): string => Array.from(text).join('');

/** The streams of a file, each with something of its own, by what tells them apart. */
export interface Streams<Own> {
  /** What belongs to a stream, made where it is new; null where there are too many. */
  readonly of: (stream: Stream, apart: string, make: (stream: Stream) => Own) => Own | null;
}

/** Keep one object for each stream of a file. */
export function keepStreams<Own>(): Streams<Own> {
  const kept = new Map<string, Own>();
  const of = (stream: Stream, apart: string, make: (stream: Stream) => Own): Own | null => {
    const { point, meter, register, quantity, unit } = stream;
    const key = JSON.stringify([point, meter, register, quantity, unit, apart]);
    const known = kept.get(key);
    if (known !== undefined) return known;
    if (kept.size >= MOST_STREAMS) return null;
    const own = make({
      ...stream,
      point: owned(point),
      meter: owned(meter),
      register: owned(register),
      unit: owned(unit),
    });
    kept.set(key, own);
    return own;
  };
  return { of };
}

/** How many streams a file may have, as a finding shows it. */
export const MOST_STREAMS_TEXT: string = String(MOST_STREAMS);
