import { wholePeriods } from './check-arguments.ts';

/** How a plant makes less every year. */
export interface Degradation {
  /** Each year less than the year before by a part of that (compound), or of the first (linear). */
  readonly kind: 'compound' | 'linear';
  /** A part of one a year, from 0 to 1: 0.005 is 0.5 %. */
  readonly rate: number;
}

/**
 * What is left of the power of a new plant after so many years. A linear one ends at 0.
 *
 * @param years  0 or more
 * @returns      a part of one
 * @throws RangeError for a rate outside of 0 to 1 and for years below 0: a caller's bug
 * @example
 * powerLeft({ kind: 'linear', rate: 0.005 }, 25) //=> 0.875
 * powerLeft({ kind: 'compound', rate: 0.5 }, 2) //=> 0.25
 */
export function powerLeft({ kind, rate }: Degradation, years: number): number {
  if (!(rate >= 0 && rate <= 1)) throw new RangeError(`a plant cannot lose ${rate} of its power a year`);
  if (!(years >= 0)) throw new RangeError(`${years} years`);
  return kind === 'compound' ? (1 - rate) ** years : Math.max(0, 1 - rate * years);
}

/**
 * What a plant makes in each of so many years, in parts of its first: year k has the power left after k − 1.
 *
 * @param years  whole, 0 or more
 * @throws RangeError for a rate outside of 0 to 1 and for a count that is no such number: a caller's bug
 * @example
 * yearlyEnergy({ kind: 'linear', rate: 0.25 }, 3) //=> [1,0.75,0.5]
 */
export function yearlyEnergy(degradation: Degradation, years: number): readonly number[] {
  return Array.from({ length: wholePeriods(years, 0) }, (_, year) => powerLeft(degradation, year));
}

/**
 * What a plant makes in so many years together, in first years.
 *
 * @param years  whole, 0 or more
 * @throws RangeError for a rate outside of 0 to 1 and for a count that is no such number: a caller's bug
 * @example
 * lifetimeEnergy({ kind: 'linear', rate: 0.25 }, 3) //=> 2.25
 */
export function lifetimeEnergy(degradation: Degradation, years: number): number {
  return yearlyEnergy(degradation, years).reduce((sum, part) => sum + part, 0);
}
