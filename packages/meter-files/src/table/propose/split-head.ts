import { splitRow, type TableDelimiter } from '../cells.ts';
import { TABLE_DELIMITERS } from '../layout-document.ts';
import { withoutTrailing } from '../layout-key.ts';
import { RecordSplitter } from '../record-splitter.ts';
import type { TableRow } from '../table-row.ts';
import { holdsDate } from './moment-shape.ts';

/** The most of a file that is looked at. */
const MOST_TEXT = 1_000_000;
const MOST_ROWS = 2_000;

/** The head of a table by one delimiter. */
export interface SplitHead {
  readonly delimiter: TableDelimiter;
  readonly rows: readonly TableRow[];
  /** How many cells most rows have. */
  readonly width: number;
  /** How many rows have so many cells, and among them a date. */
  readonly dated: number;
}

/** Without the last line where it may be cut off. */
function wholeLines(head: string): string {
  const text = head.slice(0, MOST_TEXT);
  const end = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
  const isCut = end >= 0 && end < text.length - 1;
  return isCut && text.slice(0, end).split(/\r\n?|\n/, 3).length === 3 ? text.slice(0, end + 1) : text;
}

function rowsOf(text: string, delimiter: TableDelimiter): readonly TableRow[] {
  const rows: TableRow[] = [];
  const splitter = new RecordSplitter(delimiter, {
    row: (row, line) => {
      if (rows.length < MOST_ROWS) rows.push({ cells: splitRow(row, delimiter), text: row, line });
    },
    broken: () => {
      // The reader tells it; here the row only shows nothing.
    },
  });
  splitter.write(text);
  splitter.end();
  return rows;
}

/**
 * The number that comes up most often; of several the largest, or the least.
 *
 * @returns null where there are none
 * @example
 * commonest([3, 2, 2, 3, 1], 'largest') //=> 3
 */
export function commonest(numbers: readonly number[], ofSeveral: 'largest' | 'least'): number | null {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  const sign = ofSeveral === 'largest' ? -1 : 1;
  const [best] = [...counts].sort(([one, often], [other, times]) => times - often || sign * (one - other));
  return best?.[0] ?? null;
}

function splitBy(text: string, delimiter: TableDelimiter): SplitHead {
  const rows = rowsOf(text, delimiter);
  const dates = rows.filter(({ cells }) => cells.some(holdsDate));
  const counted = dates.length > 0 ? dates : rows;
  const width =
    commonest(
      counted.map(({ cells }) => cells.length),
      'largest',
    ) ?? 0;
  const dated = width < 2 ? 0 : dates.filter(({ cells }) => cells.length === width).length;
  return { delimiter, rows, width, dated };
}

const evenness = ({ rows, width }: SplitHead): number =>
  width < 2 ? 0 : rows.filter(({ cells }) => cells.length === width).length;

const isBetter = (one: SplitHead, other: SplitHead): boolean => {
  if (one.dated !== other.dated) return one.dated > other.dated;
  const difference = evenness(one) - evenness(other);
  return difference === 0 ? one.width > other.width : difference > 0;
};

/**
 * Take the head of a file apart by the delimiter that makes the most rows with a date and as many cells, or
 * by one that a person has named.
 *
 * @returns also the other delimiters that would make such rows
 */
export function splitHead(
  head: string,
  named?: TableDelimiter,
): {
  readonly split: SplitHead;
  readonly others: readonly TableDelimiter[];
} {
  const text = wholeLines(head);
  const [comma, ...rest] = TABLE_DELIMITERS.map((delimiter) => splitBy(text, delimiter));
  const all = [comma as SplitHead, ...rest];
  const split =
    all.find(({ delimiter }) => delimiter === named) ??
    all.reduce((best, one) => (isBetter(one, best) ? one : best));
  const others = all.filter((one) => one !== split && (split.dated > 0 ? one.dated : evenness(one)) > 0);
  return { split, others: others.map(({ delimiter }) => delimiter) };
}

/** Which rows are what. */
export interface HeadRows {
  /** Rows above the names of the columns. */
  readonly above: readonly TableRow[];
  /** null where the columns have no names. */
  readonly header: TableRow | null;
  /** Units below the names, where a line has nothing else. */
  readonly units: readonly string[];
  readonly data: readonly TableRow[];
}

const isUnits = ({ cells }: TableRow): boolean => {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  return (
    filled.length > 0 && filled.every((cell) => /^[([]?(?:[kM]?Wh|-|h|min|date|time)[)\]]?$/i.test(cell))
  );
};

const isNumeric = (cell: string): boolean =>
  /^[-+]?[\d.,' ]*\d[\d.,' ]*$/.test(cell.trim()) && !/\d\.\d+\.\d/.test(cell);

/** Whether a row above the values can be the names of their columns. */
function canBeHeader({ cells }: TableRow, width: number): boolean {
  const names = withoutTrailing(cells).filter((name) => name.trim() !== '');
  return names.length >= 2 && names.length * 2 >= width && !names.every(isNumeric);
}

/** Tell lines above, names of columns and values apart. */
export function headRows({ rows, width }: SplitHead): HeadRows {
  const isDated = ({ cells }: TableRow): boolean => cells.length >= width && cells.some(holdsDate);
  const first = rows.findIndex(isDated);
  // Without any date the first line with as many cells as most is taken for the names.
  const firstData = first < 0 ? rows.findIndex(({ cells }) => cells.length >= width) + 1 : first;
  const data = rows.slice(firstData);
  const last = rows[firstData - 1];
  const unitsRow = last !== undefined && isUnits(last) ? last : null;
  const headerAt = unitsRow === null ? firstData - 1 : firstData - 2;
  const header = rows[headerAt];
  if (header === undefined || !canBeHeader(header, width))
    return { above: rows.slice(0, firstData), header: null, units: [], data };
  return { above: rows.slice(0, headerAt), header, units: unitsRow?.cells ?? [], data };
}
