import {
  isRaisable,
  type ColumnRaises,
  type Constants,
  type ExactFactor,
  type LineRaises,
} from './bill/index.ts';
import { LongWay } from './amounts-long-way.ts';

/** How much the rates of charges have risen in each period, for a projection. */
export interface Raises {
  /** The row of factors that a period has: periods of one year share one. */
  readonly rows: Int32Array;
  /** How many charges can rise: the length of a row. */
  readonly columns: number;
  /** The doubles nearest to the factors: a row for each year, a column for each charge that can rise. */
  readonly factors: Float64Array;
  /** The factor itself, by row and column. */
  readonly exact: (row: number, column: number) => ExactFactor;
}

/** The factors of the lines of one part of a period, taken from those of the charges. */
export class PartRaises implements LineRaises {
  readonly factors: Float64Array;
  /** For each line the column of its charge; −1 where its rates stay. */
  readonly columns: Int32Array;
  private raises: Raises | null = null;
  private row = 0;

  constructor(columns: Int32Array) {
    this.columns = columns;
    this.factors = new Float64Array(columns.length).fill(1);
  }

  take(raises: Raises, at: number): void {
    const { columns, factors } = this;
    this.raises = raises;
    this.row = raises.rows[at] as number;
    const from = this.row * raises.columns;
    for (let line = 0; line < columns.length; line += 1) {
      const column = columns[line] as number;
      if (column >= 0) factors[line] = raises.factors[from + column] as number;
    }
  }

  readonly exact = (line: number): ExactFactor => {
    const column = this.columns[line] as number;
    if (this.raises === null || column < 0) return { numerator: 1n, denominator: 1n };
    return this.raises.exact(this.row, column);
  };
}

/**
 * Which lines of some charges can rise, and room for their factors.
 *
 * @param raised  charges by id
 * @returns       null where none of them is here
 * @throws        LongWay for a percentage, a credit or a line that is not rounded
 */
export function partRaises({ shape, lines }: Constants, raised: readonly string[]): PartRaises | null {
  const columns = Int32Array.from(shape.lines, ({ charge }) => raised.indexOf(charge.id));
  if (!columns.some((column) => column >= 0)) return null;
  const canAll = lines.every((line, at) => columns[at] === -1 || isRaisable(line));
  if (!canAll) throw new LongWay();
  return new PartRaises(columns);
}

/** Where runs of equal rows begin among some periods, and after the last one how many periods there are. */
function startsOf(rows: Int32Array, periods: Int32Array): Int32Array {
  const rowAt = (at: number): number | undefined => rows[periods[at] as number];
  const starts = [...periods.keys()].filter((at) => at === 0 || rowAt(at) !== rowAt(at - 1));
  return Int32Array.of(...starts, periods.length);
}

/** The factors of the lines of periods with the same charges, taken from those of the charges. */
export class GroupRaises implements ColumnRaises {
  starts: Int32Array = new Int32Array(0);
  factors: readonly (Float64Array | null)[] = [];
  /** For each line the column of its charge; −1 where its rates stay. */
  private readonly columns: Int32Array;
  private readonly periods: Int32Array;
  private raises: Raises | null = null;

  constructor(columns: Int32Array, periods: Int32Array) {
    this.columns = columns;
    this.periods = periods;
  }

  /** Take the factors of a run. */
  take(raises: Raises | null): this | null {
    if (raises === null) return null;
    if (raises.rows !== this.raises?.rows) this.makeRoom(raises.rows);
    this.raises = raises;
    const { starts, columns, periods, factors } = this;
    for (let line = 0; line < factors.length; line += 1) {
      const own = factors[line];
      if (own == null) continue;
      for (let run = 0; run < own.length; run += 1) {
        const row = raises.rows[periods[starts[run] as number] as number] as number;
        own[run] = raises.factors[row * raises.columns + (columns[line] as number)] as number;
      }
    }
    return this;
  }

  private makeRoom(rows: Int32Array): void {
    this.starts = startsOf(rows, this.periods);
    const runs = this.starts.length - 1;
    this.factors = Array.from(this.columns, (column) => (column < 0 ? null : new Float64Array(runs)));
  }

  readonly exact = (line: number, bill: number): ExactFactor => {
    const { raises, columns, periods } = this;
    const column = columns[line] as number;
    if (raises === null || column < 0) return { numerator: 1n, denominator: 1n };
    return raises.exact(raises.rows[periods[bill] as number] as number, column);
  };
}
