/** Lines of a file, those that follow each other as one range; what it holds does not grow with the file. */
export interface LineRanges {
  /** First and last line of each range, in the order in which they came. */
  readonly ranges: { readonly from: number; to: number }[];
  /** How many lines are in no range, because there are too many of those. */
  left: number;
  /** The last of them. */
  last: number;
}

const MOST_RANGES = 20;

/** No lines yet. */
export function noLines(): LineRanges {
  return { ranges: [], left: 0, last: 0 };
}

/** Add a line. One that was added last is not added again. */
export function addLine(lines: LineRanges, line: number): void {
  const range = lines.ranges.at(-1);
  if (
    lines.left > 0 ||
    (lines.ranges.length === MOST_RANGES && range !== undefined && line !== range.to + 1)
  ) {
    if (line === lines.last || line === range?.to) return;
    lines.left += 1;
    lines.last = line;
  } else if (range !== undefined && (line === range.to + 1 || line === range.to)) range.to = line;
  else lines.ranges.push({ from: line, to: line });
}

/**
 * Lines as people read them: "line 3", "lines 3 to 8, 12".
 *
 * @example
 * const lines = noLines();
 * for (const line of [3, 4, 5, 12]) addLine(lines, line);
 * linesText(lines) //=> "lines 3 to 5, 12"
 */
export function linesText({ ranges, left, last }: LineRanges): string {
  const [first] = ranges;
  if (first === undefined) return 'no line';
  const texts = ranges.map(({ from, to }) => (from === to ? String(from) : `${from} to ${to}`));
  const more = left === 0 ? '' : ` and ${left} more, the last of them ${last}`;
  const isOne = ranges.length === 1 && first.from === first.to && left === 0;
  return `${isOne ? 'line' : 'lines'} ${texts.join(', ')}${more}`;
}
