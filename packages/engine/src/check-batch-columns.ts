import { FIGURE } from './audit/index.ts';

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
