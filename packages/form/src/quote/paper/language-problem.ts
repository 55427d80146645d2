import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import type { PaperLanguage } from '../words/quote-languages.ts';

/** Why the printed quote is in English although another language was chosen, and the way to try again. */
export function renderLanguageProblem({ problem, again }: PaperLanguage): TemplateResult | typeof nothing {
  if (problem === '') return nothing;
  return html`<p class="notice language-problem" role="status">
    ${problem} ${renderButton('Try again', again)}
  </p>`;
}
