import { html, nothing, type TemplateResult } from 'lit';
import { explainFigure, type Explanation, type Figure } from '@unitbook/engine';
import { localDates, type Writing } from '../writing/writing.ts';
import { renderFold, type Folds } from './fold.ts';

/** What a derivation is drawn with: folds, and how numbers are written. */
export interface Explaining extends Folds {
  readonly view: { readonly writing: Writing };
}

const renderLine = (name: string, text: string): TemplateResult | typeof nothing =>
  text === '' ? nothing : html`<p class=${name}>${text}</p>`;

function renderHow(step: Explanation, key: string, desk: Explaining): TemplateResult {
  return html`
    ${renderLine('formula', step.formula === '' ? '' : `= ${step.formula}`)}
    ${renderLine('rounding', step.rounding)}
    ${renderLine('clause', localDates(step.clause, desk.view.writing))}
    ${
      step.inputs.length === 0
        ? nothing
        : html`<ul class="steps">
            ${step.inputs.map((input, index) => renderStep(input, `${key}/${String(index)}`, desk))}
          </ul>`
    }
  `;
}

function renderStep(step: Explanation, key: string, desk: Explaining): TemplateResult {
  const summary = html`<span class="label">${step.label}</span> <span class="value">${step.value}</span>`;
  if (step.inputs.length === 0 && step.formula === '' && step.rounding === '')
    return html`<li>
      <div class="step">${summary}</div>
      ${renderHow(step, key, desk)}
    </li>`;
  return html`<li>
    ${renderFold(
      { key, summary, content: (isOpen) => (isOpen ? renderHow(step, key, desk) : nothing) },
      desk,
    )}
  </li>`;
}

/**
 * How a figure comes about, down to readings and clauses; each step opens to its own.
 *
 * @param figure  any
 * @param key     names its place on the page, so that it stays open from month to month
 */
export function renderDerivation(figure: Figure, key: string, desk: Explaining): TemplateResult {
  return renderHow(explainFigure(figure, desk.view.writing), key, desk);
}
