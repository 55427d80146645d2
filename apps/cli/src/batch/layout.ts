import {
  batchColumn,
  isResultFigure,
  type BatchColumn,
  type BatchNames,
  type ColumnNames,
  type Finding,
} from '@unitbook/engine';
import { columnWords } from './column-words.ts';
import { batchFinding } from './findings.ts';

/** What is done with the cells of a column. */
export const CELL = { note: 0, account: 1, from: 2, to: 3, units: 4, printed: 5 } as const;

/** The columns of a table of bills. */
export interface Layout {
  readonly header: readonly string[];
  /** For each column what it is, by {@link CELL}. */
  readonly kinds: Uint8Array;
  /** For each column its place among those of units, or of printed figures. */
  readonly places: Int32Array;
  readonly names: BatchNames;
  /** The place of the account. */
  readonly account: number;
}

const REQUIRED = ['account', 'from', 'to'] as const;

/** What a column holds, as one text: "opening" and "opening.credit" are one. */
const holds = (name: string, column: BatchColumn | null): string =>
  column !== null && 'name' in column ? `${column.kind}.${column.name}` : name;

/** Names of columns that hold what another one holds, each once. */
function namesTwice(header: readonly string[], columns: readonly (BatchColumn | null)[]): readonly string[] {
  const [seen, twice] = [new Set<string>(), new Set<string>()];
  header.forEach((name, at) => {
    const own = holds(name, columns[at] ?? null);
    if (seen.has(own)) twice.add(name);
    seen.add(own);
  });
  return [...twice];
}

function headerFindings(
  header: readonly string[],
  columns: readonly (BatchColumn | null)[],
  names: BatchNames,
): readonly Finding[] {
  const at = { path: ['header'] };
  const missing = REQUIRED.filter((name) => !header.includes(name));
  const nothing = names.printed.some(isResultFigure) ? [] : [batchFinding('batch/nothing-printed', at)];
  return [
    ...missing.map((name) => batchFinding('batch/column-missing', at, { name, header: header.join(', ') })),
    ...namesTwice(header, columns).map((name) => batchFinding('batch/column-twice', at, { name })),
    ...nothing,
  ];
}

/**
 * A finding about a column that a table cannot have.
 *
 * @param path  where it stands
 */
export const unknownColumn = (name: string, names: ColumnNames, path: Finding['path']): Finding =>
  batchFinding('batch/column-unknown', { path }, { name, ...columnWords(name, names) });

/** What is done with the cells of a column, by {@link CELL}. */
function kindOf(column: BatchColumn | null): number {
  if (column === null) return CELL.note;
  if (!('name' in column)) return CELL[column.kind];
  return column.kind === 'printed' ? CELL.printed : CELL.units;
}

/** Columns, those with a name in the lists of their kinds. */
function sortedOut(columns: readonly (BatchColumn | null)[]) {
  const names: Record<'known' | 'opening' | 'printed', string[]> = { known: [], opening: [], printed: [] };
  const own = columns.map((column) =>
    column !== null && 'name' in column ? names[column.kind].push(column.name) - 1 : -1,
  );
  // Balances stand behind what is known: all of them are units.
  const places = Int32Array.from(own, (place, at) =>
    columns[at]?.kind === 'opening' ? names.known.length + place : place,
  );
  return { names, places };
}

/**
 * Understand the header of a table of bills.
 *
 * @param own  names that columns can have under the tariff
 * @returns    its layout, null with every finding about it
 */
export function readLayout(
  header: readonly string[],
  own: ColumnNames,
): { readonly value: Layout | null; readonly findings: readonly Finding[] } {
  const columns = header.map((name) => batchColumn(name, own));
  const { names, places } = sortedOut(columns);
  const unknown = header
    .filter((_, at) => columns[at] === null)
    .map((name) => unknownColumn(name, own, ['header']));
  const findings = [...unknown, ...headerFindings(header, columns, names)];
  if (findings.length > 0) return { value: null, findings };
  const kinds = Uint8Array.from(columns, kindOf);
  return { value: { header, kinds, places, names, account: header.indexOf('account') }, findings };
}
