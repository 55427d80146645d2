import type { Quote, QuoteYear } from './quote.ts';

/** What is known of the bills of the first year beside the quote itself. */
export interface QuoteFacts {
  /**
   * What is charged without a unit taken, in the first year, in whole 1/grid of the quote; null: not known. Twelve
   * times the smallest bill is then taken for it.
   */
  readonly fixedCharges: number | null;
  /**
   * What is paid for a unit of surplus, as decimal text, before it rises. Left out or null: not known, or nothing.
   */
  readonly surplusRate?: string | null;
}

/**
 * The first year of a quote.
 *
 * @throws RangeError when it has none: a caller's bug, a life has at least one year
 * @example
 * firstYear({ years: [{ year: 1 }] }).year //=> 1
 */
export function firstYear<Year = QuoteYear>({ years }: { readonly years: readonly Year[] }): Year {
  const [year] = years;
  if (year === undefined) throw new RangeError('a quote has at least one year');
  return year;
}

/** How much bills of the first year can be lowered at most, in whole 1/grid. */
export interface SavingLimits {
  /** The bills without the plant. */
  readonly bills: number;
  /** What stays on them whatever is made. */
  readonly fixed: number;
  /** bills − fixed */
  readonly most: number;
  /** Where `fixed` is from, in words. */
  readonly basis: string;
}

/** What a saving of the first year is held against: its bills, and what of them no unit can save. */
export function savingLimits(quote: Quote, { fixedCharges }: QuoteFacts): SavingLimits {
  const { before: bills } = firstYear(quote);
  const smallest = Math.max(0, quote.measures.smallestBill) * 12;
  const fixed = fixedCharges ?? smallest;
  const basis = fixedCharges === null ? 'twelve times the smallest bill' : 'the fixed charges';
  return { bills, fixed, most: bills - fixed, basis };
}
