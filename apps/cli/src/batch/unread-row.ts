import { dayText, type DayNumber, type Finding } from '@unitbook/engine';
import { afterQuoted, COMMA, NEWLINE, QUOTE, RETURN } from './bytes.ts';
import { batchFinding } from './findings.ts';
import { CELL, type Layout } from './layout.ts';
import type { RowTable } from './row-table.ts';

/** A row that cannot be used. */
export interface UnreadRow {
  /** How many rows of the block that can be used stand above it. */
  readonly after: number;
  /** Line of the block on which it begins, from 0. */
  readonly line: number;
  /** Its bytes, with the line break. */
  readonly from: number;
  readonly to: number;
  readonly finding: Finding;
}

/** What went wrong where in a row. */
export interface CellFault {
  problem: 'cells' | 'number' | 'too-fine' | 'day' | 'quote' | 'account';
  column: number;
  /** Where the cell begins. */
  from: number;
}

/** More than any number that is read or printed. */
export const MOST_DIGITS = 12;
/** Decimals of money. */
export const MONEY_PLACES = 8;
/** No more of a cell is quoted than anyone reads. */
const LONGEST = 60;

const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/** What stands between two places, a doubled quote as one. */
export const cellText = (bytes: Uint8Array, from: number, to: number): string =>
  decoder.decode(bytes.subarray(from, to)).replaceAll('""', '"');

/** A row that is no text in UTF-8: what stands in it cannot even be told. */
export const notTextFinding = (): Finding => batchFinding('batch/not-text', { path: [] });

/** A row whose days cannot be. */
export function periodFinding(
  code: 'batch/period' | 'batch/overlap',
  account: string,
  { from, to, count }: RowTable,
): Finding {
  const text = (day: number | undefined): string => dayText(day as DayNumber);
  return batchFinding(code, { path: [] }, { account, from: text(from[count]), to: text(to[count]) });
}

/** A cell up to the next comma or line break. */
function faultText(bytes: Uint8Array, from: number, end: number): string {
  let to = from;
  while (to < end && ![COMMA, NEWLINE, RETURN, QUOTE].includes(bytes[to] as number)) to += 1;
  return cellText(bytes, from, Math.min(to, from + LONGEST));
}

function cellCount(bytes: Uint8Array, from: number, to: number): number {
  let [cells, at] = [1, from];
  while (at < to) {
    if (bytes[at] === QUOTE) {
      const after = afterQuoted(bytes, at + 1, to);
      if (after < 0) return cells;
      at = after;
    }
    if (bytes[at] === COMMA) cells += 1;
    at += 1;
  }
  return cells;
}

/** What is wrong with a row that could not be read. */
export function faultFinding(
  bytes: Uint8Array,
  { from, to }: Pick<UnreadRow, 'from' | 'to'>,
  fault: CellFault,
  { header, kinds }: Layout,
): Finding {
  const column = header[fault.column] ?? '';
  const at = { path: [column] };
  const values = { value: faultText(bytes, fault.from, to), column };
  switch (fault.problem) {
    case 'number':
      return batchFinding('batch/number', at, values);
    case 'too-fine': {
      const places = kinds[fault.column] === CELL.units ? '3' : String(MONEY_PLACES);
      return batchFinding('batch/number-too-fine', at, { ...values, places });
    }
    case 'day':
      return batchFinding('batch/day', at, values);
    case 'account':
      return batchFinding('batch/account', at);
    case 'quote':
      return batchFinding('batch/quote', at, { where: `under ${column}` });
    case 'cells': {
      const found = String(cellCount(bytes, from, to));
      return batchFinding('batch/cells', { path: [] }, { found, expected: String(header.length) });
    }
  }
}
