import type { SizeRange } from './quote-sizes.ts';

/** How many sizes are looked at, and how many of them lie below the one that is quoted. */
const COUNT = 40;
const BELOW = 19;

/** The beginnings of round steps, times ten. */
const ROUND = [10, 15, 20, 25, 30, 40, 50, 60, 80] as const;

/** The largest round number of watts that is not above a length; at least 1. */
function roundStep(most: number): number {
  if (most < 10) return Math.max(1, Math.floor(most));
  const scale = 10 ** (Math.floor(Math.log10(most)) - 1);
  return Math.max(...ROUND.filter((one) => one * scale <= most)) * scale;
}

/**
 * The forty sizes that a quote is set among: in round steps, from a step or two up to about twice the size that is
 * quoted, which is one of them.
 *
 * @param watts  of the quote, at least 1
 * @example
 * usualSizes(4000) //=> {"from":200,"step":200,"count":40}
 * usualSizes(3300) //=> {"from":450,"step":150,"count":40}
 */
export function usualSizes(watts: number): SizeRange {
  const step = roundStep(watts / (BELOW + 1));
  const below = Math.min(BELOW, Math.floor((watts - 1) / step));
  return { from: watts - below * step, step, count: COUNT };
}

/** One of so many sizes is printed: forty lines would hide what changes from one to the next. */
const PRINTED = 4;

/**
 * The sizes that a printed table shows of forty: every fourth, so that the one that is quoted is among them.
 *
 * @param points  in order of size
 * @param watts   of the quote
 * @example
 * printedSizes([1, 2, 3, 4, 5, 6].map((watts) => ({ watts })), 2).map(({ watts }) => watts) //=> [2,6]
 */
export function printedSizes<Point extends { readonly watts: number }>(
  points: readonly Point[],
  watts: number,
): readonly Point[] {
  const quoted = Math.max(
    0,
    points.findIndex((point) => point.watts === watts),
  );
  return points.filter((_, at) => (at - quoted) % PRINTED === 0);
}
