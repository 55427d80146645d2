import { quotedName, quotedText, type ParquetColumn, type ParquetEngine, type TextRow } from './engine.ts';

/** Types whose text is exact. */
const EXACT = /^(?:VARCHAR|DATE|DECIMAL\(\d+,\d+\)|U?(?:TINY|SMALL|BIG|HUGE)INT|U?INTEGER)$/;
/** Columns that a check passes by: whatever they hold is only text. */
const NOTE = /^note\./;

/**
 * Columns of bills whose text would not be what was written: binary fractions, times, lists.
 *
 * @example
 * inexactColumns([{ name: 'import', type: 'DOUBLE' }, { name: 'note.seen', type: 'DOUBLE' }]) //=> [{"name":"import","type":"DOUBLE"}]
 */
export const inexactColumns = (columns: readonly ParquetColumn[]): readonly ParquetColumn[] =>
  columns.filter(({ name, type }) => !EXACT.test(type) && !NOTE.test(name));

/** The query for a table in Parquet as it stands. */
export const tableQuery = (path: string): string => `SELECT * FROM read_parquet(${quotedText(path)})`;

/** A cell of CSV. */
const csvCell = (text: string | null): string =>
  text === null ? '' : /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

const csvLine = (row: TextRow): string => `${row.map(csvCell).join(',')}\n`;

/** A table in Parquet as CSV with a first row, piece by piece, its rows in their order. */
export async function* csvOf(
  engine: ParquetEngine,
  path: string,
  columns: readonly ParquetColumn[],
): AsyncGenerator<string> {
  yield csvLine(columns.map(({ name }) => name));
  const cells = columns.map(({ name }) => `CAST(${quotedName(name)} AS VARCHAR)`).join(', ');
  const query = `SELECT ${cells} FROM read_parquet(${quotedText(path)})`;
  for await (const rows of engine.rows(query)) yield rows.map(csvLine).join('');
}
