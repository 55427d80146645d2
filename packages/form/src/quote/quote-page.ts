import { html, type TemplateResult } from 'lit';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import { renderButton } from '../render/button.ts';
import type { TariffChoice } from '../tariff-choice.ts';

const NAME = 'unitbook-quote';

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
export interface QuotePage {
  readonly isFailed: boolean;
  readonly fail: (isFailed: boolean) => void;
  readonly close: () => void;
}

/** Fetched when the page is opened for the first time: most visits are about the bill alone. */
async function defineElement(): Promise<void> {
  const { UnitbookQuote } = await import('./unitbook-quote.ts');
  // Another copy may have been first meanwhile: a name can be taken only once.
  if (customElements.get(NAME) === undefined) customElements.define(NAME, UnitbookQuote);
}

function wantElement(page: QuotePage): void {
  if (customElements.get(NAME) !== undefined) return;
  defineElement().catch(() => {
    page.fail(true);
  });
}

/** What stands in the place of the page until it is there. */
function renderWaiting(page: QuotePage): TemplateResult {
  if (!page.isFailed) return html`<p class="notice" role="status">Getting this page …</p>`;
  return html`<p class="notice" role="alert">
    This page could not be fetched. Open it once while online, then try again.
    ${renderButton('Try again', () => {
      page.fail(false);
      wantElement(page);
    })}
  </p>`;
}

/** The page of the quote, in the place of the book. */
export function renderQuotePage(book: QuoteBook, household: Household, page: QuotePage): TemplateResult {
  wantElement(page);
  return html`<div class="shelf">${renderButton('Back to the book', page.close, { id: 'close-quote' })}</div>
    <unitbook-quote
      .household=${household}
      .tariffs=${book.tariffs}
      .keep=${book.keep}
      .layouts=${book.layouts}
      .today=${book.today}
      .demo=${book.demoQuote}
      >${renderWaiting(page)}</unitbook-quote
    >`;
}
