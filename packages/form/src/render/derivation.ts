import { html, nothing, type TemplateResult } from 'lit';
import { explainFigure, type Explanation, type Figure } from '@unitbook/engine';
import type { Writing } from '../writing/writing.ts';
import { toggled, type Desk } from './desk.ts';

/** A figure over other inputs. Field by field: figures unfold on being asked, so a spread would lose them. */
function over(figure: Figure, inputs: readonly Figure[]): Figure {
  const { id, label, unit, numerator, denominator, operation, parameters, rounding, clause } = figure;
  return { id, label, unit, numerator, denominator, operation, parameters, rounding, clause, inputs };
}

/**
 * One step of an explanation, without the steps below it. A year's credit hangs on every month before, by
 * several ways each: explained whole, the tree of a late month would have millions of steps.
 */
function explainStep(figure: Figure, writing: Writing): Explanation {
  return explainFigure(
    over(
      figure,
      figure.inputs.map((input) => over(input, [])),
    ),
    writing,
  );
}

function renderHow(figure: Figure, key: string, desk: Desk): TemplateResult {
  const step = explainStep(figure, desk.view.writing);
  return html`
    ${step.formula === '' ? nothing : html`<p class="formula">= ${step.formula}</p>`}
    ${step.rounding === '' ? nothing : html`<p class="rounding">${step.rounding}</p>`}
    ${step.clause === '' ? nothing : html`<p class="clause">${step.clause}</p>`}
    ${
      figure.inputs.length === 0
        ? nothing
        : html`<ul class="steps">
            ${figure.inputs.map((input, index) => renderStep(input, `${key}/${String(index)}`, desk))}
          </ul>`
    }
  `;
}

function renderStep(figure: Figure, key: string, desk: Desk): TemplateResult {
  const step = explainStep(figure, desk.view.writing);
  const line = html`<span class="label">${step.label}</span> <span class="value">${step.value}</span>`;
  const isLeaf = figure.inputs.length === 0 && step.formula === '' && step.rounding === '';
  if (isLeaf)
    return html`<li>
      <div class="step">${line}</div>
      ${step.clause === '' ? nothing : html`<p class="clause">${step.clause}</p>`}
    </li>`;
  const isOpen = desk.isOpen(key, false);
  return html`
    <li>
      <details
        ?open=${isOpen}
        @toggle=${(event: Event) => {
          desk.setOpen(key, toggled(event));
        }}
      >
        <summary class="step">${line}</summary>
        ${isOpen ? renderHow(figure, key, desk) : nothing}
      </details>
    </li>
  `;
}

/**
 * How a figure comes about, down to readings and clauses; each step opens to its own.
 *
 * @param figure  any
 * @param key     names its place on the page, so that it stays open from month to month
 */
export function renderDerivation(figure: Figure, key: string, desk: Desk): TemplateResult {
  return renderHow(figure, key, desk);
}
