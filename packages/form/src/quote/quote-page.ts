import { html, type TemplateResult } from 'lit';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import { renderWaiting, type LazyElement, type LazyPage } from '../lazy-page.ts';
import { renderButton } from '../render/button.ts';
import type { TariffChoice } from '../tariff-choice.ts';

const ELEMENT: LazyElement = {
  name: 'unitbook-quote',
  load: async () => (await import('./unitbook-quote.ts')).UnitbookQuote,
};

/** What the page of the quote needs of the book. */
export interface QuoteBook {
  readonly tariffs: readonly TariffChoice[];
  readonly keep: Keep | null;
  /** Where layouts of tables are remembered; null remembers none. */
  readonly layouts: LayoutKeep | null;
  readonly today: string;
  /** Fetches the invented quote; null: there is none. */
  readonly demoQuote: (() => Promise<string>) | null;
}

/** The page as it lies open. */
export interface QuotePage extends LazyPage {
  readonly close: () => void;
}

/** The page of the quote, in the place of the book. */
export function renderQuotePage(book: QuoteBook, household: Household, page: QuotePage): TemplateResult {
  return html`<div class="shelf">${renderButton('Back to the book', page.close, { id: 'close-quote' })}</div>
    <unitbook-quote
      .household=${household}
      .tariffs=${book.tariffs}
      .keep=${book.keep}
      .layouts=${book.layouts}
      .today=${book.today}
      .demo=${book.demoQuote}
      >${renderWaiting(ELEMENT, page)}</unitbook-quote
    >`;
}
