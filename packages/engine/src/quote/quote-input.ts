import type { DayNumber } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import type { YearFactors } from './factors.ts';

/** Units of twelve calendar months, January first, in whole thousandths. */
export type MonthlyUnits = readonly number[];

/** A percentage as a ratio of whole numbers. */
export interface Share {
  readonly numerator: number;
  readonly denominator: number;
}

/** A quote that was read and checked, ready to be billed. */
export interface QuoteInput {
  readonly document: QuoteDocument;
  readonly start: DayNumber;
  readonly years: number;
  readonly use: MonthlyUnits;
  /** Calendar months, 1 to 12, that were filled by the rule of the document. */
  readonly filled: readonly number[];
  readonly generation: MonthlyUnits;
  /** Percent of the generation used at home; null: not known. */
  readonly share: Share | null;
  readonly useFactors: YearFactors;
  readonly generationFactors: YearFactors;
  /** Watts of all modules. */
  readonly watts: number;
  /** The year of the life, from 0 on, whose rates the tariff has: they rise after it. Left out: the first. */
  readonly ratesOfYear?: number;
  /** Units of a month are whole multiples of this many thousandths. */
  readonly unitStep: 1 | 1000;
}
