import { html, nothing, type TemplateResult } from 'lit';

/** What a button can have besides its words. */
export interface ButtonExtras {
  readonly id?: string;
  /** How it looks: `quiet` like a link, `strong` filled. */
  readonly className?: 'quiet' | 'strong';
  /** What it is about, for whoever hears it without its surroundings. */
  readonly about?: string;
}

/** A button; every one on the page is drawn here. */
export function renderButton(
  words: string,
  press: (event: MouseEvent) => void,
  { id, className, about }: ButtonExtras = {},
): TemplateResult {
  return html`<button
    type="button"
    id=${id ?? nothing}
    class=${className ?? nothing}
    aria-label=${about === undefined ? nothing : `${words}: ${about}`}
    @click=${press}
  >
    ${words}
  </button>`;
}
