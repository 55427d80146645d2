import type { ExactFactor } from '../bill/index.ts';
import { yearFactors, type YearFactors } from './factors.ts';
import type { QuoteInput } from './quote-input.ts';

const ONE: ExactFactor = { numerator: 1n, denominator: 1n };

/**
 * Factors of a rate that rises by the same every year after the one whose rates the tariff has.
 *
 * @param step  what a year is of the one before
 * @example
 * rateFactors({ years: 3, ratesOfYear: 1 }, percentFactor('10')).exact[2].numerator //=> 110n
 */
export function rateFactors(
  { years, ratesOfYear = 0 }: Pick<QuoteInput, 'years' | 'ratesOfYear'>,
  step: ExactFactor,
): YearFactors {
  const still = Array.from({ length: ratesOfYear }, () => ONE);
  return yearFactors(years, [...still, step]);
}
