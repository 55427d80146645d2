import { isEvent } from '../household/household.ts';
import type { RowView } from './view-book.ts';

/** The readings that open and close months, without those of meters that end or begin. */
export function usualRows(rows: readonly RowView[]): readonly RowView[] {
  return rows.filter(({ row }) => !isEvent(row));
}

/** The place of the reading that closes the month that a row is in: the opening reading is in the first. */
export function closingOf(rows: readonly RowView[], index: number): number {
  const closing = usualRows(rows).slice(1);
  return (closing.find((row) => row.index >= index) ?? closing.at(-1))?.index ?? 1;
}

/** The rows of one month. */
export interface MonthRows {
  /** The reading that opens it. */
  readonly before: RowView;
  /** Last and first readings of meters in it. */
  readonly events: readonly RowView[];
  /** The reading that closes it. */
  readonly row: RowView;
  /** Whether it is the first of the book, whose opening reading is typed in it. */
  readonly isFirst: boolean;
}

/** The rows of the month that a reading closes; null where it closes none. */
export function monthRows(rows: readonly RowView[], closing: number): MonthRows | null {
  const row = rows[closing];
  const usual = usualRows(rows);
  const at = usual.findIndex(({ index }) => index === closing);
  const before = usual[at - 1];
  if (row === undefined || before === undefined) return null;
  // Readings before the opening one belong to no period: they are shown where they can be put right.
  const from = at === 1 ? 0 : before.index + 1;
  const events = rows.slice(from, closing).filter((one) => isEvent(one.row));
  return { before, events, row, isFirst: at === 1 };
}

/** All rows that are shown with a month. */
export function shownWith({ before, events, row, isFirst }: MonthRows): readonly RowView[] {
  return [...(isFirst ? [before] : []), ...events, row];
}
