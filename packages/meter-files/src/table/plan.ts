import { VALUE_QUALITIES } from '../stream.ts';
import type { TableLayout, ValueColumn } from './layout-document.ts';

/** A column of values as the rows are read by it. */
export interface ValuePlan {
  readonly at: number;
  readonly column: ValueColumn;
  /** The name of the column, or its number where it has no name. */
  readonly name: string;
  /** Decimal places by which a kWh is finer than the unit of the column. */
  readonly shift: number;
  /** The column that says how the values came about; null where none does. */
  readonly quality: { readonly at: number; readonly words: ReadonlyMap<string, number> } | null;
  /** Whether a number below 0 cannot be right. */
  readonly refusesNegative: boolean;
}

/** What the columns of a layout mean for the rows, worked out once. */
export interface TablePlan {
  readonly layout: TableLayout;
  /** Columns by number; -1 where there is none. */
  readonly dateTime: number;
  readonly date: number;
  readonly time: number;
  readonly point: number;
  readonly meter: number;
  readonly values: readonly ValuePlan[];
  /** The fewest cells that a row can have: all but those at its end that are not read. */
  readonly fewest: number;
  readonly names: readonly string[];
}

const SHIFTS = { kWh: 0, Wh: 3, MWh: -3 } as const;

/** Where each quality stands in the list of qualities. */
export const QUALITY = Object.fromEntries(VALUE_QUALITIES.map((word, at) => [word, at])) as Readonly<
  Record<(typeof VALUE_QUALITIES)[number], number>
>;

/** The column of quality that goes with a column of values: the next to its right, else the next to its left. */
function qualityFor({ columns }: TableLayout, at: number): ValuePlan['quality'] {
  const isQuality = columns.map(({ is }) => is === 'quality');
  const right = isQuality.indexOf(true, at);
  const found = right >= 0 ? right : isQuality.lastIndexOf(true, at);
  const column = columns[found];
  if (column?.is !== 'quality') return null;
  return { at: found, words: new Map(Object.entries(column.words).map(([word, is]) => [word, QUALITY[is]])) };
}

function refusesNegative({ holds }: TableLayout, { is }: ValueColumn): boolean {
  // What an inverter draws at night is counted below 0 by some; a counter of it never shows less than 0.
  return is === 'import' || is === 'export' || (is === 'generation' && holds === 'registers');
}

/** Work out what the columns of a layout mean for the rows. */
export function planOf(layout: TableLayout): TablePlan {
  const { columns, header } = layout;
  const names = header.map((name, at) => (name.trim() === '' ? String(at + 1) : name.trim()));
  const find = (is: string): number => columns.findIndex((column) => column.is === is);
  const values = columns.flatMap((column, at): ValuePlan[] => {
    if (!('unit' in column)) return [];
    return [
      {
        at,
        column,
        name: names[at] ?? '',
        // What is no active energy is handed on in the unit of the file.
        shift: column.is === 'other' ? 0 : SHIFTS[column.unit],
        quality: qualityFor(layout, at),
        refusesNegative: refusesNegative(layout, column),
      },
    ];
  });
  return {
    layout,
    dateTime: find('date-time'),
    date: find('date'),
    time: find('time'),
    point: find('point'),
    meter: find('meter'),
    values,
    fewest: columns.findLastIndex(({ is }) => is !== 'nothing') + 1,
    names,
  };
}
