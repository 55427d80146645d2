import { html, nothing, type TemplateResult } from 'lit';
import { isDecimalText, parseDay } from '@unitbook/engine';
import { renderInput } from '../../render/field.ts';
import { typed } from '../../render/desk.ts';
import { keptDay, keptNumber } from '../../plant/document/typed-texts.ts';
import { fieldIdOf, putAt, textAt } from '../document/edit-quote.ts';
import type { QuoteField } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { findingsAt, renderFindingsAt } from './quote-findings.ts';

const asTyped = (text: string): string => text;
const KEPT = { number: keptNumber, day: keptDay, text: asTyped, words: asTyped } as const;

/** How a text was read, where it does not stand there just so. */
function echoOf({ is, unit = '' }: QuoteField, kept: string, shown: string, { view }: QuoteDesk): string {
  const day = is === 'day' ? parseDay(kept) : null;
  if (day !== null) return view.writing.day(day);
  if (is !== 'number' || !isDecimalText(kept) || shown === kept) return '';
  return `Read as ${view.writing.number(kept)}${unit}`;
}

/** Keep what was typed in a field; a blank one that may be blank is left out. */
function keep({ path, is, mayBeBlank }: QuoteField, text: string, desk: QuoteDesk): void {
  const kept = KEPT[is](text);
  desk.noteTyped(fieldIdOf(path), text, kept);
  desk.change(putAt(desk.document, path, kept === '' && mayBeBlank === true ? undefined : kept));
}

function renderWords(field: QuoteField, id: string, desk: QuoteDesk): TemplateResult {
  return html`<textarea
    id=${id}
    rows="4"
    aria-describedby=${field.hint === undefined ? nothing : `${id}-hint`}
    .value=${textAt(desk.document, field.path)}
    @input=${(event: Event) => {
      keep(field, typed(event), desk);
    }}
  ></textarea>`;
}

function renderLine(field: QuoteField, id: string, desk: QuoteDesk): TemplateResult {
  const { label, hint, path, is } = field;
  const kept = textAt(desk.document, path);
  const shown = desk.shown(id, kept);
  return html`${renderInput({
      id,
      label,
      ...(hint === undefined ? {} : { hint }),
      value: shown,
      echo: '',
      findings: findingsAt(path, desk),
      inputMode: is === 'number' ? 'decimal' : 'text',
      input: (text) => {
        keep(field, text, desk);
      },
    })} <span class="echo" id="${id}-echo">${echoOf(field, kept, shown, desk)}</span>`;
}

/**
 * A field whole: label, hint, input, echo, findings.
 *
 * @param more  what stands between the input and its findings, such as a slider
 */
export function renderQuoteField(
  field: QuoteField,
  desk: QuoteDesk,
  more: unknown = nothing,
): TemplateResult {
  const { path, label, hint, is } = field;
  const id = fieldIdOf(path);
  return html`
    <div class="field ${is === 'words' ? 'whole-line' : ''}">
      <label for=${id}>${label}</label>
      ${hint === undefined ? nothing : html`<span class="hint" id="${id}-hint">${hint}</span>`}
      ${is === 'words' ? renderWords(field, id, desk) : renderLine(field, id, desk)} ${more}
      ${renderFindingsAt(path, desk)}
    </div>
  `;
}

/** Fields side by side, as many as there is room for. */
export function renderFields(fields: readonly QuoteField[], desk: QuoteDesk): TemplateResult {
  return html`<div class="pair">${fields.map((field) => renderQuoteField(field, desk))}</div>`;
}
