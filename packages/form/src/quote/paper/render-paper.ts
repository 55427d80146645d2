import { html, nothing, type TemplateResult } from 'lit';
import { exactText, quoteGround } from '@unitbook/engine';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderLanguageProblem } from './language-problem.ts';
import { renderFirstPage } from './first-page.ts';
import { renderCosts } from './costs-part.ts';
import { renderLoanPart } from './loan-part.ts';
import { renderAssumptions, renderPaperAnswer } from './money-parts.ts';
import type { PaperView } from './paper-view.ts';
import { renderSecondPage } from './second-page.ts';

/** The tariff with its supplier; the orders that it is from are named beside it. */
function tariffWords({ tariff: { view } }: QuoteDesk): string {
  if (view.kind !== 'open') return '';
  const { name, supplier } = view.tariff.tariff.document;
  return `${name}, ${supplier}`;
}

/** What the printed quote is made of; null while there is no quote. */
function paperOf(desk: QuoteDesk): PaperView | null {
  const { view, later } = desk;
  if (view.quote === null || view.prepared === null) return null;
  return {
    quote: view.quote,
    kept: later.kept,
    ground: quoteGround(view.prepared),
    words: desk.language.words,
    writing: view.writing,
    draws: desk.isStale ? null : later.draws,
    cases: desk.isStale ? [] : (later.cases ?? []),
    charges: view.source.charges,
    tariff: tariffWords(desk),
    isTrial: view.watts !== null,
  };
}

function renderTrial({ quote, words, writing, isTrial }: PaperView): TemplateResult | typeof nothing {
  if (!isTrial) return nothing;
  const size = writing.number(exactText(quote.input.watts, 1000));
  return html`<p class="trial">
    ${words.sentences.tried(size, writing.number(quote.input.document.plant.kWp))}
  </p>`;
}

/** The quote as it is printed: two pages, with all that a quote has to say. */
export function renderPaper(desk: QuoteDesk): TemplateResult | typeof nothing {
  const paper = paperOf(desk);
  if (paper === null) return nothing;
  const { words, quote } = paper;
  return html`${renderLanguageProblem(desk.language)}
    <article class="sheet" lang=${words.language} aria-labelledby="quote-paper-title">
      <header>
        <h3 id="quote-paper-title">${words.title}</h3>
        <p>${quote.input.document.offer.customer ?? ''}</p>
        <p class="estimate">${words.estimate}</p>
      </header>
      ${renderTrial(paper)} ${renderPaperAnswer(paper)} ${renderFirstPage(paper)}
      <div class="columns money">
        ${renderCosts(paper)} ${renderLoanPart(paper)} ${renderAssumptions(paper)}
      </div>
      ${renderSecondPage(paper)}
    </article>`;
}
