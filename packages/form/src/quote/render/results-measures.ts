import { html, type TemplateResult } from 'lit';
import type { Quote } from '@unitbook/engine';
import type { QuoteDesk } from '../quote-desk.ts';
import { measureLines } from '../view/measure-lines.ts';
import { renderAnswerLine } from './answer.ts';

/** What the years of the quote come to in single figures, each with how it is meant. */
export function renderMeasures(quote: Quote, { view }: QuoteDesk): TemplateResult {
  return html`<section class="part" aria-labelledby="quote-comes-to">
    <h3 class="sub" id="quote-comes-to">What it comes to</h3>
    <dl class="answer">${measureLines(quote, view.writing).map(renderAnswerLine)}</dl>
  </section>`;
}
