import { LINE, widestOf, wrapped } from './text-width.ts';
import { GAP, place, type Point } from './frame.ts';

/** Something that the plot marks. */
export interface Flag {
  /** Where, across the drawing. */
  readonly x: number;
  readonly label: string;
}

/** Where a text stands: the place it is tied to, by which end of it, and where it begins, about. */
export interface Anchored {
  readonly at: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly left: number;
}

/** A label above the plot: its lines of text, and the foot of the first of them. */
export interface PlacedFlag extends Flag, Anchored {
  readonly lines: readonly string[];
  readonly foot: number;
}

/** The labels above a plot, and how high they are together. */
export interface Flags {
  readonly placed: readonly PlacedFlag[];
  readonly height: number;
}

/** Between two labels in one row. */
const APART = 12;

/** Between a label and the one beneath it. */
const BETWEEN = 3;

/**
 * Where a text stands so that its middle is as near to a place as two sides allow.
 *
 * @param width   of the text, about: at a side it is tied to that side, so that it needs not be exact
 * @param middle  where its middle should be
 * @example
 * anchored(40, 10, [0, 100]) //=> {"at":0,"anchor":"start","left":0}
 */
export function anchored(width: number, middle: number, [from, to]: Point): Anchored {
  if (middle - width / 2 <= from) return { at: from, anchor: 'start', left: from };
  if (middle + width / 2 >= to) return { at: to, anchor: 'end', left: place(to - width) };
  return { at: middle, anchor: 'middle', left: place(middle - width / 2) };
}

/** A label above its place, or as near to it as it can stand between two sides. */
function centred({ x, label }: Flag, sides: Point): Omit<PlacedFlag, 'foot'> {
  const lines = wrapped(label, sides[1] - sides[0]);
  return { x, label, lines, ...anchored(widestOf(lines), x, sides) };
}

/** Labels one above the other, each beside the lines down from those above it. */
function stacked(flags: readonly Flag[], width: number): readonly Omit<PlacedFlag, 'foot'>[] {
  const [first, last] = [flags[0]?.x ?? 0, flags.at(-1)?.x ?? 0];
  const isRightward = width - first >= last;
  const order = isRightward ? flags : [...flags].reverse();
  return order.map((flag, at) => {
    const above = order[at - 1]?.x;
    if (above === undefined) return centred(flag, [1, width - 1]);
    return centred(flag, isRightward ? [above + GAP, width - 1] : [1, above - GAP]);
  });
}

const rightOf = ({ left, lines }: Pick<PlacedFlag, 'left' | 'lines'>): number => left + widestOf(lines);

/** The labels above the plot, in one row if they have room in it. */
function inOneRow(flags: readonly Flag[], width: number): readonly Omit<PlacedFlag, 'foot'>[] | null {
  const row = flags.map((flag) => centred(flag, [1, width - 1]));
  const hasRoom = row.every((flag, at) => {
    const next = row[at + 1];
    return next === undefined || rightOf(flag) + APART <= next.left;
  });
  return hasRoom ? row : null;
}

/**
 * Put labels above the plot: in one row where they have room beside each other, else one above the other.
 *
 * @param flags  what is marked, at most a few
 * @param top    where the first row begins
 * @param width  of the drawing
 */
export function placeFlags(flags: readonly Flag[], top: number, width: number): Flags {
  const sorted = [...flags].sort((one, other) => one.x - other.x);
  const row = inOneRow(sorted, width);
  const labels = row ?? stacked(sorted, width);
  const heights = labels.map(({ lines }) => LINE * lines.length);
  const height =
    row === null ? heights.reduce((sum, own) => sum + own + BETWEEN, 0) : Math.max(0, ...heights);
  let above = 0;
  const placed = labels.map((label, at) => {
    const own = heights[at] ?? 0;
    const skipped = row === null ? above : height - own;
    above += own + BETWEEN;
    return { ...label, foot: top + skipped + LINE };
  });
  return { placed, height };
}

/** A name and how high it should stand. */
export interface EndName {
  readonly name: string;
  readonly y: number;
}

/**
 * Names at the ends of lines, moved as little as it takes for none to lie on another.
 *
 * @param names  in any order
 * @param ends   of the room for them, upper and lower
 * @example
 * spreadNames([{ name: 'low', y: 50 }, { name: 'high', y: 44 }], [0, 52]) //=> [{"name":"high","y":37},{"name":"low","y":52}]
 */
export function spreadNames(names: readonly EndName[], [upper, lower]: Point): readonly EndName[] {
  let free = upper;
  const down = [...names]
    .sort((one, other) => one.y - other.y)
    .map(({ name, y }) => {
      const at = Math.max(y, free);
      free = at + LINE;
      return { name, y: at };
    });
  let most = lower;
  const up = down.reverse().map(({ name, y }) => {
    const at = Math.min(y, most);
    most = at - LINE;
    return { name, y: at };
  });
  return up.reverse();
}
