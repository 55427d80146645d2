import { FIGURE, groupOf } from './audit/index.ts';

/**
 * What a column of a table of bills holds: whose bill it is and of which days, what is known of the account, what was
 * brought forward into its first period, or a figure that the bill prints.
 */
export type BatchColumn =
  | { readonly kind: 'account' | 'from' | 'to' | 'note' }
  | { readonly kind: 'known' | 'opening' | 'printed'; readonly name: string };

const PRINTED = 'printed.';
const OPENING = 'opening';
/** Figures that tell of no stage of a bill, and that a bill prints all the same. */
const OTHERS: readonly string[] = ['days', 'factor', 'load'];

const isFigure = (name: string): boolean => groupOf(name) !== 'other' || OTHERS.includes(name);

/**
 * What a column holds, by its name:
 *
 * - `account`, `from`, `to`
 * - a quantity of the tariff, known of the account: `import`, `export`, `generation`, `sanctioned-load`, `import@peak` …
 * - `opening`, or `opening.` and a ledger: what was brought forward into the first period of the account
 * - `printed.` and the name of a figure of the bill: `printed.units.billed`, `printed.line.energy`, `printed.payable` …
 * - `note.` and anything: passed by
 *
 * @param quantities  names that the tariff knows
 * @returns           null: no such column
 * @example
 * batchColumn('printed.payable', []) //=> {"kind":"printed","name":"payable"}
 */
export function batchColumn(name: string, quantities: readonly string[]): BatchColumn | null {
  if (name === 'account' || name === 'from' || name === 'to') return { kind: name };
  if (name.startsWith('note.')) return { kind: 'note' };
  if (name === OPENING) return { kind: 'opening', name: 'credit' };
  if (name.startsWith(`${OPENING}.`)) return { kind: 'opening', name: name.slice(OPENING.length + 1) };
  if (name.startsWith(PRINTED)) {
    const figure = name.slice(PRINTED.length);
    return isFigure(figure) ? { kind: 'printed', name: figure } : null;
  }
  return quantities.includes(name) ? { kind: 'known', name } : null;
}

/** Numbers that bills print, a column for each figure: `mantissas[row] / 10 ** places[row]`; NaN: not printed. */
export interface PrintedColumn {
  readonly mantissas: Float64Array;
  readonly places: Uint8Array;
}

/** Bills in columns, a row for each; rows of an account stand together, in order of time. */
export interface BatchRows {
  readonly count: number;
  /** Day numbers of the readings before and now. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** 1 where another account begins than that of the row before. */
  readonly begins: Uint8Array;
  /** A column for each known name, in whole thousandths; NaN: not known. */
  readonly known: readonly Float64Array[];
  /** A column for each ledger, in whole thousandths; NaN: not known. */
  readonly opening: readonly Float64Array[];
  /** A column for each printed figure. */
  readonly printed: readonly PrintedColumn[];
}

/** The names of the columns of a table of bills, in the order in which {@link BatchRows} has them. */
export interface BatchNames {
  readonly known: readonly string[];
  readonly opening: readonly string[];
  readonly printed: readonly string[];
}

/** Where a printed figure is taken for known, since nothing else tells it. */
export const printedUnits = (name: string): string => FIGURE.units(name);

/** Powers of ten for up to eight decimals. */
export const TENS: readonly number[] = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8];
