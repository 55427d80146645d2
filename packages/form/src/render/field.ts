import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { isUnfinished } from '../view/unfinished.ts';
import { typed, type Desk } from './desk.ts';
import { renderFindings } from './findings.ts';

/** A field with its label, its echo and what is to be said of it. */
export interface Field {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  /** How the text was read, such as "Read as 12,892.4". */
  readonly echo: string;
  readonly findings: readonly Finding[];
  readonly inputMode: 'decimal' | 'numeric' | 'text';
  readonly input: (text: string) => void;
}

/** The ids of everything that describes a field. */
function describedBy(field: Field): string {
  const parts = [`${field.id}-echo`];
  if (field.hint !== undefined) parts.push(`${field.id}-hint`);
  if (field.findings.length > 0) parts.push(`${field.id}-findings`);
  return parts.join(' ');
}

/** The input of a field, without label and findings: for columns that set those elsewhere. */
export function renderInput(field: Field): TemplateResult {
  const isWrong = field.findings.some((finding) => finding.severity === 'error' && !isUnfinished(finding));
  return html`<input
    id=${field.id}
    type="text"
    autocomplete="off"
    autocapitalize="off"
    spellcheck="false"
    inputmode=${field.inputMode}
    aria-describedby=${describedBy(field)}
    aria-invalid=${isWrong ? 'true' : 'false'}
    .value=${field.value}
    @input=${(event: Event) => {
      field.input(typed(event));
    }}
  />`;
}

/** A field whole: label, hint, input, echo, findings. */
export function renderField(field: Field, desk: Desk): TemplateResult {
  return html`
    <div class="field">
      <label for=${field.id}>${field.label}</label>
      ${field.hint === undefined ? nothing : html`<span class="hint" id="${field.id}-hint">${field.hint}</span>`}
      ${renderInput(field)}
      <span class="echo" id="${field.id}-echo">${field.echo}</span>
      ${renderFindings(field.findings, field.id, desk)}
    </div>
  `;
}
