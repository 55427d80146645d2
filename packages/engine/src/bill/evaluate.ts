import { LARGEST_WHOLE } from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { AmountTooLarge, lineAmount } from './line-amount.ts';
import { PIECE, SHARE, TABLE, type LineConstants } from './line-constants.ts';
import { ONE_THOUSANDTHS } from './quantities.ts';
import { OTHER, type Step } from './steps.ts';

function isLarge({ used, safeQuantity }: Constants, quantities: Float64Array): boolean {
  if (safeQuantity < ONE_THOUSANDTHS) return true;
  for (let at = 0; at < used.length; at += 1) {
    if (Math.abs(quantities[used[at] as number] as number) > safeQuantity) return true;
  }
  return false;
}

/** Line by line, for quantities whose products a double cannot hold; nothing where the constants are inexact. */
function evaluateLarge(constants: Constants, quantities: Float64Array, amounts: Float64Array): number {
  if (!constants.isExact) throw new AmountTooLarge(0);
  let total = 0;
  constants.lines.forEach((line, at) => {
    const amount = lineAmount(line, at, { quantities, amounts, isLarge: true });
    amounts[at] = amount;
    if (line.adds) total += amount;
  });
  if (Math.abs(total) > LARGEST_WHOLE) throw new AmountTooLarge(constants.lines.length - 1);
  return total;
}

/** The amount of a line that has no short cut; NaN, the sign to go the long way, for large quantities. */
function otherAmount(
  constants: Constants,
  at: number,
  quantities: Float64Array,
  amounts: Float64Array,
): number {
  if (isLarge(constants, quantities)) return NaN;
  return lineAmount(constants.lines[at] as LineConstants, at, { quantities, amounts, isLarge: false });
}

/**
 * The amounts of all lines of a bill, exact, without their derivation.
 *
 * One run over the steps: quantity lines are piecewise linear, share lines a percentage of lines above,
 * all rounded half-up, as nearly all are. Any other line asks the general rule, to which a law holds
 * these short cuts. The loop is one function on purpose: taken apart it runs a sixth slower.
 *
 * @param constants   of the version in force
 * @param quantities  whole thousandths in the order of `QUANTITY_ORDER` (energy times the energy scale)
 * @param amounts     receives one whole number of 1/grid of money for each line
 * @returns           the sum of the lines that count, on the same grid
 * @throws            AmountTooLarge when an amount is beyond 2^53
 */
export function evaluate(constants: Constants, quantities: Float64Array, amounts: Float64Array): number {
  const { steps } = constants;
  let total = 0;
  for (let at = 0; at < steps.length; at += 1) {
    const step = steps[at] as Step;
    const { kind, table, basis } = step;
    let numerator: number;
    if (kind === TABLE) {
      const x = (quantities[step.quantity] as number) * step.scale;
      let piece = 0;
      while (x > (table[piece] as number)) piece += PIECE;
      numerator = x * (table[piece + 1] as number) + (table[piece + 2] as number);
    } else {
      let sum = 0;
      for (let index = 0; index < basis.length; index += 1) sum += amounts[basis[index] as number] as number;
      numerator = kind === SHARE ? sum * step.rate : Math.max(0, step.rate - sum * step.scale);
    }
    const { divisor, half } = step;
    const rounded =
      numerator < 0 ? 0 - Math.floor((half - numerator) / divisor) : Math.floor((numerator + half) / divisor);
    const amount = kind === OTHER ? otherAmount(constants, at, quantities, amounts) : rounded * step.unit;
    amounts[at] = amount;
    total += amount * step.counts;
  }
  return Number.isNaN(total) || !constants.isExact ? evaluateLarge(constants, quantities, amounts) : total;
}
