import { exactText, type Finding } from '../quantity/index.ts';
import { documentWarnings } from './document-warnings.ts';
import { compared, exactDecimal, exactParts, isZero, toldApart } from './exact-decimals.ts';
import { quoteFinding } from './findings.ts';
import { firstYear, savingLimits, type QuoteFacts } from './first-year.ts';
import { amountText } from './money-text.ts';
import { onGrid } from './outlay.ts';
import { paybackOfOutlay, paybackWords } from './payback-time.ts';
import type { Quote } from './quote.ts';
import { surplusWarnings } from './surplus-warnings.ts';
import { MOST_OF_USE } from './warning-limits.ts';

/** Surplus counts: what a buyer is told is the whole saving, and bills cannot be lowered by as much. */
function savingWarnings(quote: Quote, facts: QuoteFacts): readonly Finding[] {
  const { saving, surplus } = firstYear(quote);
  const { bills, fixed, most, basis } = savingLimits(quote, facts);
  const text = (amount: number): string => amountText(quote, amount);
  const values = { saving: text(saving), surplus: text(surplus), bills: text(bills) };
  if (saving > bills) return [quoteFinding('quote/saving-above-bills', { path: [] }, values)];
  if (saving <= most) return [];
  const more = { ...values, most: text(most), fixed: text(fixed), basis };
  return [quoteFinding('quote/saving-above-charges-for-units', { path: [] }, more)];
}

function yieldWarnings(quote: Quote): readonly Finding[] {
  const { watts, document } = quote.input;
  const { usualYield: usual } = document.generation;
  if (usual === undefined) return [];
  // Wh over W are kWh per kWp.
  const made = exactParts(firstYear(quote).generation, watts);
  if (compared(made, exactDecimal(usual)) <= 0) return [];
  const values = { yield: toldApart(made, exactDecimal(usual), 1), usual };
  return [quoteFinding('quote/yield-above-usual', { path: ['generation'] }, values)];
}

function sizeWarnings(quote: Quote): readonly Finding[] {
  const { use, generation } = firstYear(quote);
  if (generation * 100 <= use * MOST_OF_USE) return [];
  const values = { made: exactText(generation, 1000), used: exactText(use, 1000), most: String(MOST_OF_USE) };
  return [quoteFinding('quote/generation-above-use', { path: ['generation'] }, values)];
}

function whenPaid(months: string): string {
  if (isZero(months)) return 'at the start';
  return `${months} ${months === '1' ? 'month' : 'months'} after the start`;
}

function subsidyWarnings(quote: Quote): readonly Finding[] {
  const { outlay, input } = quote;
  const { subsidy } = input.document;
  if (subsidy === undefined || outlay.subsidy === 0) return [];
  const values = {
    subsidy: amountText(quote, outlay.subsidy),
    to: subsidy.to,
    when: whenPaid(subsidy.paidAfter),
    with: paybackWords(paybackOfOutlay(quote, outlay.price - outlay.subsidy)),
    without: paybackWords(paybackOfOutlay(quote, outlay.price)),
  };
  return [quoteFinding('quote/payback-with-subsidy', { path: ['subsidy'] }, values)];
}

function batteryWarnings(quote: Quote): readonly Finding[] {
  const { battery } = quote.input.document;
  if (battery === undefined) return [];
  const price = amountText(quote, quote.outlay.price);
  const values = { battery: amountText(quote, onGrid(battery.cost, quote.grid)), price };
  return [quoteFinding('quote/battery-in-price', { path: ['battery', 'cost'] }, values)];
}

/**
 * What a quote promises that a buyer may hear as more than it is, for its seller to read before it is printed:
 * savings above what bills allow, rises, surplus at the price of units bought, life, wear, yield, size, subsidy, battery and words.
 *
 * Every comparison is exact; a value on its limit is not told. Paybacks are told to a tenth of a year, yields to a
 * tenth of a kWh or as many places as tell them from the limit, both rounded half-up.
 *
 * @param quote  worked out, with its subsidy
 * @param facts  what stays on the bills whatever is made
 * @returns      questions and notes with a path into the quote document; none of them stops the quote
 * @source       Residential Solar Energy Disclosure Act, Utah Code 13-52-202, State of Utah, 2018: rises of rates and
 *               their basis; the other limits are named where they stand
 */
export function quoteWarnings(quote: Quote, facts: QuoteFacts = { fixedCharges: null }): readonly Finding[] {
  const after = amountText(quote, firstYear(quote).after);
  return [
    ...savingWarnings(quote, facts),
    ...documentWarnings(quote.input.document, after),
    ...surplusWarnings(quote, facts),
    ...yieldWarnings(quote),
    ...sizeWarnings(quote),
    ...subsidyWarnings(quote),
    ...batteryWarnings(quote),
  ];
}
