import { LARGEST_WHOLE, roundLargeQuotient, roundQuotient } from '../quantity/index.ts';
import { PIECE, SHARE, SHORTFALL, TABLE, type Constants, type LineConstants } from './constants.ts';

/** Divide and round as a line says; numbers are below 2^52. */
function rounded(line: LineConstants, numerator: number): number {
  if (line.mode === 'half-up') {
    const { divisor, half } = line;
    return numerator < 0
      ? 0 - Math.floor((half - numerator) / divisor)
      : Math.floor((numerator + half) / divisor);
  }
  return line.mode === 'exact' ? numerator / line.divisor : roundQuotient(numerator, line.divisor, line.mode);
}

/** An amount that is not a whole number a double can hold. */
export class AmountTooLarge extends RangeError {
  /** The line, by index. */
  readonly line: number;
  constructor(line: number) {
    super(`the amount of line ${String(line)} is beyond ${String(LARGEST_WHOLE)}`);
    this.line = line;
  }
}

/** x · scale · rate + offset, divided and rounded, for numbers of any size. */
function roundedLarge(line: LineConstants, parts: readonly [number, number, number], at: number): number {
  const [x, rate, offset] = parts;
  const numerator = BigInt(x) * BigInt(rate) + BigInt(offset);
  const divisor = BigInt(line.divisor);
  const quotient =
    line.mode === 'exact' ? numerator / divisor : roundLargeQuotient(numerator, divisor, line.mode);
  const value = quotient * BigInt(line.unit);
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

function basisSum(line: LineConstants, amounts: Float64Array): number {
  let sum = 0;
  for (const index of line.basis) sum += amounts[index] as number;
  return sum;
}

/** A minimum compared with the lines it is about: the shortfall, or the larger of the two. */
function minimumAmount(line: LineConstants, sum: number, large: boolean, at: number): number {
  const least = line.pieces[1] as number;
  const missing = least - sum * line.basisScale;
  if (missing <= 0) return line.kind === SHORTFALL ? 0 : sum;
  if (line.kind === SHORTFALL) {
    return large
      ? roundedLarge(line, [sum, -line.basisScale, least], at)
      : rounded(line, missing) * line.unit;
  }
  return rounded(line, least) * line.unit;
}

function isLarge(constants: Constants, quantities: Float64Array): boolean {
  const most = constants.safeQuantity;
  for (let at = 0; at < quantities.length; at += 1) if ((quantities[at] as number) > most) return true;
  return false;
}

/**
 * The amounts of all lines of a bill, exact, without their derivation.
 *
 * @param constants   of the version in force
 * @param quantities  whole thousandths in the order of `QUANTITY_ORDER` (energy times the energy scale)
 * @param amounts     receives one whole number of 1/grid of money for each line
 * @returns           the sum of the lines that count, on the same grid
 * @throws            AmountTooLarge when an amount is beyond 2^53
 */
export function evaluate(constants: Constants, quantities: Float64Array, amounts: Float64Array): number {
  const { lines } = constants;
  const large = isLarge(constants, quantities);
  let total = 0;
  for (let at = 0; at < lines.length; at += 1) {
    const line = lines[at] as LineConstants;
    const { kind, pieces } = line;
    let amount: number;
    if (kind === TABLE || kind === SHARE) {
      const x = kind === TABLE ? (quantities[line.quantity] as number) * line.scale : basisSum(line, amounts);
      let piece = line.tableLimits.length === 0 ? 0 : tableStart(line, quantities);
      if (kind === TABLE) while (x > (pieces[piece] as number)) piece += PIECE;
      const rate = pieces[piece + 1] as number;
      const offset = pieces[piece + 2] as number;
      amount = large
        ? roundedLarge(line, [x, rate, offset], at)
        : rounded(line, x * rate + offset) * line.unit;
    } else amount = minimumAmount(line, basisSum(line, amounts), large, at);
    amounts[at] = amount;
    if (line.adds) total += amount;
  }
  if (large && Math.abs(total) > LARGEST_WHOLE) throw new AmountTooLarge(lines.length - 1);
  return total;
}
