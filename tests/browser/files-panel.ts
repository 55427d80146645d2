import { emptyHousehold, keepLayoutsIn, type Household, type LayoutKeep } from '@unitbook/form';
import { expect } from 'vitest';
import { mountMonth, type Mounted } from './mount.ts';

/** The panel for meter files, and what tests do with it. */
export class FilesPanel {
  readonly mounted: Mounted;
  readonly element: HTMLElementTagNameMap['unitbook-meter-file'];

  constructor(mounted: Mounted, element: HTMLElementTagNameMap['unitbook-meter-file']) {
    this.mounted = mounted;
    this.element = element;
  }

  get root(): ShadowRoot {
    if (this.element.shadowRoot === null) throw new Error('The panel was not drawn.');
    return this.element.shadowRoot;
  }

  get household(): Household {
    return this.mounted.month.household;
  }

  /** Everything that the panel says. */
  get text(): string {
    return this.root.textContent.replace(/\s+/g, ' ');
  }

  field(id: string): HTMLInputElement {
    const field = this.root.getElementById(id);
    if (field === null) throw new Error(`Nothing in the panel has the id ${id}.`);
    return field as HTMLInputElement;
  }

  async drawn(): Promise<void> {
    await this.element.updateComplete;
    await this.mounted.month.updateComplete;
    await this.element.updateComplete;
  }

  /** Choose a file, and wait until something is said of it. */
  async open(text: BlobPart, name = 'meter.csv'): Promise<void> {
    const files = new DataTransfer();
    files.items.add(new File([text], name));
    const input = this.field('meter-file');
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
    await this.settled();
  }

  /** Wait until nothing is being read. */
  async settled(): Promise<void> {
    await this.drawn();
    await expect.poll(() => this.root.querySelector('progress')).toBeNull();
    await this.drawn();
  }

  async type(id: string, text: string): Promise<void> {
    const field = this.field(id);
    field.value = text;
    field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    await this.drawn();
  }

  async choose(id: string, value: string): Promise<void> {
    const field = this.field(id);
    field.value = value;
    field.dispatchEvent(new Event('change', { bubbles: true }));
    await this.drawn();
  }

  async tick(id: string): Promise<void> {
    this.field(id).click();
    await this.drawn();
  }

  async press(label: string): Promise<void> {
    const button = [...this.root.querySelectorAll('button')].find(
      (candidate) => candidate.textContent.replace(/\s+/g, ' ').trim() === label,
    );
    if (button === undefined) throw new Error(`No button of the panel says "${label}".`);
    button.click();
    await this.settled();
  }

  /** The cells of a table by its name, row by row. */
  rows(name: string): string[][] {
    const table = this.root.querySelector(`[aria-label="${name}"] table`);
    return [...(table?.querySelectorAll('tbody tr') ?? [])].map((row) =>
      [...row.children].map((cell) => cell.textContent.replace(/\s+/g, ' ').trim()),
    );
  }

  /** The questions about a table that are still open. */
  openQuestions(): string[] {
    return [...this.root.querySelectorAll<HTMLElement>('.question-card.open')].map(
      (card) => card.dataset['question'] ?? '',
    );
  }
}

/** A book of one's own with nothing typed but the account. */
export function blankBook(): Household {
  const blank = emptyHousehold('en-IN');
  const account = { ...blank.account, sanctionedLoad: '3', plantCapacity: '3.3' };
  return { ...blank, tariff: 'tarumira-domestic', account };
}

/** Layouts in memory, and what is remembered. */
export function memoryLayouts(): { readonly layouts: LayoutKeep; readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  const layouts = keepLayoutsIn(() => ({
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => void texts.set(key, text),
    removeItem: (key) => void texts.delete(key),
  }));
  return { layouts, texts };
}

/** Open the fold for meter files of a mounted book. */
export async function openPanel(
  household: Household,
  layouts: LayoutKeep | null = null,
): Promise<FilesPanel> {
  const mounted = await mountMonth(household);
  mounted.month.layouts = layouts;
  await mounted.month.updateComplete;
  const element = mounted.root.querySelector('unitbook-meter-file');
  if (element === null) throw new Error('There is no place for meter files.');
  element.closest('details')?.querySelector('summary')?.click();
  await expect.poll(() => element.shadowRoot?.getElementById('meter-file'), { timeout: 30_000 }).toBeTruthy();
  return new FilesPanel(mounted, element);
}
