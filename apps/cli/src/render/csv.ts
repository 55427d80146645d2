/** A cell: a text as it stands, a claim, or nothing. */
type Cell = string | boolean | null | readonly string[];

/** A row of a table by its headings. */
export type CsvRow = Readonly<Record<string, Cell>>;

/** What programs for tables may take for a formula; a number below 0 is none. */
const FORMULA = /^[=+@\t\r-]/;
const NUMBER = /^-?\d[\d./]*$/;

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  const text = typeof cell === 'string' ? cell : cell.join(' ');
  const safe = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as comma-separated values with a row of headings, as RFC 4180 has them: lines end in CR LF, cells with a
 * comma, a quotation mark or a line end stand in quotation marks. Numbers are not grouped. A text that a program for
 * tables would take for a formula gets an apostrophe before it.
 *
 * @param rows  all with the keys of the first
 * @example
 * csvText([{ year: '1', name: 'So, "so"' }]) //=> "year,name\r\n1,\"So, \"\"so\"\"\"\r\n"
 */
export function csvText(rows: readonly CsvRow[]): string {
  const headings = Object.keys(rows[0] ?? {});
  const lines = [headings, ...rows.map((row) => headings.map((heading) => row[heading] ?? null))];
  return lines.map((cells) => `${cells.map(cellText).join(',')}\r\n`).join('');
}
