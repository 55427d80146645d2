import type { TableRow } from '../table-row.ts';

/** What of a layout a decision is about. */
export type DecisionSubject =
  | 'lines-above'
  | 'header'
  | 'delimiter'
  | 'decimal-mark'
  | 'grouping'
  | 'date-order'
  | 'clock'
  | 'label'
  | 'minutes'
  | 'holds'
  | 'column'
  | 'rate'
  | 'unit'
  | 'words';

/** Something that was detected about a table, for a person to look at. */
export interface TableDecision {
  readonly about: DecisionSubject;
  /** The number of the column that it is about, from 0; null where it is about the table. */
  readonly column: number | null;
  /** As the layout has it. */
  readonly detected: string;
  /** Why, in words. */
  readonly evidence: string;
  /** Where in the text the evidence stands; null where it stands in no one place. */
  readonly position: { readonly line: number; readonly column: number } | null;
  /** What else it could be. */
  readonly alternatives: readonly string[];
  /** Whether the text leaves no doubt; else it is only likely, and wants to be looked at. */
  readonly certain: boolean;
}

/** A cell of the table that shows something. */
export interface Witness {
  readonly row: TableRow;
  /** The number of the column. */
  readonly at: number;
}

/** The text of a cell that shows something. */
export function shown({ row, at }: Witness): string {
  return (row.cells[at] ?? '').trim();
}
