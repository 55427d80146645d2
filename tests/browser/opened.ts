import { expect, vi } from 'vitest';
import { drawn } from './mount.ts';

/** An element that tells when it is drawn. */
type Drawn = HTMLElement & { readonly updateComplete: Promise<unknown> };

/** A text without the spaces of its source. */
export const plain = (text: string | null | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim();

/** Choose a file at an input, as a reader does. */
export function chooseFile(input: HTMLInputElement, text: string, name: string): void {
  const files = new DataTransfer();
  files.items.add(new File([text], name));
  input.files = files.files;
  input.dispatchEvent(new Event('change'));
}

/** A page that lies open in an element, and what tests do with it. */
export class Opened<Element extends Drawn> {
  readonly element: Element;

  constructor(element: Element) {
    this.element = element;
  }

  get root(): ShadowRoot {
    if (this.element.shadowRoot === null) throw new Error(`${this.element.localName} was not drawn.`);
    return this.element.shadowRoot;
  }

  /** The one element with an id. */
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

  /** Type a text, and stay in the field. */
  async put(id: string, text: string): Promise<void> {
    const field = this.field(id);
    field.focus();
    field.value = text;
    field.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
    await drawn(this.element);
  }

  /** Leave the field that is being typed in. */
  async leave(): Promise<void> {
    (this.root.activeElement as HTMLElement | null)?.blur();
    await drawn(this.element);
  }

  /** Type a text and leave the field. */
  async type(id: string, text: string): Promise<void> {
    await this.put(id, text);
    await this.leave();
  }

  async choose(id: string, value: string): Promise<void> {
    this.field(id).value = value;
    this.field(id).dispatchEvent(new Event('change'));
    await drawn(this.element);
  }

  /** Press the button that says a label. */
  async press(label: string): Promise<void> {
    const button = [...this.root.querySelectorAll('button')].find((one) => plain(one.textContent) === label);
    if (button === undefined) throw new Error(`No button says "${label}".`);
    button.click();
    await drawn(this.element);
  }

  /** Press the button with an id. */
  async pressAt(id: string): Promise<void> {
    this.field(id).click();
    await drawn(this.element);
  }
}

/** Wait for an element of a page that is fetched when it is opened, until a part of it is drawn. */
export async function fetched<Name extends keyof HTMLElementTagNameMap>(
  within: ShadowRoot,
  name: Name,
  part: string,
): Promise<HTMLElementTagNameMap[Name]> {
  const find = (): HTMLElementTagNameMap[Name] | null => within.querySelector(name);
  await expect.poll(() => find()?.shadowRoot?.querySelector(part), { timeout: 10_000 }).toBeTruthy();
  const element = find();
  if (element === null) throw new Error(`${name} did not open.`);
  return element;
}

/** The text of the file that a press of a button saves. */
export async function saved(act: () => Promise<void> | void): Promise<{ name: string; text: string }> {
  const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined);
  await act();
  const [link] = click.mock.contexts as HTMLAnchorElement[];
  click.mockRestore();
  if (link === undefined) throw new Error('No file was saved.');
  const response = await fetch(link.href);
  return { name: link.download, text: await response.text() };
}
