import { minorUnitDigits } from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';
import { exactParts, exactPlaces, roundedText } from './exact-decimals.ts';
import type { Quote } from './quote.ts';

/**
 * An amount as decimal text with at least the decimals of its currency: exact where it ends within twelve places,
 * else rounded half-up to coins.
 *
 * @param currency  ISO 4217 code; two decimals where it is not known
 * @example
 * moneyText({ numerator: 5n, denominator: 2n }, 'INR') //=> "2.50"
 * moneyText({ numerator: 5n, denominator: 3n }, 'INR') //=> "1.67"
 */
export function moneyText(value: ExactFactor, currency: string): string {
  const least = minorUnitDigits(currency) ?? 2;
  return roundedText(value, Math.max(least, exactPlaces(value) ?? least));
}

/**
 * An amount of a quote, in whole 1/grid, as decimal text.
 *
 * @example
 * amountText({ grid: 1000, currency: 'INR' }, 2505) //=> "2.505"
 */
export function amountText({ grid, currency }: Pick<Quote, 'grid' | 'currency'>, amount: number): string {
  return moneyText(exactParts(amount, grid), currency);
}
