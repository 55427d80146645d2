import { expect } from 'vitest';
import billsText from '../../tariffs-examples/checks/two-bills.json?raw';
import disputeText from '../../tariffs-examples/disputes/tarumira.json?raw';
import { drawn, expectAccessible, memoryStorage, mountBook } from './mount.ts';
import { plain } from './open-quote.ts';

type Check = HTMLElementTagNameMap['unitbook-check'];

/** The page of printed bills, opened from the book, and what tests do with it. */
export class OpenCheck {
  readonly element: Check;
  readonly shelf: ShadowRoot;

  constructor(element: Check, shelf: ShadowRoot) {
    this.element = element;
    this.shelf = shelf;
  }

  get root(): ShadowRoot {
    if (this.element.shadowRoot === null) throw new Error('The page of printed bills was not drawn.');
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

  texts(selector: string): string[] {
    return [...this.root.querySelectorAll(selector)].map((one) => plain(one.textContent));
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

  async press(id: string): Promise<void> {
    this.field(id).click();
    await drawn(this.element);
  }

  async choose(id: string, value: string): Promise<void> {
    this.field(id).value = value;
    this.field(id).dispatchEvent(new Event('change'));
    await drawn(this.element);
  }

  /** Open the bill at a place of the list, from 0. */
  async openBill(at: number): Promise<void> {
    this.root.querySelectorAll<HTMLElement>('button.bill')[at]?.click();
    await drawn(this.element);
  }

  /** Wait until everything that was typed is checked and searched. */
  async settled(): Promise<void> {
    await expect.poll(() => this.text('#check-verdict'), { timeout: 10_000 }).not.toContain('Checking');
    await expect
      .poll(() => this.root.querySelector('.stale, #check-searching') === null, { timeout: 10_000 })
      .toBe(true);
    await drawn(this.element);
  }

  async openFile(text: string, name: string): Promise<void> {
    const files = new DataTransfer();
    files.items.add(new File([text], name));
    this.field('check-open').files = files.files;
    this.field('check-open').dispatchEvent(new Event('change'));
    await expect.poll(() => this.text('#check-before') + this.text('#check-refused')).toContain(name);
  }
}

/** What a test gives the page. */
export interface Given {
  /** What is kept in the browser. */
  readonly start?: Readonly<Record<string, string>>;
  /** The text of the invented bills; '' for none. */
  readonly demo?: string;
  /** The day it is, as an ISO date. */
  readonly today?: string;
}

/** Open the page of printed bills from a book, and look that it is accessible as it is. */
export async function openCheck({ start = {}, demo = billsText, today = '2025-08-17' }: Given = {}) {
  const { keep, texts } = memoryStorage(start);
  const { book, shelf } = await mountBook(keep);
  book.demoCheck = demo === '' ? null : () => Promise.resolve(demo);
  book.today = today;
  book.demoDispute = () => Promise.resolve(disputeText);
  shelf.getElementById('open-check')?.click();
  const find = (): Check | null => shelf.querySelector('unitbook-check');
  await expect
    .poll(() => find()?.shadowRoot?.querySelector('#check-verdict'), { timeout: 10_000 })
    .toBeTruthy();
  const element = find();
  if (element === null) throw new Error('The page of printed bills did not open.');
  const check = new OpenCheck(element, shelf);
  await check.settled();
  await expectAccessible();
  return { check, texts };
}
