import type { CaseResult, DrawSummary, Quote } from '@unitbook/engine';
import type { KnownCharge } from '../document/charges.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import type { QuoteWords } from '../words/quote-words.ts';

/** What the printed quote is made of. */
export interface PaperView {
  readonly quote: Quote;
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

/** Years until the price has come back. */
export function yearsText(years: number | null, { words: { sentences }, writing }: PaperView): string {
  if (years === null || years === Infinity) return sentences.never;
  return sentences.years(writing.years(years));
}
