import type { Finding } from '@unitbook/engine';
import { fileFinding } from './findings.ts';
import { cellOffsets, splitCells, type Delimiter } from './cells.ts';

/** The columns of a register list. The first three have to be there, the latter two of them or their rates. */
export const COLUMNS = [
  'date',
  'import',
  'export',
  'generation',
  'event',
  'status',
  'printed_days',
  'confirmed',
] as const;

/** A register of one rate: "import_1", "export_2". */
type RateColumn = `${'import' | 'export'}_${string}`;

/** A column of a register list. */
export type Column = (typeof COLUMNS)[number] | RateColumn;

const REQUIRED = ['date', 'import', 'export'] as const;
const DELIMITERS: readonly Delimiter[] = [',', ';', '\t'];
const ALLOWED = `${COLUMNS.join(', ')}, import_1, export_1 and so on for rates`;

/** The line with the names of the columns: null stands for a column that is not known. */
export interface Header {
  readonly delimiter: Delimiter;
  readonly columns: readonly (Column | null)[];
}

/** Letters only, so that "Printed Days" and "printed_days" are one name. */
const bare = (name: string): string => name.toLowerCase().replace(/[\s_-]/g, '');

const RATE = /^(import|export)[\s_-]*([a-z0-9]{1,12})$/i;
/** What stands behind a direction and is no rate: units, and words for all of it. */
const NO_RATE = /^(?:[kmg]?wh?|[kmg]?vah?|units?|total|energy|reading|register|power|meter|value)$/i;

/** The parts of a column of one rate; null for another column. */
export function rateOf(
  column: Column | null,
): { readonly id: 'import' | 'export'; readonly rate: string } | null {
  const [, id, rate] = column === null ? [] : (RATE.exec(column) ?? []);
  return (id === 'import' || id === 'export') && rate !== undefined ? { id, rate } : null;
}

function columnNamed(name: string): Column | null {
  const known = COLUMNS.find((column) => bare(column) === bare(name));
  if (known !== undefined) return known;
  const [, id = '', rate = ''] = RATE.exec(name.trim()) ?? [];
  return id === '' || NO_RATE.test(rate) ? null : (`${id.toLowerCase()}_${rate}` as RateColumn);
}

/** Whether a column stands there, or its rates in its place. */
const isThere = (wanted: (typeof REQUIRED)[number], columns: readonly (Column | null)[]): boolean =>
  columns.includes(wanted) || columns.some((column) => rateOf(column)?.id === wanted);

/** The separator that makes the most known names; null when none makes any. */
function findDelimiter(line: string): Delimiter | null {
  let best: Delimiter | null = null;
  let most = 0;
  for (const delimiter of DELIMITERS) {
    const known = splitCells(line, delimiter).filter((name) => columnNamed(name) !== null).length;
    if (known > most) [best, most] = [delimiter, known];
  }
  return best;
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** Names at the end that a spreadsheet left empty are no columns. */
function withoutTrailing(names: readonly string[]): readonly string[] {
  const last = names.findLastIndex((name) => name.trim() !== '');
  return names.slice(0, last + 1);
}

/**
 * Read the line with the names of the columns.
 *
 * @param line    its text
 * @param number  of the line in the file, from 1
 * @returns       the header, or null when rows cannot be read by it; findings about every name
 */
export function readHeader(
  line: string,
  number: number,
): { value: Header | null; findings: readonly Finding[] } {
  const at = (column: number) => ({ position: { line: number, column } });
  const delimiter = findDelimiter(line);
  if (delimiter === null) {
    const values = { line: shortened(line.trim()), allowed: ALLOWED };
    return {
      value: null,
      findings: [{ ...fileFinding('readings-file/no-header', { path: [] }, values), ...at(1) }],
    };
  }
  const names = withoutTrailing(splitCells(line, delimiter));
  const offsets = cellOffsets(line, delimiter);
  const columns = names.map(columnNamed);
  const findings: Finding[] = [];
  columns.forEach((column, index) => {
    const place = at((offsets[index] ?? 0) + 1);
    const values = { name: (names[index] ?? '').trim(), allowed: ALLOWED };
    if (column === null)
      findings.push({ ...fileFinding('readings-file/unknown-column', { path: [] }, values), ...place });
    else if (columns.indexOf(column) < index)
      findings.push({
        ...fileFinding('readings-file/same-column-twice', { path: [] }, { name: column }),
        ...place,
      });
  });
  const missing = REQUIRED.filter((column) => !isThere(column, columns));
  for (const name of missing)
    findings.push({ ...fileFinding('readings-file/missing-column', { path: [] }, { name }), ...at(1) });
  const usable =
    missing.length === 0 &&
    new Set(columns.filter((c) => c !== null)).size === columns.filter((c) => c !== null).length;
  return { value: usable ? { delimiter, columns } : null, findings };
}
