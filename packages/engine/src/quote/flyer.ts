import type { Finding } from '../quantity/index.ts';
import { compared, exactDecimal } from './exact-decimals.ts';
import { quoteFinding } from './findings.ts';
import { firstYear } from './first-year.ts';
import { billFlags } from './flyer-bill-flags.ts';
import type { FlyerDocument } from './flyer-document.ts';
import type { FlyerFacts, FlyerGround } from './flyer-ground.ts';
import { flyerLines, type FlyerLine } from './flyer-lines.ts';
import { priceFlags } from './flyer-price-flags.ts';
import { amountText } from './money-text.ts';
import { promisingWords, quotedWords, saysZeroBill } from './promising-words.ts';
import type { Quote } from './quote.ts';
import { MOST_RISE } from './warning-limits.ts';

/** A flyer beside a quote. */
export interface FlyerCheck {
  readonly lines: readonly FlyerLine[];
  /** What to ask about it. */
  readonly findings: readonly Finding[];
}

/** Words that promise too much; those of a zero bill are told once, with the fixed charges where those are told. */
function wordFlags({ flyer, quote }: FlyerGround, isToldBefore: boolean): readonly Finding[] {
  const { after } = firstYear(quote);
  const words = promisingWords(flyer.words ?? '').filter(
    (one) => !saysZeroBill(one) || (!isToldBefore && after > 0),
  );
  if (words.length === 0) return [];
  const values = { words: quotedWords(words), after: amountText(quote, after) };
  return [quoteFinding('quote/flyer-words', { path: ['words'] }, values)];
}

function riseFlags({ escalation: percent }: FlyerDocument): readonly Finding[] {
  if (percent === undefined || compared(exactDecimal(percent), exactDecimal(MOST_RISE)) <= 0) return [];
  return [quoteFinding('quote/flyer-rise', { path: ['escalation'] }, { percent, most: MOST_RISE })];
}

/**
 * Hold a rival's flyer against a quote of the same house: each claim beside ours, and what to ask about it.
 *
 * @param flyer  that was read and checked
 * @param quote  worked out, with its subsidy
 * @param facts  what the quote does not say of its tariff
 * @returns      lines in the order of `FLYER_CLAIMS`; findings with a path into the flyer: saving above the bills,
 *               units at the highest rate, fixed charges, surplus, upkeep, subsidy, words, rise
 * @source       Residential Solar Energy Disclosure Act, Utah Code 13-52-202, State of Utah, 2018: the most that
 *               rates are assumed to rise
 */
export function checkFlyer(flyer: FlyerDocument, quote: Quote, facts: FlyerFacts): FlyerCheck {
  const ground = { flyer, quote, facts };
  const bills = billFlags(ground);
  const isZeroBillTold = bills.some(({ code }) => code === 'quote/flyer-fixed-charges');
  return {
    lines: flyerLines(flyer, quote),
    findings: [...bills, ...priceFlags(ground), ...wordFlags(ground, isZeroBillTold), ...riseFlags(flyer)],
  };
}
