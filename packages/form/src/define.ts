import { UnitbookBook } from './unitbook-book.ts';
import { UnitbookMonth } from './unitbook-month.ts';

declare global {
  interface HTMLElementTagNameMap {
    'unitbook-book': UnitbookBook;
    'unitbook-month': UnitbookMonth;
  }
}

/** Another copy on the page may have been first: a name can be taken only once. */
function defineOnce(name: string, element: CustomElementConstructor): void {
  if (customElements.get(name) === undefined) customElements.define(name, element);
}

defineOnce('unitbook-month', UnitbookMonth);
defineOnce('unitbook-book', UnitbookBook);
