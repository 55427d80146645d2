import { LARGEST_WHOLE } from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { AmountTooLarge, lineAmount } from './line-amount.ts';
import { PIECE, SHARE, TABLE, type LineConstants } from './line-constants.ts';
import { raisedAmount, type LineRaises } from './raised.ts';
import { OTHER, type Step } from './steps.ts';

/** Many times what a product and a sum of doubles can be off, as a part of their size: 2^-49. */
const DOUBT = 2 ** -49;

/** Line by line in whole numbers of any size, where doubles have no room. */
function evaluateAll(
  constants: Constants,
  quantities: Float64Array,
  amounts: Float64Array,
  raises: LineRaises,
): number {
  if (!constants.isExact) throw new AmountTooLarge(0);
  let total = 0;
  constants.lines.forEach((line, at) => {
    amounts[at] = amountOf(line, at, { quantities, amounts }, raises);
    if (line.adds) total += amounts[at];
  });
  if (Math.abs(total) > LARGEST_WHOLE) throw new AmountTooLarge(constants.lines.length - 1);
  return total;
}

/** One line, exact, whether it rose or not. */
function amountOf(
  line: LineConstants,
  at: number,
  parts: { readonly quantities: Float64Array; readonly amounts: Float64Array },
  { factors, exact }: LineRaises,
): number {
  if (factors[at] === 1) return lineAmount(line, at, { ...parts, isLarge: true });
  return raisedAmount(line, at, parts, exact(at));
}

/**
 * The amounts of all lines of a bill whose rates have risen: what `evaluate` is for rates as they stand.
 *
 * The numerator of a line stays a whole number of the document's own rates. It is multiplied by the double
 * nearest to the factor; where what is left by the division lies so near a rounding edge that the double
 * could be on the wrong side, that line is worked out in whole numbers of any size. So every amount is that
 * of the exact factor.
 *
 * @param constants   of the version in force
 * @param quantities  as for `evaluate`
 * @param amounts     receives one whole number of 1/grid of money for each line
 * @param raises      factors by line
 * @returns           the sum of the lines that count, on the same grid
 * @throws            AmountTooLarge when an amount is beyond 2^53
 */
export function evaluateRaised(
  constants: Constants,
  quantities: Float64Array,
  amounts: Float64Array,
  raises: LineRaises,
): number {
  const { steps, lines } = constants;
  const { factors } = raises;
  let total = 0;
  for (let at = 0; at < steps.length; at += 1) {
    const step = steps[at] as Step;
    const { kind, table, basis } = step;
    const factor = factors[at] as number;
    let numerator: number;
    let size = 0;
    if (kind === TABLE) {
      const x = (quantities[step.quantity] as number) * step.scale;
      let piece = 0;
      while (x > (table[piece] as number)) piece += PIECE;
      numerator = (x * (table[piece + 1] as number) + (table[piece + 2] as number)) * factor;
    } else {
      let sum = 0;
      for (let index = 0; index < basis.length; index += 1) sum += amounts[basis[index] as number] as number;
      size = step.rate * factor;
      numerator = kind === SHARE ? sum * step.rate : Math.max(0, size - sum * step.scale);
    }
    const { divisor, half } = step;
    const top = numerator < 0 ? half - numerator : numerator + half;
    const whole = Math.floor(top / divisor);
    let amount = (numerator < 0 ? 0 - whole : whole) * step.unit;
    if (kind === OTHER) {
      amount = amountOf(lines[at] as LineConstants, at, { quantities, amounts }, raises);
    } else if (factor !== 1) {
      const rest = top - whole * divisor;
      const doubt = (top + size) * DOUBT;
      if (!(rest > doubt && divisor - rest > doubt)) {
        amount = Number.isNaN(top)
          ? NaN
          : amountOf(lines[at] as LineConstants, at, { quantities, amounts }, raises);
      }
    }
    amounts[at] = amount;
    total += amount * step.counts;
  }
  return Number.isNaN(total) || !constants.isExact
    ? evaluateAll(constants, quantities, amounts, raises)
    : total;
}
