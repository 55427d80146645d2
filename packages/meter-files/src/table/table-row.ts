import type { Finding } from '@unitbook/engine';
import { rowOffsets } from './cells.ts';
import { quotable, tableFinding, type TableFindingCode } from './findings.ts';
import type { TablePlan } from './plan.ts';

/** A row as it was split. */
export interface TableRow {
  readonly cells: readonly string[];
  readonly text: string;
  /** The line on which it begins, from 1. */
  readonly line: number;
}

/**
 * Where a cell stands in the file.
 *
 * @param at  its number, from 0; one that is not there stands where the row begins
 */
export function cellPosition(
  { text, line }: Pick<TableRow, 'text' | 'line'>,
  delimiter: TablePlan['layout']['delimiter'],
  at: number,
): { readonly line: number; readonly column: number } {
  const before = text.slice(0, rowOffsets(text, delimiter)[at] ?? 0).split('\n');
  return { line: line + before.length - 1, column: (before.at(-1)?.length ?? 0) + 1 };
}

/** Says something about a cell of a row; the values `value` and `name` are filled in. */
export type Report = (
  code: TableFindingCode,
  row: TableRow,
  at: number,
  values?: Readonly<Record<string, string>>,
) => void;

/** Make what says something about the cells of rows. */
export function reporter(plan: TablePlan, finding: (finding: Finding) => void): Report {
  return (code, row, at, values = {}) => {
    const value = quotable(row.cells[at] ?? '');
    const made = tableFinding(code, { path: [] }, { value, name: plan.names[at] ?? '', ...values });
    finding({ ...made, position: cellPosition(row, plan.layout.delimiter, at) });
  };
}
