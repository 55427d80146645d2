import type { ExactFactor } from '../bill/index.ts';
import { compared, exactDecimal, exactParts, isZero } from './exact-decimals.ts';
import { timesFactor } from './factors.ts';
import { firstYear, type QuoteFacts } from './first-year.ts';
import type { FlyerDocument } from './flyer-document.ts';
import type { Quote } from './quote.ts';

/**
 * What is known of the tariff beside the quote. Where the rate of surplus is not known, no more is taken for it than
 * all surplus of the quote brings, shared by the units that are made beyond the use of the year.
 */
export interface FlyerFacts extends QuoteFacts {
  /** The highest rate of a unit in the first year, as decimal text; null: not known. */
  readonly topRate: string | null;
}

/** A flyer, and what it is held against. */
export interface FlyerGround {
  readonly flyer: FlyerDocument;
  readonly quote: Quote;
  readonly facts: FlyerFacts;
}

/** The units of a year that the flyer reckons with, in kWh: its own, else those of the quote. */
export function unitsReckoned({ flyer, quote }: FlyerGround): ExactFactor {
  const { claimedGeneration } = flyer;
  return claimedGeneration === undefined
    ? exactParts(firstYear(quote).generation, 1000)
    : exactDecimal(claimedGeneration);
}

/** Whether the saving of a flyer is all its units at one rate, to the last digit. */
export function isAllAt(ground: FlyerGround, rate: string): boolean {
  const { claimedSaving } = ground.flyer;
  if (claimedSaving === undefined || isZero(claimedSaving)) return false;
  const product = timesFactor(unitsReckoned(ground), exactDecimal(rate));
  return compared(product, exactDecimal(claimedSaving)) === 0;
}

/** The rate that a flyer counts every unit at: its own, or the highest where its saving is just that; null: none. */
export function commonRate(ground: FlyerGround): string | null {
  const { claimedRate } = ground.flyer;
  if (claimedRate !== undefined) return claimedRate;
  const { topRate } = ground.facts;
  return topRate !== null && isAllAt(ground, topRate) ? topRate : null;
}
