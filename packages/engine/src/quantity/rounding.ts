/**
 * The ways to round. The half modes and `up`/`down` look at the magnitude (−2.5 half-up is −3);
 * `floor` and `ceiling` look at the sign (−2.5 floor is −3, ceiling −2); `half-ceiling` and `half-floor`
 * are the half modes that look at the sign.
 */
export const ROUNDING_MODES = [
  'half-up',
  'half-even',
  'half-down',
  'up',
  'down',
  'floor',
  'ceiling',
  'half-ceiling',
  'half-floor',
] as const;

/** One of the ways to round. */
export type RoundingMode = (typeof ROUNDING_MODES)[number];

/** Whether the part left over (remainder, of divisor) pushes the magnitude up by one. */
function goesUp(mode: RoundingMode, negative: boolean, odd: boolean, comparedWithHalf: number): boolean {
  switch (mode) {
    case 'half-up':
      return comparedWithHalf >= 0;
    case 'half-even':
      return comparedWithHalf > 0 || (comparedWithHalf === 0 && odd);
    case 'half-down':
      return comparedWithHalf > 0;
    case 'up':
      return true;
    case 'down':
      return false;
    case 'floor':
      return negative;
    case 'ceiling':
      return !negative;
    case 'half-ceiling':
      return negative ? comparedWithHalf > 0 : comparedWithHalf >= 0;
    case 'half-floor':
      return negative ? comparedWithHalf >= 0 : comparedWithHalf > 0;
  }
}

/**
 * Divide two whole numbers and round the quotient to a whole number, exactly.
 *
 * For 0 ≤ n < 2^53 and whole d, floor of the double quotient n/d is the true floor: a quotient that is
 * not whole lies at least 1/d below the next whole number, more than a double's relative error of 2^-53.
 *
 * @param numerator    whole, magnitude at most 2^53 − 1
 * @param denominator  whole, from 1 to 2^52
 * @param mode         how to round
 * @returns            whole
 * @example
 * roundQuotient(-5, 2, 'half-up') //=> -3
 * roundQuotient(5, 2, 'half-even') //=> 2
 */
export function roundQuotient(numerator: number, denominator: number, mode: RoundingMode): number {
  const negative = numerator < 0;
  const magnitude = negative ? -numerator : numerator;
  let quotient = Math.floor(magnitude / denominator);
  const remainder = magnitude - quotient * denominator;
  if (remainder !== 0) {
    const comparedWithHalf = remainder - (denominator - remainder);
    if (goesUp(mode, negative, quotient % 2 === 1, comparedWithHalf)) quotient += 1;
  }
  return negative ? 0 - quotient : quotient;
}

/**
 * The same as {@link roundQuotient} for whole numbers of any size.
 *
 * @example
 * roundLargeQuotient(-5n, 2n, 'floor') //=> -3n
 */
export function roundLargeQuotient(numerator: bigint, denominator: bigint, mode: RoundingMode): bigint {
  const negative = numerator < 0n;
  const magnitude = negative ? -numerator : numerator;
  let quotient = magnitude / denominator;
  const remainder = magnitude % denominator;
  if (remainder !== 0n) {
    const comparedWithHalf = 2n * remainder > denominator ? 1 : 2n * remainder < denominator ? -1 : 0;
    if (goesUp(mode, negative, quotient % 2n === 1n, comparedWithHalf)) quotient += 1n;
  }
  return negative ? -quotient : quotient;
}

/** A rounding as data: to which step, and how. */
export interface Rounding {
  /** A positive decimal as text, e.g. "0.01", "1", "0.05". */
  readonly step: string;
  readonly mode: RoundingMode;
}
