import { html, nothing, type TemplateResult } from 'lit';
import { typed } from './desk.ts';

/** A field that is chosen from a list. */
export interface Select {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  /** Values with their words. */
  readonly options: readonly (readonly [string, string])[];
  readonly choose: (value: string) => void;
}

/** A field that is chosen from a list, with its label. */
export function renderPlainSelect({ id, label, hint, value, options, choose }: Select): TemplateResult {
  return html`
    <div class="field">
      <label for=${id}>${label}</label>
      ${hint === undefined ? nothing : html`<span class="hint" id="${id}-hint">${hint}</span>`}
      <select
        id=${id}
        aria-describedby=${hint === undefined ? nothing : `${id}-hint`}
        @change=${(event: Event) => {
          choose(typed(event));
        }}
      >
        ${options.map(([one, text]) => html`<option value=${one} .selected=${one === value}>${text}</option>`)}
      </select>
    </div>
  `;
}
