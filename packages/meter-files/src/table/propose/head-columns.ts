import type { Witness } from './decision.ts';
import { isNumberLike } from './number-marks.ts';
import type { HeadRows } from './split-head.ts';
import { identifierColumn, textColumn, type TextColumn } from './text-columns.ts';
import { timeColumns, type TimeColumns } from './time-columns.ts';

/** The columns of the head of a table by what their cells are. */
export interface HeadColumns {
  readonly names: readonly string[];
  readonly times: TimeColumns;
  /** Columns that are told already: texts, points, meters, quality. */
  readonly told: ReadonlyMap<number, TextColumn>;
  /** Columns of numbers to be told by name and movement. */
  readonly numbers: readonly number[];
}

/** Whether most filled cells of a column are numbers. */
function isNumeric({ data }: HeadRows, at: number): boolean {
  const cells = data.map(({ cells }) => (cells[at] ?? '').trim()).filter((cell) => cell !== '');
  return cells.filter(isNumberLike).length * 2 > cells.length;
}

/** Whether a column is empty all over. */
const isBlank = ({ data }: HeadRows, at: number): boolean =>
  data.every(({ cells }) => (cells[at] ?? '').trim() === '');

const BLANK: TextColumn = { column: { is: 'nothing' }, evidence: 'all its cells are empty', certain: false };

/** At most one column of points and one of meters: a second of either is not read. */
function once(told: Map<number, TextColumn>): void {
  const seen = new Set<string>();
  for (const [at, { column }] of told) {
    if (column.is !== 'point' && column.is !== 'meter') continue;
    if (seen.has(column.is))
      told.set(at, {
        column: { is: 'nothing' },
        evidence: `another column is the ${column.is}`,
        certain: false,
      });
    seen.add(column.is);
  }
}

/** Tell the columns of a head apart by their cells. */
export function headColumns(rows: HeadRows, names: readonly string[]): HeadColumns {
  const times = timeColumns(rows.data, names);
  const taken = new Set([times.dateTime, times.date, times.time, ...times.spare]);
  const told = new Map<number, TextColumn>();
  const numbers: number[] = [];
  for (const [at, name] of names.entries()) {
    if (taken.has(at)) continue;
    if (isBlank(rows, at)) {
      // The name may still say what it counts: a register that a home has not.
      numbers.push(at);
      continue;
    }
    const text = isNumeric(rows, at)
      ? identifierColumn(rows.data, at, name)
      : textColumn(rows.data, at, name);
    if (text === null) numbers.push(at);
    else told.set(at, text);
  }
  once(told);
  return { names, times, told, numbers };
}

/** The cells of the columns of numbers. */
export function numberCells({ data }: HeadRows, { numbers }: HeadColumns): readonly Witness[] {
  return numbers.flatMap((at) =>
    data.map((row) => ({ row, at })).filter(({ row: { cells } }) => isNumberLike(cells[at] ?? '')),
  );
}

/** What is said of a column of numbers without any number, where its name says nothing. */
export function blankColumn(rows: HeadRows, at: number): TextColumn | null {
  return isBlank(rows, at) ? BLANK : null;
}
