import { html, nothing, type TemplateResult } from 'lit';
import type { CheckedBill } from '@unitbook/engine';
import type { CheckDesk } from '../check-desk.ts';
import { periodText, verdictWords } from '../view/verdict-words.ts';
import { renderWhy } from './causes.ts';
import { findingsOfNoField, renderFinding } from './check-findings.ts';
import { renderDifferingLines, renderRightBill } from './differing-lines.ts';

/** What has to be typed before anything can be said. */
function renderWanted({ view: { wanted }, bill }: CheckDesk): TemplateResult {
  const own = wanted.length > 0 ? wanted : ['Type both reading dates of this bill.'];
  return html`<p class="verdict" id="check-verdict" role="status">
      ${bill.isBlank ? 'Type a printed bill in: the answer stands here.' : 'It cannot be told yet.'}
    </p>
    <ul class="wanted-list" id="check-wanted">
      ${own.map((one) => html`<li>${one}</li>`)}
    </ul>`;
}

function renderTold(desk: CheckDesk): TemplateResult | typeof nothing {
  const findings = findingsOfNoField(desk);
  if (findings.length === 0) return nothing;
  return html`<div class="findings" id="check-told">
    ${findings.map((finding) => renderFinding(finding, desk))}
  </div>`;
}

/** What surprises on a bill and is right all the same. */
function renderSurprises({ surprises }: CheckedBill): TemplateResult | typeof nothing {
  if (surprises.length === 0) return nothing;
  return html`<section class="part" aria-labelledby="check-surprises">
    <h3 class="sub" id="check-surprises">Surprising, and right</h3>
    <ul class="nearest">
      ${surprises.map(({ id, what, clause }) => html`<li data-surprise=${id}>${what}${clause === null ? '' : ` (${clause})`}</li>`)}
    </ul>
  </section>`;
}

/** The verdict first, then the lines that differ, why, and what shows it. */
export function renderAnswer(desk: CheckDesk): TemplateResult {
  const { result, bill, view, isStale } = desk;
  if (view.input === null || bill.printed === null) return html`${renderWanted(desk)} ${renderTold(desk)}`;
  if (result === null)
    return html`<p class="verdict" id="check-verdict" role="status">Checking the bill …</p>`;
  const { checked } = result;
  const { verdict, more } = verdictWords(checked, view.writing);
  return html`<div class=${isStale ? 'stale' : ''}>
    <p class="particulars">${periodText(checked.printed.period, view.writing)}</p>
    <p class="verdict ${checked.verdict}" id="check-verdict" role="status">${verdict}</p>
    ${more === '' ? nothing : html`<p id="check-should">${more}</p>`} ${renderTold(desk)}
    ${checked.verdict === 'right' ? nothing : renderDifferingLines(checked, desk)} ${renderWhy(checked, desk)}
    ${renderSurprises(checked)} ${renderRightBill(checked, desk)}
  </div>`;
}
