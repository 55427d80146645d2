import { html, type TemplateResult } from 'lit';
import { renderButton } from './render/button.ts';

/** An element that is fetched when its page is opened for the first time: most visits are about the bill alone. */
export interface LazyElement {
  /** Its tag, such as "unitbook-quote". */
  readonly name: string;
  readonly load: () => Promise<CustomElementConstructor>;
}

/** A page in the place of which such an element comes. */
export interface LazyPage {
  /** Whether the element could not be fetched. */
  readonly isFailed: boolean;
  readonly fail: (isFailed: boolean) => void;
}

async function defineElement({ name, load }: LazyElement): Promise<void> {
  const element = await load();
  // Another copy may have been first meanwhile: a name can be taken only once.
  if (customElements.get(name) === undefined) customElements.define(name, element);
}

function wantElement(element: LazyElement, page: LazyPage): void {
  if (customElements.get(element.name) !== undefined) return;
  defineElement(element).catch(() => {
    page.fail(true);
  });
}

/**
 * Fetch an element, unless it is there, and draw what stands in its place until then: that it is on its way, or that it
 * could not be fetched, with a way to try again.
 *
 * @param page  told where the element could not be fetched
 */
export function renderWaiting(element: LazyElement, page: LazyPage): TemplateResult {
  wantElement(element, page);
  if (!page.isFailed) return html`<p class="notice" role="status">Getting this page …</p>`;
  return html`<p class="notice" role="alert">
    This page could not be fetched. Open it once while online, then try again.
    ${renderButton('Try again', () => {
      page.fail(false);
      wantElement(element, page);
    })}
  </p>`;
}
