import type { CaseResult, DrawSummary, KeptUnits, Payback, Quote, QuoteGround } from '@unitbook/engine';
import type { KnownCharge } from '../document/charges.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import type { Counted } from '../words/counted.ts';
import { paybackText } from '../words/payback-text.ts';
import type { QuoteWords } from '../words/quote-words.ts';

/** What the printed quote is made of. */
export interface PaperView {
  readonly quote: Quote;
  /** What only bills kept in full tell of the first year; null: it is being worked out. */
  readonly kept: KeptUnits | null;
  /** The orders that the tariff is from, and how surplus is settled. */
  readonly ground: QuoteGround;
  readonly words: QuoteWords;
  readonly writing: QuoteWriting;
  readonly draws: DrawSummary | null;
  readonly cases: readonly CaseResult[];
  readonly charges: readonly KnownCharge[];
  /** The tariff in words. */
  readonly tariff: string;
  /** Whether the size is one that is tried, and not the one offered. */
  readonly isTrial: boolean;
}

/** A whole number of the document, as it is written and as it is counted. */
export const countedText = (whole: string, { writing }: PaperView): Counted => ({
  text: writing.number(whole),
  count: Number.parseInt(whole, 10),
});

/** Years until the price has come back. */
export function yearsText(years: number | null, { words: { sentences }, writing }: PaperView): string {
  if (years === null || years === Infinity) return sentences.never;
  // As many as are written, for the word that goes with them.
  return sentences.years({ text: writing.years(years), count: Math.round(years * 10) / 10 });
}

/** The same of a payback, and whether the price is owed again after it. */
export const paybackOn = (payback: Pick<Payback, 'first' | 'last'>, paper: PaperView): string =>
  paybackText(payback, paper.words.sentences, (years) => yearsText(years, paper));

/** From the middle of all draws to P90: years with their word once, where both are. */
export function rangeText({ payback: { p50, p90 } }: DrawSummary, paper: PaperView): string {
  const to = yearsText(p90, paper);
  if (p50 === Infinity) return to;
  return `${p90 === Infinity ? yearsText(p50, paper) : paper.writing.years(p50)} – ${to}`;
}
