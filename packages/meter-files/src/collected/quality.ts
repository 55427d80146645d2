import { VALUE_QUALITIES, type ValueQuality } from '../stream.ts';

/** The place of "missing" in VALUE_QUALITIES. */
export const MISSING: number = VALUE_QUALITIES.indexOf('missing');

/** From the best to the worst: a value that was measured is better than one that somebody worked out. */
const BEST_FIRST: readonly ValueQuality[] = ['actual', 'edited', 'substituted', 'estimated', 'missing'];

/** By place in VALUE_QUALITIES: 0 for the best. */
const RANKS: readonly number[] = VALUE_QUALITIES.map((quality) => BEST_FIRST.indexOf(quality));

/**
 * How far from the best a quality is: actual, edited, substituted, estimated, missing.
 *
 * @param quality  its place in VALUE_QUALITIES
 * @returns        0 for the best
 * @example
 * [0, 1, 2, 3, 4].map(qualityRank) //=> [0,3,2,1,4]
 */
export function qualityRank(quality: number): number {
  return RANKS[quality] ?? BEST_FIRST.length;
}

/** A quality by its place in VALUE_QUALITIES. */
export function qualityAt(quality: number): ValueQuality {
  return VALUE_QUALITIES[quality] ?? 'missing';
}
