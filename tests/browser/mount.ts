import axe from 'axe-core';
import '@unitbook/form/define';
import { keepIn, readHousehold, type Household, type Keep } from '@unitbook/form';
import { expect } from 'vitest';
import { memory } from '../support/memory.ts';
import demoText from '../../tariffs-examples/households/demo.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

/** The examples that a mounted element can choose from. */
const tariffs = [
  {
    id: 'tarumira-domestic',
    name: 'Tarumira D-1',
    load: (): Promise<string> => Promise.resolve(tariffText),
  },
];

/** The invented household of the demo, fresh for each test. */
export function demoHousehold(): Household {
  const read = readHousehold(demoText);
  if (read.kind !== 'household') throw new Error('The demo household cannot be read.');
  return read.household;
}

/** A household with the first readings of the demo and others in place of the last of them. */
export function householdWith(count: number, last: Partial<Household['readings'][number]> = {}): Household {
  const demo = demoHousehold();
  const readings = demo.readings.slice(0, count);
  return {
    ...demo,
    readings: readings.map((row, index) => (index === count - 1 ? { ...row, ...last } : row)),
  };
}

async function settled(element: HTMLElement & { updateComplete: Promise<unknown> }): Promise<void> {
  await element.updateComplete;
  // The tariff is loaded and the element drawn again.
  await new Promise((resolve) => setTimeout(resolve, 0));
  await element.updateComplete;
}

/** An element on the page, and what tests do with it. */
export class Mounted {
  readonly month: HTMLElementTagNameMap['unitbook-month'];

  constructor(month: HTMLElementTagNameMap['unitbook-month']) {
    this.month = month;
  }

  get root(): ShadowRoot {
    if (this.month.shadowRoot === null) throw new Error('The element was not drawn.');
    return this.month.shadowRoot;
  }

  /** The one element with an id. */
  field(id: string): HTMLInputElement {
    const field = this.root.getElementById(id);
    if (field === null) throw new Error(`Nothing has the id ${id}.`);
    return field as HTMLInputElement;
  }

  text(id: string): string {
    return this.field(id).textContent.replace(/\s+/g, ' ').trim();
  }

  /** Type a text at once, as pasting does. */
  async type(id: string, text: string): Promise<void> {
    const field = this.field(id);
    field.value = text;
    field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    await settled(this.month);
  }

  async press(label: string, within: ParentNode = this.root): Promise<void> {
    const button = [...within.querySelectorAll('button')].find(
      (candidate) => candidate.textContent.replace(/\s+/g, ' ').trim() === label,
    );
    if (button === undefined) throw new Error(`No button says "${label}".`);
    button.click();
    await settled(this.month);
  }

  /** The codes of the findings that are shown, in order. */
  codes(kind: 'error' | 'question' | 'note' = 'question'): string[] {
    const shown = this.root.querySelectorAll<HTMLElement>(`.finding.${kind}[data-code]`);
    return [...shown].map((finding) => finding.dataset['code'] ?? '');
  }

  finding(code: string): HTMLElement {
    const found = this.root.querySelector<HTMLElement>(`[data-code="${code}"]`);
    if (found === null) throw new Error(`No finding has the code ${code}.`);
    return found;
  }
}

/** Put `<unitbook-month>` with a household on the page, and look that it is accessible as it is. */
export async function mountMonth(household: Household, today = '2026-05-01'): Promise<Mounted> {
  document.body.replaceChildren();
  const month = document.createElement('unitbook-month');
  month.tariffs = tariffs;
  month.today = today;
  month.household = household;
  document.body.append(month);
  await settled(month);
  await expectAccessible();
  return new Mounted(month);
}

/** A storage in memory, and what is kept in it. */
export function memoryStorage(start: Readonly<Record<string, string>> = {}): {
  readonly keep: Keep;
  readonly texts: Map<string, string>;
} {
  const { storage, texts } = memory(start);
  return { keep: keepIn(() => storage), texts };
}

/** Put `<unitbook-book>` with its shelf on the page, and look that it is accessible as it is. */
export async function mountBook(
  keep: Keep,
): Promise<{ book: HTMLElementTagNameMap['unitbook-book']; shelf: ShadowRoot; mounted: () => Mounted }> {
  document.body.replaceChildren();
  const book = document.createElement('unitbook-book');
  book.tariffs = tariffs;
  book.today = '2026-05-01';
  book.demo = demoHousehold();
  book.keep = keep;
  document.body.append(book);
  await settled(book);
  const shelf = book.shadowRoot;
  if (shelf === null) throw new Error('The book was not drawn.');
  const mounted = (): Mounted => {
    const month = shelf.querySelector('unitbook-month');
    if (month === null) throw new Error('No book lies open.');
    return new Mounted(month);
  };
  await settled(mounted().month);
  await expectAccessible();
  return { book, shelf, mounted };
}

/** Wait until everything that was asked for is drawn. */
export async function drawn(element: HTMLElement & { updateComplete: Promise<unknown> }): Promise<void> {
  await settled(element);
}

/** Nothing on the page stands in the way of a reader who sees, hears or moves differently. */
export async function expectAccessible(): Promise<void> {
  // Half-way between two colours, a button has the contrast of neither.
  await Promise.allSettled(document.getAnimations().map(({ finished }) => finished));
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  const told = violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes.map(({ target, failureSummary }) => `${JSON.stringify(target)} ${failureSummary ?? ''}`).join('; ')}`,
  );
  expect(told).toEqual([]);
}
