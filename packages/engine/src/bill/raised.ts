import { roundLargeQuotient } from '../quantity/index.ts';
import { AmountTooLarge, largeAmount, lineNumerator } from './line-amount.ts';
import { FLOOR, SHORTFALL, TABLE, type LineConstants } from './line-constants.ts';

/** An exact factor above 0: what a rate is multiplied by. */
export interface ExactFactor {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/**
 * How much the rates of charges have risen, for a projection: rates as the document has them times a factor,
 * exact, however many decimals that has.
 */
export interface LineRaises {
  /** By line: the double nearest to its factor; 1 where nothing rises. */
  readonly factors: Float64Array;
  /** The factor itself, asked for only where the double leaves a rounding in doubt. */
  readonly exact: (line: number) => ExactFactor;
}

/** Whether the rates of a line can be raised: percentages and credits have none. */
export function isRaisable({ kind, mode }: LineConstants): boolean {
  return (kind === TABLE || kind === SHORTFALL || kind === FLOOR) && mode !== 'exact';
}

/** A minimum that rose, compared with the lines it is about. */
function raisedMinimum(line: LineConstants, sum: bigint, { numerator, denominator }: ExactFactor): bigint {
  const least = BigInt(line.pieces[1] as number) * numerator;
  const compared = sum * BigInt(line.basisScale) * denominator;
  const isShortfall = line.kind === SHORTFALL;
  if (compared >= least) return isShortfall ? 0n : sum;
  const missing = isShortfall ? least - compared : least;
  return stepped(line, missing, denominator);
}

/** Divided and rounded as the line says, on the grid of the bill. */
function stepped(line: LineConstants, top: bigint, denominator: bigint): bigint {
  if (line.mode === 'exact') throw new RangeError('a line that is not rounded cannot rise');
  const divisor = BigInt(line.divisor) * denominator;
  return roundLargeQuotient(top, divisor, line.mode) * BigInt(line.unit);
}

/**
 * The amount of a line whose rates rose, in whole numbers of any size.
 *
 * @param at  place of the line
 * @returns   whole number of 1/grid of money
 * @throws    AmountTooLarge when it is beyond 2^53; RangeError for a line that is not rounded
 */
export function raisedAmount(
  line: LineConstants,
  at: number,
  { quantities, amounts }: { readonly quantities: Float64Array; readonly amounts: Float64Array },
  factor: ExactFactor,
): number {
  if (line.kind === TABLE) {
    const numerator = lineNumerator(line, at, quantities);
    return largeAmount(stepped(line, numerator * factor.numerator, factor.denominator), at);
  }
  let sum = 0;
  for (const index of line.basis) sum += amounts[index] as number;
  if (!Number.isSafeInteger(sum)) throw new AmountTooLarge(at);
  return largeAmount(raisedMinimum(line, BigInt(sum), factor), at);
}
