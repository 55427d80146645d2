import { PIECE } from './line-constants.ts';
import type { Step } from './steps.ts';

// The loops below call nothing that does not become part of them: a call that may do anything makes the machine read
// every column's place and length anew for each bill, which took a fifth of a quote's time.

/** Places of what the loops multiply, divide and add. */
const [SCALE, RATE, DIVISOR, HALF, UNIT, COUNTS] = [0, 1, 2, 3, 4, 5];

/**
 * The numbers of a line in a column of their own: so a loop has each of them as a double, and not as a small
 * integer that is made a double again for every bill, which takes as long as all else.
 */
export const lineTerms = ({ scale, rate, divisor, half, unit, counts }: Step): Float64Array =>
  Float64Array.of(scale, rate, divisor, half, unit, counts);

/** One line of many bills. */
export interface LineColumns {
  readonly terms: Float64Array;
  /** Pieces of a table. */
  readonly table: Float64Array;
  /** What it is worked out of: the quantity charged, or the sums of the lines that it is based on. */
  readonly of: Float64Array;
  /** Receives the amounts; may be the column of the sums. */
  readonly into: Float64Array;
  /** Amounts that count are added to these. */
  readonly totals: Float64Array;
}

/** Bills in a row whose rates have risen alike. */
export interface RaisedRows {
  readonly from: number;
  readonly to: number;
  /** The double near the factor, off by three parts in 2^53 at most; not 1. */
  readonly factor: number;
}

/** As in `evaluateRaised`: many times what products and quotients of doubles can be off, as a part of their size. */
const DOUBT = 2 ** -49;

/** Whether what a double leaves above a whole number is nearer to a whole number than it can be off. */
const isInDoubt = (rest: number, size: number): boolean => Math.abs(rest - 0.5) >= 0.5 - size * DOUBT;

/** Rate × quantity + offset, in the piece of the table that the quantity falls into. */
function numeratorOf(table: Float64Array, x: number): number {
  let piece = 0;
  while (x > (table[piece] as number)) piece += PIECE;
  return x * (table[piece + 1] as number) + (table[piece + 2] as number);
}

/** A table of rates that stand: divided and rounded half-up. */
export function tableRows({ terms, table, of, into, totals }: LineColumns, from: number, to: number): void {
  const scale = terms[SCALE] as number;
  const divisor = terms[DIVISOR] as number;
  const half = terms[HALF] as number;
  const unit = terms[UNIT] as number;
  const counts = terms[COUNTS] as number;
  const limit = table[0] as number;
  const rate = table[1] as number;
  const offset = table[2] as number;
  for (let at = from; at < to; at += 1) {
    const x = (of[at] as number) * scale;
    const numerator = x <= limit ? x * rate + offset : numeratorOf(table, x);
    const rounded =
      numerator < 0 ? 0 - Math.floor((half - numerator) / divisor) : Math.floor((numerator + half) / divisor);
    const amount = rounded * unit;
    into[at] = amount;
    totals[at] = (totals[at] as number) + amount * counts;
  }
}

/** A percentage of sums. */
export function shareRows({ terms, of, into, totals }: LineColumns, from: number, to: number): void {
  const rate = terms[RATE] as number;
  const divisor = terms[DIVISOR] as number;
  const half = terms[HALF] as number;
  const unit = terms[UNIT] as number;
  const counts = terms[COUNTS] as number;
  for (let at = from; at < to; at += 1) {
    const numerator = (of[at] as number) * rate;
    const rounded =
      numerator < 0 ? 0 - Math.floor((half - numerator) / divisor) : Math.floor((numerator + half) / divisor);
    const amount = rounded * unit;
    into[at] = amount;
    totals[at] = (totals[at] as number) + amount * counts;
  }
}

/** What sums fall short of a minimum. */
export function shortfallRows({ terms, of, into, totals }: LineColumns, from: number, to: number): void {
  const rate = terms[RATE] as number;
  const scale = terms[SCALE] as number;
  const divisor = terms[DIVISOR] as number;
  const half = terms[HALF] as number;
  const unit = terms[UNIT] as number;
  const counts = terms[COUNTS] as number;
  for (let at = from; at < to; at += 1) {
    const missing = Math.max(0, rate - (of[at] as number) * scale);
    const amount = Math.floor((missing + half) / divisor) * unit;
    into[at] = amount;
    totals[at] = (totals[at] as number) + amount * counts;
  }
}

/**
 * A table of rates that have risen.
 *
 * @returns the first bill where the double may be on the wrong side of a rounding: it has to be worked out by itself,
 *          and the bills after it are not done; the end where there is none
 */
export function raisedTableRows(
  { terms, table, of, into, totals }: LineColumns,
  { from, to, factor }: RaisedRows,
): number {
  const scale = terms[SCALE] as number;
  const unit = terms[UNIT] as number;
  const counts = terms[COUNTS] as number;
  const times = factor / (terms[DIVISOR] as number);
  const limit = table[0] as number;
  const rate = table[1] as number;
  const offset = table[2] as number;
  let quantity = NaN;
  let amount = NaN;
  for (let at = from; at < to; at += 1) {
    // A quantity that is that of the bill before, as a load is, comes to the same.
    if (of[at] !== quantity) {
      quantity = of[at] as number;
      const x = quantity * scale;
      const numerator = x <= limit ? x * rate + offset : numeratorOf(table, x);
      const top = Math.abs(numerator) * times + 0.5;
      const whole = Math.floor(top);
      amount = (numerator < 0 ? 0 - whole : whole) * unit;
      if (isInDoubt(top - whole, top)) return at;
    }
    into[at] = amount;
    totals[at] = (totals[at] as number) + amount * counts;
  }
  return to;
}

/** What sums fall short of a minimum that has risen; returns what `raisedTableRows` does. */
export function raisedShortfallRows(
  { terms, of, into, totals }: LineColumns,
  { from, to, factor }: RaisedRows,
): number {
  const rate = terms[RATE] as number;
  const scale = terms[SCALE] as number;
  const divisor = terms[DIVISOR] as number;
  const unit = terms[UNIT] as number;
  const counts = terms[COUNTS] as number;
  const least = rate * factor;
  const size = least / divisor;
  for (let at = from; at < to; at += 1) {
    const top = Math.max(0, least - (of[at] as number) * scale) / divisor + 0.5;
    const whole = Math.floor(top);
    if (isInDoubt(top - whole, top + size)) return at;
    const amount = whole * unit;
    into[at] = amount;
    totals[at] = (totals[at] as number) + amount * counts;
  }
  return to;
}
