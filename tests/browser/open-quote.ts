import { expect, vi } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { drawn, expectAccessible, memoryStorage, mountBook } from './mount.ts';

type Quote = HTMLElementTagNameMap['unitbook-quote'];

/** A text without the spaces of its source. */
export const plain = (text: string | null | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** The page of the quote, opened from the book, and what tests do with it. */
export class OpenQuote {
  readonly element: Quote;
  readonly shelf: ShadowRoot;

  constructor(element: Quote, shelf: ShadowRoot) {
    this.element = element;
    this.shelf = shelf;
  }

  get root(): ShadowRoot {
    if (this.element.shadowRoot === null) throw new Error('The page of the quote was not drawn.');
    return this.element.shadowRoot;
  }

  field(id: string): HTMLInputElement {
    const field = this.root.getElementById(id);
    if (field === null) throw new Error(`Nothing has the id ${id}.`);
    return field as HTMLInputElement;
  }

  text(selector: string): string {
    return plain(this.root.querySelector(selector)?.textContent);
  }

  /** The lines of a table, cell by cell. */
  rows(selector: string): string[] {
    return [...this.root.querySelectorAll(`${selector} tbody tr`)].map((row) =>
      [...row.children].map((cell) => plain(cell.textContent)).join(' | '),
    );
  }

  texts(selector: string): string[] {
    return [...this.root.querySelectorAll(selector)].map((one) => plain(one.textContent));
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

  /** Type a text and leave the field. */
  async type(id: string, text: string): Promise<void> {
    const field = this.field(id);
    field.focus();
    field.value = text;
    field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    await drawn(this.element);
    field.blur();
    await drawn(this.element);
  }

  async choose(id: string, value: string): Promise<void> {
    this.field(id).value = value;
    this.field(id).dispatchEvent(new Event('change'));
    await drawn(this.element);
  }

  async press(label: string): Promise<void> {
    const button = [...this.root.querySelectorAll('button')].find((one) => plain(one.textContent) === label);
    if (button === undefined) throw new Error(`No button says "${label}".`);
    button.click();
    await drawn(this.element);
  }

  /** Choose a file. */
  give(id: string, text: string, name: string): void {
    const files = new DataTransfer();
    files.items.add(new File([text], name));
    this.field(id).files = files.files;
    this.field(id).dispatchEvent(new Event('change'));
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
  const find = (): Quote | null => shelf.querySelector('unitbook-quote');
  await expect
    .poll(() => find()?.shadowRoot?.querySelector('#quote-answer, #quote-wanted'), { timeout: 10_000 })
    .toBeTruthy();
  const element = find();
  if (element === null) throw new Error('The page of the quote did not open.');
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

/** The text of the file that a press of a button saves. */
export async function saved(act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
  await act();
  const [link] = click.mock.contexts as HTMLAnchorElement[];
  click.mockRestore();
  if (link === undefined) throw new Error('No file was saved.');
  const response = await fetch(link.href);
  return { name: link.download, text: await response.text() };
}
