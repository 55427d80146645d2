import { html, nothing, type TemplateResult } from 'lit';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import { renderButton } from '../render/button.ts';
import type { Desk } from '../render/desk.ts';
import { renderFold } from '../render/fold.ts';

const NAME = 'unitbook-plant';
const PAGE = 'plant';
const FAILED = 'plant-not-fetched';

/** What the page needs of the book. */
type Book = Pick<Desk, 'household' | 'change' | 'isOpen' | 'setOpen'>;

interface Given {
  readonly today: string;
  readonly layouts: LayoutKeep | null;
}

/** Fetched when the page is opened for the first time: most visits are about the bill alone. */
async function defineElement(): Promise<void> {
  const { UnitbookPlant } = await import('./unitbook-plant.ts');
  // Another copy may have been first meanwhile: a name can be taken only once.
  if (customElements.get(NAME) === undefined) customElements.define(NAME, UnitbookPlant);
}

function wantElement(book: Book): void {
  if (customElements.get(NAME) !== undefined) return;
  defineElement().catch(() => {
    book.setOpen(FAILED, true);
  });
}

/** What stands in the place of the page until it is there. */
function renderWaiting(book: Book): TemplateResult {
  if (!book.isOpen(FAILED, false)) return html`<p class="hint">Getting this page …</p>`;
  return html`<p class="finding error">
    This page could not be fetched. Open it once while online, then try again.
    ${renderButton('Try again', () => {
      book.setOpen(FAILED, false);
      wantElement(book);
    })}
  </p>`;
}

function renderElement(book: Book, { today, layouts }: Given): TemplateResult {
  wantElement(book);
  return html`<unitbook-plant
    .household=${book.household}
    .today=${today}
    .layouts=${layouts}
    @unitbook-household-change=${(event: CustomEvent<Household>) => {
      // The book sends an event of its own.
      event.stopPropagation();
      book.change(event.detail);
    }}
    >${renderWaiting(book)}</unitbook-plant
  >`;
}

/**
 * The page about the plant, which opens when it is asked for.
 *
 * @param given  what the page knows besides: the day it is, and where layouts of tables are remembered
 */
export function renderPlantPage(book: Book, given: Given): TemplateResult {
  return html`
    <section class="page plant-page" aria-labelledby="plant">
      <h2 id="plant">Is the plant healthy?</h2>
      ${renderFold(
        {
          key: PAGE,
          className: 'help',
          summary: 'What it made, what it should make, and its upkeep',
          content: (isOpen) => (isOpen ? renderElement(book, given) : nothing),
        },
        book,
      )}
    </section>
  `;
}
