import { VALUE_QUALITIES, type IntervalChunk, type Stream } from '../stream.ts';
import type { CollectedFile } from './collect.ts';
import { collectRanges, gapsWithin, type MinuteRange } from './minute-ranges.ts';

/** What of the time between its first and its last value a stream covers. Minutes are those of the file's clock. */
export interface StreamCoverage {
  readonly stream: Stream;
  /** The stretches that have values, in order; empty where there is none. */
  readonly covered: readonly MinuteRange[];
  /** The stretches between the first value and the last that have none, in order. */
  readonly gaps: readonly MinuteRange[];
  /** How many intervals the file has without a value. */
  readonly missing: number;
  /** How many minutes it has more than once. */
  readonly doubled: number;
  /** The length of the shortest intervals, in minutes. */
  readonly minutes: number;
}

/** Watches what a stream covers, as it is read. */
export interface CoverageTracker {
  readonly add: (chunk: Pick<IntervalChunk, 'start' | 'minutes' | 'values' | 'qualities'>) => void;
  readonly result: () => StreamCoverage;
}

const MISSING = VALUE_QUALITIES.indexOf('missing');

/** Watch a stream. What is held grows with its gaps, not with its values. */
export function trackCoverage(stream: Stream): CoverageTracker {
  const ranges = collectRanges();
  let missing = 0;
  let shortest = Infinity;
  const add: CoverageTracker['add'] = ({ start, minutes, values, qualities }) => {
    shortest = Math.min(shortest, minutes);
    let from = 0;
    for (let index = 0; index < values.length; index += 1) {
      if (!Number.isNaN(values[index]) && qualities?.[index] !== MISSING) continue;
      missing += 1;
      if (index > from) ranges.add(start + from * minutes, start + index * minutes);
      from = index + 1;
    }
    if (values.length > from) ranges.add(start + from * minutes, start + values.length * minutes);
  };
  const result = (): StreamCoverage => {
    const covered = ranges.ranges();
    const [first, last] = [covered[0], covered.at(-1)];
    const gaps =
      first === undefined || last === undefined ? [] : gapsWithin(covered, { from: first.from, to: last.to });
    return {
      stream,
      covered,
      gaps,
      missing,
      doubled: ranges.doubled(),
      minutes: Number.isFinite(shortest) ? shortest : 0,
    };
  };
  return { add, result };
}

/** Ends of the stretches of intervals that follow each other without a gap. */
function stretchEnd(starts: Int32Array, from: number, minutes: number): number {
  let end = from + 1;
  while (end < starts.length && starts[end] === (starts[end - 1] as number) + minutes) end += 1;
  return end;
}

/**
 * What each stream of a collected file covers.
 *
 * @returns  in the order of the file's streams
 */
export function fileCoverage({ intervals }: Pick<CollectedFile, 'intervals'>): readonly StreamCoverage[] {
  const trackers = new Map<Stream, CoverageTracker>();
  for (const { stream, minutes, starts, values } of intervals) {
    const tracker = trackers.get(stream) ?? trackCoverage(stream);
    trackers.set(stream, tracker);
    for (let from = 0; from < starts.length;) {
      const end = stretchEnd(starts, from, minutes);
      const start = starts[from] as number;
      tracker.add({ start, minutes, values: values.subarray(from, end), qualities: null });
      from = end;
    }
  }
  return [...trackers.values()].map((tracker) => tracker.result());
}
