import { expect } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { drawn, expectAccessible, memoryStorage, mountBook } from './mount.ts';
import { chooseFile, fetched, Opened, plain } from './opened.ts';

type Quote = HTMLElementTagNameMap['unitbook-quote'];

/** The page of the quote, opened from the book, and what tests do with it. */
export class OpenQuote extends Opened<Quote> {
  readonly shelf: ShadowRoot;

  constructor(element: Quote, shelf: ShadowRoot) {
    super(element);
    this.shelf = shelf;
  }

  /** The lines of a table, cell by cell. */
  rows(selector: string): string[] {
    return [...this.root.querySelectorAll(`${selector} tbody tr`)].map((row) =>
      [...row.children].map((cell) => plain(cell.textContent)).join(' | '),
    );
  }

  /** Open every fold of the inputs. */
  async unfold(): Promise<void> {
    for (const summary of this.root.querySelectorAll<HTMLElement>(
      '.inputs-page details:not([open]) > summary',
    ))
      summary.click();
    await drawn(this.element);
    await drawn(this.element);
  }

  /** Choose a file. */
  give(id: string, text: string, name: string): void {
    chooseFile(this.field(id), text, name);
  }

  async openFile(text: string, name = 'quote.json'): Promise<void> {
    this.give('quote-open', text, name);
    await expect.poll(() => this.text('#quote-before') + this.text('#quote-refused')).toContain(name);
  }

  /** What is said beneath a field. */
  findings(id: string): string {
    return this.text(`#${id}-findings`);
  }
}

/** What a test gives the page. */
export interface Given {
  /** What is kept in the browser. */
  readonly start?: Readonly<Record<string, string>>;
  /** Left out: the tariff of the demo alone. */
  readonly tariffs?: HTMLElementTagNameMap['unitbook-book']['tariffs'];
  /** The text of the invented quote. */
  readonly demo?: string;
}

/** Open the page of the quote from a book, and look that it is accessible as it is. */
export async function openQuote({ start = {}, tariffs, demo = quoteText }: Given = {}) {
  const { keep, texts } = memoryStorage(start);
  const { book, shelf } = await mountBook(keep);
  if (tariffs !== undefined) book.tariffs = tariffs;
  book.demoQuote = () => Promise.resolve(demo);
  shelf.getElementById('open-quote')?.click();
  const element = await fetched(shelf, 'unitbook-quote', '#quote-answer, #quote-wanted');
  await expect.poll(() => element.shadowRoot?.querySelector('.hint.opening')).toBe(null);
  await drawn(element);
  await expectAccessible();
  return { quote: new OpenQuote(element, shelf), texts };
}

/** The demo with its answer. */
export async function openDemo(given: Given = {}) {
  const opened = await openQuote(given);
  await expect.poll(() => opened.quote.text('#quote-answer-payback'), { timeout: 10_000 }).toContain('years');
  return opened;
}
