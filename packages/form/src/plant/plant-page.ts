import { html, nothing, type TemplateResult } from 'lit';
import type { LayoutKeep } from '../files/keep-layouts.ts';
import type { Household } from '../household/household.ts';
import { renderWaiting, type LazyElement, type LazyPage } from '../lazy-page.ts';
import type { Desk } from '../render/desk.ts';
import { renderFold } from '../render/fold.ts';

const ELEMENT: LazyElement = {
  name: 'unitbook-plant',
  load: async () => (await import('./unitbook-plant.ts')).UnitbookPlant,
};
const PAGE = 'plant';
const FAILED = 'plant-not-fetched';

/** What the page needs of the book. */
type Book = Pick<Desk, 'household' | 'change' | 'isOpen' | 'setOpen'>;

interface Given {
  readonly today: string;
  readonly layouts: LayoutKeep | null;
}

/** Whether it could not be fetched is kept with the folds of the book. */
const pageOf = (book: Book): LazyPage => ({
  isFailed: book.isOpen(FAILED, false),
  fail: (isFailed) => {
    book.setOpen(FAILED, isFailed);
  },
});

function renderElement(book: Book, { today, layouts }: Given): TemplateResult {
  return html`<unitbook-plant
    .household=${book.household}
    .today=${today}
    .layouts=${layouts}
    @unitbook-household-change=${(event: CustomEvent<Household>) => {
      // The book sends an event of its own.
      event.stopPropagation();
      book.change(event.detail);
    }}
    >${renderWaiting(ELEMENT, pageOf(book))}</unitbook-plant
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
