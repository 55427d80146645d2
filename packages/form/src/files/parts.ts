import { html, nothing, type TemplateResult } from 'lit';
import { typed } from '../render/desk.ts';

/** A field of one line that is typed in. */
export interface TextField {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  /** How it is read; left out: there is nothing to say of it. */
  readonly echo?: string;
  readonly isWrong?: boolean;
  /** The id of a list of texts to choose from. */
  readonly list?: string;
  readonly input: (text: string) => void;
}

/** A field of one line, with its label, hint and echo. */
export function renderTextField(field: TextField): TemplateResult {
  const { id, label, hint, value, echo, list } = field;
  const described = [echo === undefined ? '' : `${id}-echo`, hint === undefined ? '' : `${id}-hint`];
  const describedBy = described.join(' ').trim();
  return html`<div class="field">
    <label for=${id}>${label}</label>
    ${hint === undefined ? nothing : html`<span class="hint" id="${id}-hint">${hint}</span>`}
    <input
      id=${id}
      type="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      list=${list ?? nothing}
      aria-describedby=${describedBy === '' ? nothing : describedBy}
      aria-invalid=${field.isWrong === true ? 'true' : 'false'}
      .value=${value}
      @input=${(event: Event) => {
        field.input(typed(event));
      }}
    />
    ${echo === undefined ? nothing : html`<span class="echo" id="${id}-echo">${echo}</span>`}
  </div>`;
}

/** A box to tick, with its words. */
export interface Tick {
  readonly id: string;
  readonly words: string;
  /** What it is about, for whoever hears it without its surroundings. */
  readonly about?: string;
  readonly isTicked: boolean;
  readonly change: (isTicked: boolean) => void;
}

/** A box to tick. */
export function renderTick({ id, words, about, isTicked, change }: Tick): TemplateResult {
  return html`<div class="field tick">
    <input
      id=${id}
      type="checkbox"
      .checked=${isTicked}
      @change=${(event: Event) => {
        change((event.currentTarget as HTMLInputElement).checked);
      }}
    />
    <label for=${id}
      >${words}${about === undefined ? nothing : html`<span class="hidden">: ${about}</span>`}</label
    >
  </div>`;
}

/** A table that scrolls by itself where it is wider or longer than its place. */
export function renderWide(name: string, table: TemplateResult): TemplateResult {
  return html`<div class="wide" role="region" aria-label=${name} tabindex="0">${table}</div>`;
}

/** The head of a section of the panel. */
export function renderHeading(words: string): TemplateResult {
  return html`<h3 class="sub">${words}</h3>`;
}

/** Sentences, each in a line of its own. */
export function renderSentences(sentences: readonly string[]): readonly TemplateResult[] {
  return sentences.map((sentence) => html`<p class="say">${sentence}</p>`);
}
