import type { Constants } from './constants.ts';
import { SHARE, TABLE, type LineConstants } from './line-constants.ts';
import { ONE, ONE_THOUSANDTHS } from './quantities.ts';
import { raisedAmount, type ExactFactor } from './raised.ts';
import {
  lineTerms,
  raisedShortfallRows,
  raisedTableRows,
  shareRows,
  shortfallRows,
  tableRows,
  type LineColumns,
} from './line-columns.ts';
import { OTHER, type Step } from './steps.ts';

/** Many bills of the same charges, a column for each quantity and each line. */
export interface BillColumns {
  readonly constants: Constants;
  readonly count: number;
  /** Whole thousandths, in the order of the quantities that the charges use. */
  readonly used: readonly Float64Array[];
  /** For each line the column it is charged on: one of those, or one that is always one. */
  readonly charged: readonly Float64Array[];
  /** The numbers of each line. */
  readonly terms: readonly Float64Array[];
  /** Receives the amounts of each line; lines that no other is based on share one column. */
  readonly amounts: readonly Float64Array[];
  /** Receives the sums of the lines that count; NaN where only the long way can say. */
  readonly totals: Float64Array;
  /** Quantities and amounts of one bill, for a line that has to be worked out by itself. */
  readonly one: { readonly quantities: Float64Array; readonly amounts: Float64Array };
}

/** How far the rates of lines have risen, in runs of bills that follow on each other. */
export interface ColumnRaises {
  /** Where each run begins, and after the last one the count of bills. */
  readonly starts: Int32Array;
  /** For each line the doubles nearest to its factors, run by run; null: its rates stand. */
  readonly factors: readonly (Float64Array | null)[];
  /** The factor itself of a line in a bill, asked for only where the double leaves a rounding in doubt. */
  readonly exact: (line: number, bill: number) => ExactFactor;
}

/**
 * Whether charges can be evaluated in columns: none of their lines asks the general rule.
 */
export const isColumnar = ({ steps, isExact }: Constants): boolean =>
  isExact && steps.every(({ kind }) => kind !== OTHER);

/** The sums of the lines that a line is based on: the column of the one, or several added up. */
function basisColumn({ basis }: Step, amounts: readonly Float64Array[], into: Float64Array): Float64Array {
  const first = amounts[basis[0] as number];
  if (first === undefined) return into.fill(0);
  if (basis.length === 1) return first;
  into.set(first);
  for (let index = 1; index < basis.length; index += 1) {
    const more = amounts[basis[index] as number] as Float64Array;
    for (let at = 0; at < into.length; at += 1) into[at] = (into[at] as number) + (more[at] as number);
  }
  return into;
}

/** The exact amount of a line in one bill. */
function exactAmount(
  { constants, used, amounts, one }: BillColumns,
  line: number,
  at: number,
  factor: ExactFactor,
): number {
  constants.used.forEach((place, index) => {
    one.quantities[place] = used[index]?.[at] ?? 0;
  });
  for (let index = 0; index < line; index += 1) one.amounts[index] = amounts[index]?.[at] ?? 0;
  return raisedAmount(constants.lines[line] as LineConstants, line, one, factor);
}

/** Work a line of one bill out by itself, where the double of its factor leaves a rounding in doubt. */
function settleDoubt(columns: BillColumns, line: number, at: number, factor: ExactFactor): void {
  const { constants, amounts, totals } = columns;
  const amount = exactAmount(columns, line, at, factor);
  (amounts[line] as Float64Array)[at] = amount;
  totals[at] = (totals[at] as number) + amount * (constants.steps[line] as Step).counts;
}

/** A line whose rates have risen: run by run of bills, since each run has one factor. */
function raisedLine(columns: BillColumns, line: number, own: LineColumns, raises: ColumnRaises): void {
  const { starts } = raises;
  const factors = raises.factors[line] as Float64Array;
  const isTable = (columns.constants.steps[line] as Step).kind === TABLE;
  for (let run = 0; run < factors.length; run += 1) {
    const to = starts[run + 1] as number;
    const factor = factors[run] as number;
    let from = starts[run] as number;
    if (factor === 1) {
      if (isTable) tableRows(own, from, to);
      else shortfallRows(own, from, to);
      from = to;
    }
    while (from < to) {
      const rows = { from, to, factor };
      from = isTable ? raisedTableRows(own, rows) : raisedShortfallRows(own, rows);
      if (from < to) settleDoubt(columns, line, from, raises.exact(line, from));
      from += 1;
    }
  }
}

/**
 * The bills of many periods with the same charges, line by line: what `evaluate` and `evaluateRaised` are for
 * one, and several times as fast, since each line is prepared once.
 *
 * @param columns  receives amounts and totals
 * @param raises   how far rates have risen; null: they stand
 * @throws         AmountTooLarge when an amount is beyond 2^53
 */
export function evaluateColumns(columns: BillColumns, raises: ColumnRaises | null): void {
  const { constants, terms, charged, amounts, totals, count } = columns;
  totals.fill(0);
  for (let line = 0; line < constants.steps.length; line += 1) {
    const step = constants.steps[line] as Step;
    const into = amounts[line] as Float64Array;
    const isTable = step.kind === TABLE;
    const of = isTable ? (charged[line] as Float64Array) : basisColumn(step, amounts, into);
    const own = { terms: terms[line] as Float64Array, table: step.table, of, into, totals };
    if ((raises?.factors[line] ?? null) !== null) raisedLine(columns, line, own, raises as ColumnRaises);
    else if (isTable) tableRows(own, 0, count);
    else if (step.kind === SHARE) shareRows(own, 0, count);
    else shortfallRows(own, 0, count);
  }
}

/**
 * Room for bills of the same charges.
 *
 * @param used  a column for each quantity that the charges use
 */
export function billColumns(constants: Constants, count: number, used: readonly Float64Array[]): BillColumns {
  const room = (): Float64Array => new Float64Array(count);
  const based = new Set(constants.lines.flatMap(({ basis }) => basis));
  const unread = room();
  const ones = room().fill(ONE_THOUSANDTHS);
  const quantities = new Float64Array(constants.shape.quantities.names.length);
  quantities[ONE] = ONE_THOUSANDTHS;
  return {
    constants,
    count,
    used,
    charged: constants.steps.map(({ quantity }) => used[constants.used.indexOf(quantity)] ?? ones),
    terms: constants.steps.map(lineTerms),
    amounts: constants.lines.map((_, line) => (based.has(line) ? room() : unread)),
    totals: room(),
    one: { quantities, amounts: new Float64Array(constants.lines.length) },
  };
}
