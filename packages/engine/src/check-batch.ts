import { preparedTariff } from './check-run.ts';
import type { BatchRows } from './check-batch-columns.ts';
import { FullCheck, type BatchTerms } from './check-batch-full.ts';
import { QuickCheck } from './check-batch-quick.ts';
import type { CheckedBill } from './check-bill.ts';

export {
  batchColumn,
  columnNames,
  isResultFigure,
  type BatchColumn,
  type ColumnNames,
} from './check-batch-names.ts';
export type { BatchNames, BatchRows, PrintedColumn } from './check-batch-columns.ts';
export type { BatchTerms } from './check-batch-full.ts';

/** Takes what was found of a row; a few of them are right, too: those only the long way can make. */
export type TakeRow = (row: number, checked: CheckedBill) => void;

/** Checks rows of tables of bills under one tariff, block after block; each block begins with another account. */
export interface BatchChecker {
  /**
   * Check rows.
   *
   * @param take  takes what was found of each row that was looked at, in the order of the rows: nothing is kept
   * @returns     how many rows are right without such a look
   */
  readonly check: (rows: BatchRows, take: TakeRow) => number;
}

/** The quick way tells apart which of the known columns a row fills, bit by bit of a whole number. */
const MOST_KNOWN = 30;

/**
 * Prepare the check of many bills under one tariff. Rows are compared with the right bill without any figures; those
 * that differ, and those that plain arithmetic cannot make, go through `checkBill`, so that what is said of a row is
 * what is said of its bill alone.
 *
 * @param terms  the tariff, and the names of the columns; with more than 30 known ones every row goes the long way
 * @example
 * batchChecker({ tariff: { document: { settlements: [], versions: [] } }, names: { known: [], opening: [], printed: [] } }).check({ count: 0 }, () => undefined) //=> 0
 */
export function batchChecker(terms: BatchTerms): BatchChecker {
  const { names, account = {} } = terms;
  const prepared = preparedTariff(terms.tariff.document);
  const isQuick = prepared !== null && names.known.length <= MOST_KNOWN;
  const quick = isQuick ? new QuickCheck({ prepared, names, account }) : null;
  const full = new FullCheck(terms);
  return {
    check: (rows, take) => {
      const marks = new Uint8Array(rows.count).fill(1);
      const marked = quick === null ? rows.count : quick.run(rows, marks);
      if (marked > 0) checkMarked(rows, marks, full, take);
      return rows.count - marked;
    },
  };
}

/** Check the accounts that have a marked row, as far as the last of them. */
function checkMarked(rows: BatchRows, marks: Uint8Array, full: FullCheck, take: TakeRow): void {
  let from = 0;
  let last = -1;
  for (let row = 0; row <= rows.count; row += 1) {
    if (row === rows.count || rows.begins[row] === 1) {
      if (last >= from) full.run(rows, { from, to: last + 1 }, marks, take);
      from = row;
    }
    if (row < rows.count && marks[row] === 1) last = row;
  }
}
