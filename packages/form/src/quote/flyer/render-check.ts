import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';
import type { FlyerDesk } from './flyer-desk.ts';
import type { FlyerLineView, FlyerView } from './flyer-view.ts';

/** How many columns the figures of a line take. */
const COLUMNS = 3;

/** The answer in one sentence. */
function answerOf({ isBlank, hasQuote, lines }: FlyerView): string {
  if (!hasQuote)
    return 'The quote beside it has no answer yet: type what it still asks for. What is typed here stays.';
  if (isBlank) return 'Type in what the flyer says: each line is then set beside this quote.';
  const count = lines.reduce((sum, { asks }) => sum + asks.length, 0);
  if (count === 0) return 'Nothing in it has to be asked about, as far as this page can tell.';
  return count === 1
    ? 'There is 1 thing to ask about this flyer.'
    : `There are ${String(count)} things to ask about this flyer.`;
}

function renderAsk(finding: Finding, { writing }: FlyerView): TemplateResult {
  const isNote = finding.severity === 'note';
  return html`<div class="finding ${finding.severity}" data-code=${finding.code}>
    <p><strong class="mark">${isNote ? 'Note' : 'To ask'}:</strong> ${quoteFindingText(finding, writing)}</p>
  </div>`;
}

function renderFigures({ key, claimed, ours, moreBy }: FlyerLineView): TemplateResult {
  return key === 'words'
    ? html`<tr>
        <td class="said" colspan=${COLUMNS}>“${claimed}”</td>
      </tr>`
    : html`<tr>
        <td>${claimed}</td>
        <td>${ours}</td>
        <td>${moreBy}</td>
      </tr>`;
}

/** A line of the flyer: its name, its figures in their columns, and what to ask about it. */
function renderLine(line: FlyerLineView, view: FlyerView): TemplateResult {
  const { key, label, asks } = line;
  return html`<tbody data-line=${key}>
    <tr class="name">
      <th scope="rowgroup" colspan=${COLUMNS}>${label}</th>
    </tr>
    ${renderFigures(line)}
    ${
      asks.length === 0
        ? nothing
        : html`<tr class="asks">
            <td colspan=${COLUMNS}>
              <div class="findings">${asks.map((finding) => renderAsk(finding, view))}</div>
            </td>
          </tr>`
    }
  </tbody>`;
}

function renderTable(view: FlyerView): TemplateResult {
  return html`<table class="data" id="flyer-lines">
    <caption>
      The flyer beside ${view.quoteDay === '' ? 'this quote' : `the quote of ${view.quoteDay}`}, line by line;
      by the quote, in the first year
    </caption>
    <thead>
      <tr>
        <th scope="col">The flyer</th>
        <th scope="col">This quote</th>
        <th scope="col">The flyer says more by</th>
      </tr>
    </thead>
    ${view.lines.map((line) => renderLine(line, view))}
  </table>`;
}

/** Lines that cannot be checked are not forgotten. */
function renderLeftOut({ findings, isBlank }: FlyerView): TemplateResult | typeof nothing {
  const count = new Set(findings.map(({ path }) => path[0])).size;
  if (count === 0 || isBlank) return nothing;
  return html`<p class="provided" id="flyer-left-out">
    ${count === 1 ? '1 line is' : `${String(count)} lines are`} not checked yet: set right what is told beside
    it. Where another line hangs on it, this quote’s own figure is taken meanwhile.
  </p>`;
}

/** Each line that was typed beside the same of the quote: answer first, then the table. */
export function renderCheck(desk: FlyerDesk): TemplateResult {
  const { view } = desk;
  return html`<section class="check" aria-labelledby="flyer-check">
    <h4 id="flyer-check">Beside this quote</h4>
    <p class="verdict" id="flyer-answer" role="status">${answerOf(view)}</p>
    ${renderLeftOut(view)}
    ${
      view.lines.length === 0
        ? nothing
        : html`${renderTable(view)}
            <p class="hint">
              A difference alone proves nothing, and prices that the flyer does not name are taken from this
              quote.
            </p>
            ${renderButton('Save as CSV', desk.saveCsv, { id: 'flyer-csv', className: 'quiet', about: 'the flyer beside this quote' })}`
    }
  </section>`;
}
