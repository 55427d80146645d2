import { batchColumn, type BatchNames } from '@unitbook/engine';
import { type Finding } from '@unitbook/engine';
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

const isResult = (name: string): boolean =>
  name.startsWith('line.') || ['units.billed', 'sum', 'rounding', 'payable'].includes(name);

function headerFindings(header: readonly string[], names: BatchNames): Finding[] {
  const at = { path: ['header'] };
  const missing = REQUIRED.filter((name) => !header.includes(name));
  const twice = [...new Set(header.filter((name, index) => header.indexOf(name) !== index))];
  const findings = [
    ...missing.map((name) => batchFinding('batch/column-missing', at, { name, header: header.join(', ') })),
    ...twice.map((name) => batchFinding('batch/column-twice', at, { name })),
  ];
  if (!names.printed.some(isResult)) findings.push(batchFinding('batch/nothing-printed', at));
  return findings;
}

/**
 * Understand the header of a table of bills.
 *
 * @param quantities  names that the tariff knows
 * @returns           its layout, null with every finding about it
 */
export function readLayout(
  header: readonly string[],
  quantities: readonly string[],
): { readonly value: Layout | null; readonly findings: readonly Finding[] } {
  const columns = header.map((name) => batchColumn(name, quantities));
  const [known, opening, printed]: [string[], string[], string[]] = [[], [], []];
  const lists = { known, opening, printed };
  const unknown: Finding[] = [];
  for (const [index, column] of columns.entries()) {
    if (column === null) {
      const values = { name: header[index] ?? '', quantities: quantities.join(', ') };
      unknown.push(batchFinding('batch/column-unknown', { path: ['header'] }, values));
    } else if ('name' in column) lists[column.kind].push(column.name);
  }
  const names = { known, opening, printed };
  const findings = [...unknown, ...headerFindings(header, names)];
  if (findings.length > 0) return { value: null, findings };
  const kinds = Uint8Array.from(columns, (column) =>
    column === null
      ? CELL.note
      : 'name' in column
        ? column.kind === 'printed'
          ? CELL.printed
          : CELL.units
        : CELL[column.kind],
  );
  const places = Int32Array.from(columns, (column) => {
    if (column === null || !('name' in column)) return -1;
    const place = lists[column.kind].indexOf(column.name);
    return column.kind === 'opening' ? known.length + place : place;
  });
  return { value: { header, kinds, places, names, account: header.indexOf('account') }, findings };
}
