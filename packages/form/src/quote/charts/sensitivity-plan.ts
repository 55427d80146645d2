import type { Frame } from '../../plant/chart/geometry.ts';
import type { Case, ChartView, SensitivityData, SensitivityInput } from './chart-data.ts';
import { place, SIZES, type Point } from './frame.ts';
import { anchored, type Anchored, type EndName } from './flags.ts';
import { columnsOf, type Columns } from './sensitivity-columns.ts';
import { LINE, textWidth, wrapped } from './text-width.ts';

/** A case as a bar from the base, with its texts. */
export interface CaseBar {
  readonly input: string;
  /** Set where the text is wider than its column: it is then drawn that wide. */
  readonly squeezed: number | null;
  readonly result: string;
  /** Its left end, which is the base or the result. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** An input: the lines of its name, and its two bars. */
interface SensitivityRow {
  readonly names: readonly EndName[];
  readonly low: CaseBar;
  readonly high: CaseBar;
  readonly end: number;
}

/** The base: its line, and its name above it. */
interface BaseLine extends Anchored {
  readonly x: number;
  readonly text: string;
  /** From where to where its line goes down: not through names. */
  readonly spans: readonly Point[];
}

/** Where everything of the chart of what matters most stands. */
export interface SensitivityPlan {
  readonly frame: Frame;
  readonly base: BaseLine;
  /** Where the texts of the cases begin, and where those of the results end. */
  readonly columns: { readonly input: number; readonly result: number };
  readonly rows: readonly SensitivityRow[];
}

/** The foot of the name of the base. */
export const BASE_NAME = LINE;

/** From a bar to the next, and how high one is. */
const BAR = { step: 17, height: 11 } as const;
const TOP = LINE + 15;
/** From an input to the next. */
const BETWEEN = 9;
const spanOf = ({ low, high }: SensitivityInput): number => Math.abs(high.result.at - low.result.at);

/**
 * Inputs with the one that moves the result most first.
 *
 * @example
 * bySpan([]) //=> []
 */
export function bySpan(inputs: readonly SensitivityInput[]): readonly SensitivityInput[] {
  return [...inputs].sort((one, other) => spanOf(other) - spanOf(one));
}

function barOf({ input, result }: Case, y: number, { room, x, base }: Columns): CaseBar {
  const [from, to] = [x(base), x(result.at)];
  return {
    input,
    squeezed: textWidth(input) > room ? place(room) : null,
    result: result.text,
    x: Math.min(from, to),
    y,
    width: place(Math.abs(to - from)),
  };
}

/** An input from so far down on: its name, and its bars beneath it or, in a wide drawing, beside it. */
function rowOf({ label, low, high }: SensitivityInput, y: number, columns: Columns): SensitivityRow {
  const lines = wrapped(label, columns.name);
  const first = columns.isBeside ? y : y + LINE * lines.length + 2;
  const second = first + BAR.step;
  return {
    names: lines.map((name, at) => ({ name, y: y + 10 + LINE * at })),
    low: barOf(low, first, columns),
    high: barOf(high, second, columns),
    end: Math.max(second + BAR.step, y + LINE * lines.length),
  };
}

function rowsOf(inputs: readonly SensitivityInput[], columns: Columns): readonly SensitivityRow[] {
  let y = TOP;
  return bySpan(inputs).map((input) => {
    const row = rowOf(input, y, columns);
    y = row.end + BETWEEN;
    return row;
  });
}

/** From where to where the line of the base goes: all the way, or where it would cross names beside bars only. */
function spansOf(rows: readonly SensitivityRow[], end: number, { isBeside }: Columns): readonly Point[] {
  if (isBeside) return [[BASE_NAME + 4, end]];
  return rows.map(({ low, high }) => [low.y - 3, high.y + BAR.height + 3]);
}

/** Where everything stands; null without an input. */
export function planSensitivity(
  data: SensitivityData,
  { size }: Pick<ChartView, 'size'>,
): SensitivityPlan | null {
  if (data.inputs.length === 0) return null;
  const columns = columnsOf(data, size);
  const rows = rowsOf(data.inputs, columns);
  const { width } = SIZES[size];
  const end = (rows.at(-1)?.end ?? TOP) + 4;
  const text = `${data.baseName}: ${data.base.text}`;
  const x = columns.x(data.base.at);
  return {
    frame: { width, height: end + 4, left: 0, right: 0, top: TOP, bottom: 0 },
    base: { x, text, spans: spansOf(rows, end, columns), ...anchored(textWidth(text), x, [1, width - 1]) },
    columns: { input: columns.input, result: columns.result },
    rows,
  };
}

/** How high a bar is. */
export const BAR_HEIGHT: number = BAR.height;
