import { html, type TemplateResult } from 'lit';
import type { Household } from '../household/household.ts';
import type { Keep } from '../keep.ts';
import { renderButton } from '../render/button.ts';
import type { TariffChoice } from '../tariff-choice.ts';

const NAME = 'unitbook-check';

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
export interface CheckPage {
  readonly isFailed: boolean;
  readonly fail: (isFailed: boolean) => void;
  readonly close: () => void;
}

/** Fetched when the page is opened for the first time. */
async function defineElement(): Promise<void> {
  const { UnitbookCheck } = await import('./unitbook-check.ts');
  // Another copy may have been first meanwhile: a name can be taken only once.
  if (customElements.get(NAME) === undefined) customElements.define(NAME, UnitbookCheck);
}

function wantElement(page: CheckPage): void {
  if (customElements.get(NAME) !== undefined) return;
  defineElement().catch(() => {
    page.fail(true);
  });
}

/** What stands in the place of the page until it is there. */
function renderWaiting(page: CheckPage): TemplateResult {
  if (!page.isFailed) return html`<p class="notice" role="status">Getting this page …</p>`;
  return html`<p class="notice" role="alert">
    This page could not be fetched. Open it once while online, then try again.
    ${renderButton('Try again', () => {
      page.fail(false);
      wantElement(page);
    })}
  </p>`;
}

/** The page of printed bills, in the place of the book. */
export function renderCheckPage(book: CheckBook, household: Household, page: CheckPage): TemplateResult {
  wantElement(page);
  return html`<div class="shelf">${renderButton('Back to the book', page.close, { id: 'close-check' })}</div>
    <unitbook-check
      .household=${household}
      .tariffs=${book.tariffs}
      .keep=${book.keep}
      .today=${book.today}
      .demo=${book.demoCheck}
      .demoDispute=${book.demoDispute}
      >${renderWaiting(page)}</unitbook-check
    >`;
}
