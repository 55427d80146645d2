import { wholeToDecimal } from '@unitbook/engine';
import { pickRows, type Columns } from './order-rows.ts';
import { MISSING, qualityAt, qualityRank } from './quality.ts';
import { addToTally, emptyTally, type Tally } from './tally.ts';

/** Intervals that a file has more than once, by what became of them. */
export interface Doubles {
  /** The same value again. */
  readonly repeated: Tally;
  /** Another value of a better quality: that one is kept. */
  readonly replaced: Tally;
  /** Another value of the same quality: none is kept. */
  readonly conflict: Tally;
  /** What the first of those says: both values, their qualities and their lines. */
  replacedText: string;
  conflictText: string;
}

/** Nothing doubled yet. */
export function noDoubles(): Doubles {
  return {
    repeated: emptyTally(),
    replaced: emptyTally(),
    conflict: emptyTally(),
    replacedText: '',
    conflictText: '',
  };
}

/** Rows of one start: from the first to the one before `end`. */
interface Group {
  readonly columns: Columns;
  readonly places: number;
  readonly from: number;
  readonly end: number;
}

const rankOf = ({ qualities }: Columns, row: number): number => qualityRank(qualities[row] as number);

/** The row of the best quality that stands first in the file. */
function bestOf({ columns, from, end }: Group): number {
  let best = from;
  for (let row = from + 1; row < end; row += 1) if (rankOf(columns, row) < rankOf(columns, best)) best = row;
  return best;
}

function rowText({ columns, places }: Group, row: number): string {
  const value = columns.values[row] as number;
  const quality = qualityAt(columns.qualities[row] as number);
  const shown = Number.isNaN(value) ? 'no value' : `${wholeToDecimal(value, places)} kWh (${quality})`;
  return `${shown} on line ${columns.lines[row] as number}`;
}

const isSame = ({ values }: Columns, a: number, b: number): boolean =>
  values[a] === values[b] || (Number.isNaN(values[a]) && Number.isNaN(values[b]));

/** Count a group for what it is; true where its values cannot be told apart by their quality. */
function countGroup(group: Group, best: number, doubles: Doubles): boolean {
  const { columns, from, end } = group;
  const rows = Array.from({ length: end - from }, (_, index) => from + index);
  const others = rows.filter((row) => !isSame(columns, row, best));
  const rival = others.find((row) => rankOf(columns, row) === rankOf(columns, best));
  const start = columns.starts[from] as number;
  const count = (tally: Tally, row: number): boolean => addToTally(tally, start, columns.lines[row]);
  const both = (row: number): string => `${rowText(group, best)}, ${rowText(group, row)}`;
  const [other] = others;
  if (rival !== undefined) {
    if (count(doubles.conflict, rival)) doubles.conflictText = both(rival);
  } else if (other !== undefined) {
    if (count(doubles.replaced, other)) doubles.replacedText = both(other);
  } else count(doubles.repeated, rows.find((row) => row !== best) ?? best);
  return rival !== undefined;
}

/**
 * Leave each start once. Of several values the one of the best quality is kept; several values of one
 * quality are none, because nothing tells which is right. The order of the rows makes no difference.
 *
 * @param columns  in order of time
 * @param places   of the values
 * @param doubles  where to count what is left out
 */
export function onceEach(columns: Columns, places: number, doubles: Doubles): Columns {
  const { starts } = columns;
  const kept = new Uint32Array(starts.length);
  const conflicts: number[] = [];
  let count = 0;
  for (let from = 0; from < starts.length;) {
    let end = from + 1;
    while (end < starts.length && starts[end] === starts[from]) end += 1;
    kept[count] = from;
    if (end - from > 1) {
      const group: Group = { columns, places, from, end };
      const best = bestOf(group);
      kept[count] = best;
      if (countGroup(group, best, doubles)) conflicts.push(count);
    }
    count += 1;
    from = end;
  }
  if (count === starts.length) return columns;
  const once = pickRows(columns, kept.subarray(0, count));
  for (const row of conflicts) {
    once.values[row] = NaN;
    once.qualities[row] = MISSING;
  }
  return once;
}
