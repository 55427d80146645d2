import { addLine, linesText, noLines, type LineRanges } from './line-ranges.ts';
import { minuteText } from './texts.ts';

/** How many intervals something is to be said of, which are the first and the last, and where they stand. */
export interface Tally {
  count: number;
  /** Start of the first in time, in minutes. */
  first: number;
  /** Start of the last in time. */
  last: number;
  /** The line of the first in time; 0 for none. */
  line: number;
  readonly lines: LineRanges;
}

/** Nothing counted yet. */
export function emptyTally(): Tally {
  return { count: 0, first: Infinity, last: -Infinity, line: 0, lines: noLines() };
}

/**
 * Count an interval.
 *
 * @param start  in minutes
 * @param line   of the file; 0 where it has none
 * @returns      whether it is the first in time so far
 */
export function addToTally(tally: Tally, start: number, line = 0): boolean {
  const isFirst = start < tally.first;
  tally.count += 1;
  if (isFirst) [tally.first, tally.line] = [start, line];
  tally.last = Math.max(tally.last, start);
  if (line > 0) addLine(tally.lines, line);
  return isFirst;
}

/** What a finding says of a tally. */
export function tallyValues(tally: Tally): Record<'count' | 'first' | 'last' | 'lines', string> {
  return {
    count: String(tally.count),
    first: minuteText(tally.first),
    last: minuteText(tally.last),
    lines: linesText(tally.lines),
  };
}

/** Where in the file the first of a tally stands. */
export function tallyPosition({ line }: Tally): { position?: { line: number; column: number } } {
  return line > 0 ? { position: { line, column: 1 } } : {};
}
