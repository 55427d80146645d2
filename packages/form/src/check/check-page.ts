import { html, type TemplateResult } from 'lit';
import type { Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import { renderWaiting, type LazyElement, type LazyPage } from '../lazy-page.ts';
import { renderButton } from '../render/button.ts';
import type { TariffChoice } from '../tariff-choice.ts';

const ELEMENT: LazyElement = {
  name: 'unitbook-check',
  load: async () => (await import('./unitbook-check.ts')).UnitbookCheck,
};

/** What the page of printed bills needs of the book. */
export interface CheckBook {
  readonly tariffs: readonly TariffChoice[];
  readonly keep: Keep | null;
  readonly today: string;
  /** Fetches invented bills; null: there are none. */
  readonly demoCheck: (() => Promise<string>) | null;
  /** Fetches the rules for disputes of the invented place; null: there are none. */
  readonly demoDispute: (() => Promise<string>) | null;
}

/** The page as it lies open. */
export interface CheckPage extends LazyPage {
  /** Whether the book that lies open is that of the invented household. */
  readonly isDemoBook: boolean;
  readonly close: () => void;
}

/** The page of printed bills, in the place of the book. */
export function renderCheckPage(book: CheckBook, household: Household, page: CheckPage): TemplateResult {
  return html`<div class="shelf">${renderButton('Back to the book', page.close, { id: 'close-check' })}</div>
    <unitbook-check
      .household=${household}
      .isDemoBook=${page.isDemoBook}
      .tariffs=${book.tariffs}
      .keep=${book.keep}
      .today=${book.today}
      .demo=${book.demoCheck}
      .demoDispute=${book.demoDispute}
      >${renderWaiting(ELEMENT, page)}</unitbook-check
    >`;
}
