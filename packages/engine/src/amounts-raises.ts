import { isRaisable, type Constants, type ExactFactor, type LineRaises } from './bill/index.ts';
import { LongWay } from './amounts-long-way.ts';

/** How much the rates of charges have risen in each period, for a projection. */
export interface Raises {
  /** The row of factors that a period has: periods of one year share one. */
  readonly rows: Int32Array;
  /** How many charges can rise: the length of a row. */
  readonly columns: number;
  /** The doubles nearest to the factors: a row for each year, a column for each charge that can rise. */
  readonly factors: Float64Array;
  /** false: the factors are written anew from run to run; left out: they stay. */
  readonly isFixed?: false;
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
