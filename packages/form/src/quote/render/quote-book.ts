import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderPaper } from '../paper/render-paper.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderAnswer, renderStrip } from './answer.ts';
import { renderCautions } from './cautions.ts';
import { renderInputs } from './inputs.ts';
import { renderQuoteShelf } from './quote-shelf.ts';
import { renderResults } from './results.ts';

function renderOnPaper(desk: QuoteDesk): TemplateResult | typeof nothing {
  if (desk.view.quote === null) return nothing;
  const words = desk.isOnPaper ? 'Put the printed quote away' : 'See the quote as it is printed';
  return html`<section class="page paper-page" aria-label="The quote on paper">
    ${renderButton(
      words,
      () => {
        desk.showPaper(!desk.isOnPaper);
      },
      { id: 'quote-paper' },
    )}
    ${desk.isOnPaper ? renderPaper(desk) : nothing}
  </section>`;
}

function renderOffered(desk: QuoteDesk): TemplateResult {
  return html`<section class="page inputs-page" aria-labelledby="quote-entry">
    <h2 id="quote-entry">The offer</h2>
    ${renderInputs(desk)}
  </section>`;
}

/** What is offered on the left page, what comes of it on the right. */
function renderSpread(desk: QuoteDesk): TemplateResult {
  return html`${renderOffered(desk)}
    <section class="page results-page" aria-labelledby="quote-result">
      <h2 id="quote-result">The answer</h2>
      ${renderAnswer(desk)} ${renderStrip(desk)} ${renderResults(desk)}
    </section>`;
}

/** One page after the other: the answer first, then what it hangs on, in sight from there on. */
function renderColumn(desk: QuoteDesk): TemplateResult {
  return html`<section class="page answer-page" aria-labelledby="quote-result">
      <h2 id="quote-result">The answer</h2>
      ${renderAnswer(desk)}
    </section>
    ${renderStrip(desk)} ${renderOffered(desk)}
    ${
      desk.view.quote === null
        ? nothing
        : html`<section class="page results-page" aria-labelledby="quote-outcome">
            <h2 id="quote-outcome">What comes of it</h2>
            ${renderResults(desk)}
          </section>`
    }`;
}

/** The quote as an account book: what is read in order is seen in the same order, on a phone and on a desk. */
export function renderQuoteBook(desk: QuoteDesk): TemplateResult {
  return html`${renderQuoteShelf(desk)}
    <div class="book quote-book">
      ${desk.isSpread ? renderSpread(desk) : renderColumn(desk)} ${renderOnPaper(desk)} ${renderCautions()}
    </div>`;
}
