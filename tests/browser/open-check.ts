import { expect } from 'vitest';
import billsText from '../../tariffs-examples/checks/two-bills.json?raw';
import disputeText from '../../tariffs-examples/disputes/tarumira.json?raw';
import { drawn, expectAccessible, memoryStorage, mountBook } from './mount.ts';
import { chooseFile, fetched, Opened } from './opened.ts';

type Check = HTMLElementTagNameMap['unitbook-check'];

/** The page of printed bills, opened from the book, and what tests do with it. */
export class OpenCheck extends Opened<Check> {
  readonly shelf: ShadowRoot;

  constructor(element: Check, shelf: ShadowRoot) {
    super(element);
    this.shelf = shelf;
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
    chooseFile(this.field('check-open'), text, name);
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
  const element = await fetched(shelf, 'unitbook-check', '#check-verdict');
  const check = new OpenCheck(element, shelf);
  await check.settled();
  await expectAccessible();
  return { book, check, texts };
}
