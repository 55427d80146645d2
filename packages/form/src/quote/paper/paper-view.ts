import type { CaseResult, DrawSummary, Quote } from '@unitbook/engine';
import type { KnownCharge } from '../document/charges.ts';
import type { Billed } from '../render/tables.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import type { Counted } from '../words/counted.ts';
import type { QuoteWords } from '../words/quote-words.ts';

/** What the printed quote is made of. */
export interface PaperView {
  readonly quote: Quote;
  readonly billed: Billed;
  readonly words: QuoteWords;
  readonly writing: QuoteWriting;
  readonly draws: DrawSummary | null;
  readonly cases: readonly CaseResult[];
  readonly charges: readonly KnownCharge[];
  /** The tariff in words, with its sources. */
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

/** From the middle of all draws to P90: years with their word once, where both are. */
export function rangeText({ payback: { p50, p90 } }: DrawSummary, paper: PaperView): string {
  const to = yearsText(p90, paper);
  if (p50 === Infinity) return to;
  return `${p90 === Infinity ? yearsText(p50, paper) : paper.writing.years(p50)} – ${to}`;
}
