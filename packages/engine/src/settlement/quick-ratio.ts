import {
  commonDivisor,
  decimalPlaces,
  decimalToWhole,
  LARGEST_WHOLE,
  roundQuotient,
  type Rounding,
  type RoundingMode,
} from '../quantity/index.ts';

/** Half of what a double holds exactly: room for the doubling of a remainder. */
const ROOM = LARGEST_WHOLE / 2;

/** A multiplication by a quotient with its rounding, ready for ordinary numbers. */
export interface Ratio {
  readonly multiply: number;
  readonly divide: number;
  /** null: the result has to be whole. */
  readonly mode: RoundingMode | null;
  /** A step in thousandths is step / per. */
  readonly step: number;
  readonly per: number;
}

/**
 * Times top / bottom, rounded as a definition rounds, in thousandths.
 *
 * @param rounding  left out: the result has to be whole thousandths
 * @example
 * timesRatio(1500, ratioOf(5, 2, undefined)) //=> 3750
 */
export function ratioOf(top: number, bottom: number, rounding: Rounding | undefined): Ratio {
  const places = rounding === undefined ? 0 : decimalPlaces(rounding.step);
  const whole = rounding === undefined ? 1 : decimalToWhole(rounding.step, places);
  const step = rounding === undefined ? 1 : whole * 1000;
  const [multiply, divide] = [top * 10 ** places, bottom * step];
  const divisor = commonDivisor(multiply, divide);
  return {
    multiply: multiply / divisor,
    divide: divide / divisor,
    mode: rounding?.mode ?? null,
    step,
    per: 10 ** places,
  };
}

/**
 * A value times a ratio.
 *
 * @returns whole thousandths; NaN where a double has no room for it or the result is not whole
 */
export function timesRatio(value: number, { multiply, divide, mode, step, per }: Ratio): number {
  const top = value * multiply;
  if (!(Math.abs(top) <= ROOM && divide <= ROOM && Number.isInteger(top))) return NaN;
  if (mode !== null) return (roundQuotient(top, divide, mode) * step) / per;
  return divide === 1 || top % divide === 0 ? top / divide : NaN;
}
