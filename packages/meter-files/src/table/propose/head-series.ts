import { NumberCell } from '../number-cell.ts';
import { MomentCell } from '../moment-cell.ts';
import type { TableRow } from '../table-row.ts';
import type { DateOrder } from '../date-text.ts';
import type { HeadColumns } from './head-columns.ts';
import type { MarksGuess } from './number-marks.ts';
import { kindOf, movementOf, type SeriesKind, type SeriesValue } from './value-series.ts';

const DAY = 1440;

/** A row with the minute that it gives, as written. */
interface TimedRow {
  readonly row: TableRow;
  readonly minute: number;
}

/** The rows of each point and meter, in the order of time. */
export interface HeadSeries {
  readonly groups: readonly (readonly TimedRow[])[];
  /** Minutes from each row to the next, without rows at the same time. */
  readonly steps: readonly number[];
  /** How many rows give an offset behind their time, and how many do not. */
  readonly offsets: { readonly having: number; readonly without: number };
}

function readMinute(cell: MomentCell, row: TableRow, { times }: HeadColumns): number | null {
  const { dateTime, date, time } = times;
  const fault =
    dateTime >= 0
      ? cell.readBoth(row.cells[dateTime] ?? '')
      : (cell.readDay(row.cells[date] ?? '') ?? (time < 0 ? null : cell.readTime(row.cells[time] ?? '')));
  return fault === null ? cell.day * DAY + (cell.minute ?? 0) : null;
}

/** Rows of a file that has the newest first are turned round. */
function forward(rows: readonly TimedRow[]): readonly TimedRow[] {
  const moves = rows.slice(1).map(({ minute }, at) => minute - (rows[at]?.minute ?? minute));
  const [up, down] = [moves.filter((move) => move > 0).length, moves.filter((move) => move < 0).length];
  return down > up ? [...rows].reverse() : rows;
}

/** Put the rows of a head into the order of time, for each point and meter. */
export function seriesOf(data: readonly TableRow[], columns: HeadColumns, order: DateOrder): HeadSeries {
  const cell = new MomentCell(order);
  const keys = [...columns.told].filter(([, { column }]) => column.is === 'point' || column.is === 'meter');
  const groups = new Map<string, TimedRow[]>();
  let [having, without] = [0, 0];
  for (const row of data) {
    const minute = readMinute(cell, row, columns);
    if (minute === null) continue;
    if (cell.minute !== null && cell.offset !== null) having += 1;
    else without += 1;
    const key = JSON.stringify(keys.map(([at]) => row.cells[at] ?? ''));
    const group = groups.get(key) ?? [];
    group.push({ row, minute });
    groups.set(key, group);
  }
  const all = [...groups.values()].map(forward);
  const steps = all.flatMap((rows) =>
    rows.slice(1).map(({ minute }, at) => minute - (rows[at]?.minute ?? minute)),
  );
  return { groups: all, steps: steps.filter((step) => step > 0), offsets: { having, without } };
}

/** What a column of numbers holds, by how it moves within each point and meter. */
export function columnKind({ groups }: HeadSeries, at: number, marks: MarksGuess): SeriesKind {
  const cell = new NumberCell(marks);
  const series = groups.map((rows) =>
    rows.flatMap(({ row }): SeriesValue[] =>
      cell.read(row.cells[at] ?? '') === 'number' ? [{ whole: cell.whole, places: cell.places }] : [],
    ),
  );
  return kindOf(movementOf(series));
}
