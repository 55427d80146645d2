/** Minutes from `from` on and before `to`. */
export interface MinuteRange {
  readonly from: number;
  readonly to: number;
}

/** Ranges that were added in any order, merged as they come. */
export interface RangeCollector {
  /** Add a range. Those that follow each other are one at once. */
  readonly add: (from: number, to: number) => void;
  /** The minutes covered by any, in order; none touches the next. */
  readonly ranges: () => readonly MinuteRange[];
  /** How many minutes were covered more than once. */
  readonly doubled: () => number;
}

/** So many ranges at least wait to be merged: few enough to hold, many enough for merging to cost little. */
const FEWEST_WAITING = 4096;

/**
 * The minutes that are in any of some ranges.
 *
 * @param ranges  in any order
 * @returns       in order, none touching the next
 * @example
 * mergedRanges([{ from: 30, to: 45 }, { from: 0, to: 15 }, { from: 15, to: 20 }]) //=> [{"from":0,"to":20},{"from":30,"to":45}]
 */
export function mergedRanges(ranges: readonly MinuteRange[]): readonly MinuteRange[] {
  const merged: { from: number; to: number }[] = [];
  for (const { from, to } of [...ranges].sort((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    if (last === undefined || from > last.to) merged.push({ from, to });
    else last.to = Math.max(last.to, to);
  }
  return merged;
}

/** How many minutes some ranges have that do not lie over each other. */
export function rangeMinutes(ranges: readonly MinuteRange[]): number {
  return ranges.reduce((sum, { from, to }) => sum + to - from, 0);
}

/** Collect ranges. What is held grows with the number of gaps between them, not with the ranges. */
export function collectRanges(): RangeCollector {
  let kept: readonly MinuteRange[] = [];
  let waiting: MinuteRange[] = [];
  let added = 0;
  let open: { from: number; to: number } | null = null;
  const merge = (): void => {
    if (waiting.length === 0) return;
    kept = mergedRanges([...kept, ...waiting]);
    waiting = [];
  };
  const add = (from: number, to: number): void => {
    added += to - from;
    if (open?.to === from) {
      open.to = to;
      return;
    }
    if (open !== null) waiting.push(open);
    open = { from, to };
    // As many as are kept already: merging then costs little however many gaps there are.
    if (waiting.length >= Math.max(FEWEST_WAITING, kept.length)) merge();
  };
  const ranges = (): readonly MinuteRange[] => {
    merge();
    return open === null ? kept : mergedRanges([...kept, open]);
  };
  return { add, ranges, doubled: () => added - rangeMinutes(ranges()) };
}

/**
 * The minutes between two that are in none of some ranges.
 *
 * @param ranges  in order, none over another
 * @example
 * gapsWithin([{ from: 10, to: 20 }], { from: 0, to: 30 }) //=> [{"from":0,"to":10},{"from":20,"to":30}]
 */
export function gapsWithin(
  ranges: readonly MinuteRange[],
  { from, to }: MinuteRange,
): readonly MinuteRange[] {
  const gaps: MinuteRange[] = [];
  let cursor = from;
  for (let at = firstEndingAfter(ranges, from); at < ranges.length; at += 1) {
    const range = ranges[at] as MinuteRange;
    if (range.from >= to) break;
    if (range.from > cursor) gaps.push({ from: cursor, to: range.from });
    cursor = range.to;
  }
  if (cursor < to) gaps.push({ from: cursor, to });
  return gaps;
}

/** The first range that ends after a minute; as many as there are where none does. */
function firstEndingAfter(ranges: readonly MinuteRange[], minute: number): number {
  let [low, high] = [0, ranges.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ranges[middle] as MinuteRange).to > minute) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * How many minutes between two are in some ranges.
 *
 * @param ranges  in order, none over another
 * @example
 * minutesWithin([{ from: 10, to: 20 }], { from: 0, to: 15 }) //=> 5
 */
export function minutesWithin(ranges: readonly MinuteRange[], window: MinuteRange): number {
  return Math.max(0, window.to - window.from) - rangeMinutes(gapsWithin(ranges, window));
}

/**
 * Some ranges less others.
 *
 * @param ranges   in order, none over another
 * @param removed  in order, none over another
 */
export function withoutRanges(
  ranges: readonly MinuteRange[],
  removed: readonly MinuteRange[],
): readonly MinuteRange[] {
  return removed.length === 0 ? ranges : ranges.flatMap((range) => gapsWithin(removed, range));
}
