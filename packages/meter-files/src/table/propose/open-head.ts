import type { TableDelimiter } from '../cells.ts';
import { withoutTrailing } from '../layout-key.ts';
import { cellPosition, type TableRow } from '../table-row.ts';
import type { Witness } from './decision.ts';
import { headColumns, type HeadColumns } from './head-columns.ts';
import { headRows, splitHead, type HeadRows, type SplitHead } from './split-head.ts';

/** A table whose lines were told apart. */
export interface Head {
  readonly split: SplitHead;
  readonly others: readonly TableDelimiter[];
  readonly rows: HeadRows;
  readonly columns: HeadColumns;
  /** A row in which something of a column can be pointed at: the names, else the first values. */
  readonly anyRow: TableRow | undefined;
  readonly place: (witness: Witness) => { readonly line: number; readonly column: number };
}

/** Tell the lines and columns of the head of a table apart, by a delimiter that a person named, if any. */
export function openHead(text: string, named?: TableDelimiter): Head {
  const { split, others } = splitHead(text, named);
  const rows = headRows(split);
  const width = split.width;
  const names =
    rows.header === null ? Array.from({ length: width }, () => '') : withoutTrailing(rows.header.cells);
  const place: Head['place'] = ({ row, at }) => cellPosition(row, split.delimiter, at);
  const columns = headColumns(
    rows,
    names.map((name) => name.trim()),
  );
  return { split, others, rows, columns, anyRow: rows.header ?? rows.data[0], place };
}
