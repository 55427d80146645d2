import { CREDIT, PIECE, SHARE, SHORTFALL, TABLE, type LineConstants } from './line-constants.ts';
import { ONE } from './quantities.ts';

/** A line that the general rule has to be asked about. */
export const OTHER = 9;

/**
 * A line laid out for the evaluator's loop: every step has the same fields, so that one machine code
 * serves them all, however many tariffs are alive. Repricing writes `table` and `rate` in place.
 */
export interface Step {
  readonly kind: number;
  readonly quantity: number;
  /** What the quantity is multiplied by; for a minimum, what the sum of its basis is multiplied by. */
  readonly scale: number;
  readonly table: Float64Array;
  readonly basis: Int32Array;
  /** Percentage, or the minimum. */
  rate: number;
  readonly divisor: number;
  readonly half: number;
  readonly unit: number;
  /** 1 where the line counts in the total, else 0. */
  readonly counts: number;
}

/**
 * The pieces of a line as one table: where the quantity charged also chooses, tables in a row are one
 * table with jumps.
 */
function onePieceTable(line: LineConstants): Float64Array {
  if (line.tableLimits.length === 0) return line.pieces.slice();
  const rows = line.tableLimits.flatMap((limit, table) => {
    const from = line.tableStarts[table] ?? 0;
    const to = line.tableStarts[table + 1] ?? line.pieces.length;
    const own = [...line.pieces.slice(from, to)];
    return own.map((value, at) => (at % PIECE === 0 ? Math.min(limit, value) : value));
  });
  return Float64Array.from(rows);
}

/** The short cut that fits a line; only half-up lines with one table have one. */
function stepKind(line: LineConstants): number {
  const chosenByItself = line.chooser === line.quantity && line.chooserScale === line.scale;
  const isOneTable = line.tableLimits.length === 0 || (line.kind === TABLE && chosenByItself);
  const isShort = line.kind === TABLE || line.kind === SHARE || line.kind === SHORTFALL;
  return line.mode === 'half-up' && isOneTable && isShort ? line.kind : OTHER;
}

/**
 * Beyond the safe quantity a table answers NaN, which the evaluator takes as its sign to go the long way:
 * no piece reaches further, and a last one without a rate takes what does.
 */
function guarded(table: Float64Array, most: number): Float64Array {
  const limited = table.map((value, at) => (at % PIECE === 0 ? Math.min(value, most) : value));
  return Float64Array.from([...limited, Infinity, NaN, NaN]);
}

function makeStep(line: LineConstants, safeQuantity: number): Step {
  const kind = stepKind(line);
  return {
    kind,
    quantity: line.quantity,
    scale: kind === SHORTFALL ? line.basisScale : line.scale,
    table: kind === TABLE ? guarded(onePieceTable(line), safeQuantity * line.scale) : new Float64Array(PIECE),
    basis: Int32Array.from(line.basis),
    rate: line.pieces[1] ?? 0,
    divisor: line.divisor,
    half: line.half,
    unit: line.unit,
    counts: line.adds ? 1 : 0,
  };
}

/** Lay lines out for the evaluator. */
export function makeSteps(lines: readonly LineConstants[], safeQuantity: number): readonly Step[] {
  return lines.map((line) => makeStep(line, safeQuantity));
}

/** The quantities that lines are charged on or chosen by. */
export function usedQuantities(lines: readonly LineConstants[]): readonly number[] {
  const charged = lines.filter(({ kind }) => kind !== CREDIT);
  const used = new Set(charged.flatMap((line) => [line.quantity, line.chooser]));
  used.delete(ONE);
  return [...used];
}
