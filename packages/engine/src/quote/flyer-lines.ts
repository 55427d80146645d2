import { minorUnitDigits } from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';
import {
  compared,
  dividedBy,
  exactDecimal,
  exactParts,
  exactPlaces,
  lessExact,
  printedPlaces,
  roundedText,
} from './exact-decimals.ts';
import { firstYear } from './first-year.ts';
import { FLYER_CLAIMS, type FlyerClaim, type FlyerDocument } from './flyer-document.ts';
import { paybackOfOutlay } from './payback-time.ts';
import type { Quote } from './quote.ts';

/** A claim of a flyer beside the same of the quote. */
export interface FlyerLine {
  readonly claim: FlyerClaim;
  readonly unit: 'kWp' | 'money' | 'years' | 'kWh' | 'money-a-unit' | 'percent';
  /** As it was typed. */
  readonly claimed: string;
  /** The same by the quote, as decimal text; null where there is none, as a payback beyond the life. */
  readonly ours: string | null;
  /** claimed − ours, both as they are printed. */
  readonly difference: string | null;
}

/** How a value of the quote is printed. */
interface Kind {
  readonly unit: FlyerLine['unit'];
  /** A quotient: printed to as many places as the claim, and not to its end. */
  readonly isQuotient?: true;
}

const KINDS: Readonly<Record<FlyerClaim, Kind>> = {
  claimedSize: { unit: 'kWp' },
  claimedSaving: { unit: 'money' },
  claimedPayback: { unit: 'years', isQuotient: true },
  claimedGeneration: { unit: 'kWh' },
  claimedRate: { unit: 'money-a-unit', isQuotient: true },
  price: { unit: 'money' },
  subsidy: { unit: 'money' },
  netPrice: { unit: 'money' },
  monthlyBillAfter: { unit: 'money', isQuotient: true },
  escalation: { unit: 'percent' },
};

/** The most that any rate rises by. */
function mostRise({ input }: Quote): ExactFactor {
  return Object.values(input.document.escalation.charges)
    .map(exactDecimal)
    .reduce((most, rise) => (compared(rise, most) > 0 ? rise : most), exactDecimal('0'));
}

/** What the quote says to a claim, exact. */
function oursOf(claim: FlyerClaim, quote: Quote): ExactFactor | null {
  const { grid, outlay } = quote;
  const { saving, generation, after } = firstYear(quote);
  switch (claim) {
    case 'claimedSize':
      return exactParts(quote.input.watts, 1000);
    case 'claimedSaving':
      return exactParts(saving, grid);
    case 'claimedPayback':
      return paybackOfOutlay(quote, outlay.price - outlay.subsidy);
    case 'claimedGeneration':
      return exactParts(generation, 1000);
    case 'claimedRate':
      return dividedBy(exactParts(saving, grid), exactParts(generation, 1000));
    case 'price':
      return exactParts(outlay.price, grid);
    case 'subsidy':
      return exactParts(outlay.subsidy, grid);
    case 'netPrice':
      return exactParts(outlay.price - outlay.subsidy, grid);
    case 'monthlyBillAfter':
      return exactParts(after, grid * 12);
    case 'escalation':
      return mostRise(quote);
  }
}

/** Decimals that a value has at least. */
function leastPlaces(unit: Kind['unit'], currency: string): number {
  if (unit === 'years') return 1;
  return unit === 'money' || unit === 'money-a-unit' ? (minorUnitDigits(currency) ?? 2) : 0;
}

function lineOf(claim: FlyerClaim, claimed: string, quote: Quote): FlyerLine {
  const { unit, isQuotient } = KINDS[claim];
  const value = oursOf(claim, quote);
  if (value === null) return { claim, unit, claimed, ours: null, difference: null };
  const least = Math.max(leastPlaces(unit, quote.currency), printedPlaces(claimed));
  const places = isQuotient === true ? least : Math.max(least, exactPlaces(value) ?? least);
  const ours = roundedText(value, places);
  // Of what is printed, so that a reader who takes one from the other comes to the same.
  const difference = roundedText(lessExact(exactDecimal(claimed), exactDecimal(ours)), places);
  return { claim, unit, claimed, ours, difference };
}

/**
 * The claims of a flyer, each beside the same of the quote: size, saving, units and the mean value of a unit of the first
 * year, the simple payback of the net price, prices, the mean bill of a month of the first year with the plant, and
 * the most that a rate rises by.
 *
 * Amounts, units and percentages are exact. Payback, value of a unit and mean bill are quotients: rounded half-up to
 * as many decimals as the claim has, the payback to at least one and money to at least those of its currency.
 *
 * @param flyer  that was checked
 * @param quote  worked out
 * @returns      a line for each number the flyer claims, in the order of `FLYER_CLAIMS`
 */
export function flyerLines(flyer: FlyerDocument, quote: Quote): readonly FlyerLine[] {
  return FLYER_CLAIMS.flatMap((claim) => {
    const claimed = flyer[claim];
    return claimed === undefined ? [] : [lineOf(claim, claimed, quote)];
  });
}
