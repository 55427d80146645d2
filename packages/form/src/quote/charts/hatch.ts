import { place, type Point } from './frame.ts';

/** Where the slanted line on which across and down sum up to `sum` crosses an edge; null if it does not. */
function crossing([x, y]: Point, [toX, toY]: Point, sum: number): number | null {
  const [from, to] = [x + y, toX + toY];
  // Half open, so that a corner counts for one of its two edges.
  if (from <= sum === to <= sum) return null;
  return x + ((toX - x) * (sum - from)) / (to - from);
}

/**
 * Slanted lines over any shape, as a path: hatching that prints and needs no colour.
 *
 * @param shape  its corners, the last joined to the first
 * @param gap    from line to line, across
 * @example
 * hatchPath([[0, 0], [8, 0], [8, 8], [0, 8]], 8) //=> "M0 8L8 0"
 */
export function hatchPath(shape: readonly Point[], gap: number): string {
  const sums = shape.map(([x, y]) => x + y);
  const last = Math.max(...sums);
  const lines: string[] = [];
  for (let sum = Math.ceil(Math.min(...sums) / gap) * gap; sum < last; sum += gap) {
    const across = shape
      .map((corner, index) => crossing(corner, shape[(index + 1) % shape.length] ?? corner, sum))
      .filter((x) => x !== null)
      .sort((one, other) => one - other);
    for (let pair = 0; pair + 1 < across.length; pair += 2) {
      const [from = 0, to = 0] = [across[pair], across[pair + 1]];
      if (to - from < 0.1) continue;
      lines.push(`M${place(from)} ${place(sum - from)}L${place(to)} ${place(sum - to)}`);
    }
  }
  return lines.join('');
}

/** The corners of a box between two corners that lie across from each other. */
export const boxOf = ([x, y]: Point, [toX, toY]: Point): readonly Point[] => [
  [x, y],
  [toX, y],
  [toX, toY],
  [x, toY],
];
