import { LARGEST_WHOLE, roundLargeQuotient, roundQuotient } from '../quantity/index.ts';
import { CREDIT, PIECE, SHARE, SHORTFALL, TABLE, type LineConstants } from './line-constants.ts';
import { largeOffset } from './offset.ts';
import { ONE } from './quantities.ts';

/** An amount that is not a whole number a double can hold. */
export class AmountTooLarge extends RangeError {
  /** The line, by index. */
  readonly line: number;
  constructor(line: number) {
    super(`the amount of line ${String(line)} is beyond ${String(LARGEST_WHOLE)}`);
    this.line = line;
  }
}

/** Divide and round as a line says; numbers are below 2^52. */
function rounded(line: LineConstants, numerator: number): number {
  if (line.mode === 'exact') return (numerator / line.divisor) * line.unit;
  return roundQuotient(numerator, line.divisor, line.mode) * line.unit;
}

/** An amount that a double holds. */
function refused(amount: number, at: number): number {
  if (Math.abs(amount) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  return amount;
}

/** x · rate + offset, divided and rounded, for numbers of any size. */
function roundedLarge(line: LineConstants, parts: readonly [number, number, bigint], at: number): number {
  const [x, rate, offset] = parts;
  const numerator = BigInt(x) * BigInt(rate) + offset;
  const divisor = BigInt(line.divisor);
  const quotient =
    line.mode === 'exact' ? numerator / divisor : roundLargeQuotient(numerator, divisor, line.mode);
  return largeAmount(quotient * BigInt(line.unit), at);
}

/**
 * An amount that was worked out in whole numbers of any size.
 *
 * @param at  place of the line
 * @throws    AmountTooLarge when no double holds it
 * @example
 * largeAmount(613n, 0) //=> 613
 */
export function largeAmount(value: bigint, at: number): number {
  if (value > BigInt(LARGEST_WHOLE) || value < -BigInt(LARGEST_WHOLE)) throw new AmountTooLarge(at);
  return Number.parseInt(value.toString(), 10);
}

/** Where the table begins that a quantity chooses. */
function tableStart(line: LineConstants, quantities: Float64Array): number {
  const limits = line.tableLimits;
  if (limits.length === 0) return 0;
  const x = (quantities[line.chooser] as number) * line.chooserScale;
  let table = 0;
  while (x > (limits[table] as number)) table += 1;
  return line.tableStarts[table] as number;
}

/** Sum of the lines a line is based on; refused where a double cannot hold it. */
function basisSum(basis: readonly number[], amounts: Float64Array, at: number): number {
  let sum = 0;
  for (let index = 0; index < basis.length; index += 1) sum += amounts[basis[index] as number] as number;
  if (Math.abs(sum) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  return sum;
}

/** A minimum compared with the lines it is about: the shortfall, or the larger of the two. */
function minimumAmount(line: LineConstants, sum: number, at: number): number {
  const least = line.pieces[1] as number;
  const compared = BigInt(sum) * BigInt(line.basisScale);
  const isShortfall = line.kind === SHORTFALL;
  if (compared >= BigInt(least)) return isShortfall ? 0 : sum;
  return roundedLarge(line, isShortfall ? [sum, -line.basisScale, BigInt(least)] : [1, 0, BigInt(least)], at);
}

/** A credit: below 0, what the balance and what was earned can meet of the lines it is set against. */
function creditAmount(
  line: LineConstants,
  at: number,
  { quantities, amounts }: Pick<LineInput, 'quantities' | 'amounts'>,
): number {
  const opening = line.quantity === ONE ? 0 : (quantities[line.quantity] as number);
  const available = opening + basisSum(line.earned, amounts, at);
  const against = Math.max(0, basisSum(line.basis, amounts, at));
  if (Math.abs(available) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  const product = against * (line.pieces[1] as number);
  const isLarge = product > LARGEST_WHOLE || line.divisor > LARGEST_WHOLE / 2;
  const most = isLarge
    ? roundedLarge(line, [against, line.pieces[1] as number, 0n], at)
    : refused(rounded(line, product), at);
  return 0 - Math.max(0, Math.min(available, most, against));
}

/**
 * What a table line comes to before it is divided and rounded, in whole numbers of any size.
 *
 * @param at  place of the line
 * @throws    AmountTooLarge when the quantity is beyond 2^53
 */
export function lineNumerator(line: LineConstants, at: number, quantities: Float64Array): bigint {
  const x = (quantities[line.quantity] as number) * line.scale;
  if (Math.abs(x) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  const start = tableStart(line, quantities);
  let piece = start;
  while (x > (line.pieces[piece] as number)) piece += PIECE;
  return BigInt(x) * BigInt(line.pieces[piece + 1] as number) + largeOffset(line, start, piece);
}

/** What a line's amount is computed from. */
export interface LineInput {
  readonly quantities: Float64Array;
  /** Amounts of the lines above. */
  readonly amounts: Float64Array;
  /** Whether numbers on the way may exceed what a double holds. */
  readonly isLarge: boolean;
}

/**
 * The amount of one line of any kind: the rule that the evaluator's short cuts repeat for the two
 * commonest kinds, and that a law holds them to.
 *
 * @param at  place of the line
 * @returns   whole number of 1/grid of money
 * @throws    AmountTooLarge when it is beyond 2^53
 */
export function lineAmount(
  line: LineConstants,
  at: number,
  { quantities, amounts, isLarge }: LineInput,
): number {
  if (line.kind === CREDIT) return creditAmount(line, at, { quantities, amounts });
  if (line.kind !== TABLE && line.kind !== SHARE)
    return minimumAmount(line, basisSum(line.basis, amounts, at), at);
  const isTable = line.kind === TABLE;
  const x = isTable ? (quantities[line.quantity] as number) * line.scale : basisSum(line.basis, amounts, at);
  if (Math.abs(x) > LARGEST_WHOLE) throw new AmountTooLarge(at);
  const start = tableStart(line, quantities);
  let piece = start;
  if (isTable) while (x > (line.pieces[piece] as number)) piece += PIECE;
  const rate = line.pieces[piece + 1] as number;
  if (isLarge) return roundedLarge(line, [x, rate, largeOffset(line, start, piece)], at);
  return rounded(line, x * rate + (line.pieces[piece + 2] as number));
}
