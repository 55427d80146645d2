import { finite } from './check-arguments.ts';
import { normalBelow, normalQuantile } from './normal-distribution.ts';

/** The chances in percent that yields are quoted at beside the middle, "P50". */
export const EXCEEDANCE_CHANCES = [75, 90, 95, 99] as const;

/**
 * How many sigma below the middle a yield lies that is exceeded with a chance: 0 for P50, 1.28 for P90.
 *
 * @param percent  the chance that more is made, between 0 and 100
 * @throws RangeError for a chance outside of that: a caller's bug
 * @example
 * exceedanceFactor(90).toFixed(4) //=> "1.2816"
 */
export function exceedanceFactor(percent: number): number {
  return normalQuantile(percent / 100);
}

/** A yield as a normal distribution. */
export interface UncertainYield {
  /** What is exceeded in half of the years; any unit. */
  readonly middle: number;
  /** One sigma as a part of the middle: 0.087 is 8.7 %. */
  readonly sigma: number;
}

/**
 * The yield that is exceeded with a chance: middle × (1 − factor × sigma).
 *
 * @param percent  the chance that more is made, between 0 and 100: 90 for "P90"
 * @returns        in the unit of the middle, not rounded
 * @throws RangeError for a chance outside of that: a caller's bug
 * @example
 * exceededYield({ middle: 1000, sigma: 0.1 }, 90).toFixed(1) //=> "871.8"
 */
export function exceededYield({ middle, sigma }: UncertainYield, percent: number): number {
  return middle * (1 - exceedanceFactor(percent) * sigma);
}

/**
 * The chance that a year falls short of the middle by a part of it or more, though nothing is wrong.
 *
 * @param shortfall  a part of the middle: 0.1 is 10 %
 * @param sigma      a part of the middle, above 0
 * @returns          from 0 to 1
 * @throws RangeError where sigma is not above 0: a caller's bug
 * @example
 * chanceOfShortfall(0, 0.05) //=> 0.5
 */
export function chanceOfShortfall(shortfall: number, sigma: number): number {
  if (!(sigma > 0)) throw new RangeError(`sigma must be above 0, found ${sigma}`);
  return normalBelow(-finite(shortfall, 'a shortfall') / sigma);
}

/**
 * One sigma of what several independent doubts make together: the root of the sum of their squares. Doubts
 * that depend on each other, or fade over the years, come to something else.
 *
 * @param sigmas  in any one unit
 * @example
 * combinedSigma([3, 4]) //=> 5
 */
export function combinedSigma(sigmas: readonly number[]): number {
  return Math.sqrt(sigmas.reduce((sum, sigma) => sum + sigma * sigma, 0));
}
