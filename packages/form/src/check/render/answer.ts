import { html, nothing, type TemplateResult } from 'lit';
import { surpriseWords, type CheckedBill } from '@unitbook/engine';
import type { CheckDesk } from '../check-desk.ts';
import { inventedWords } from '../view/invented-ground.ts';
import { notationOf } from '../view/notation.ts';
import { periodText, verdictWords } from '../view/verdict-words.ts';
import { foundText } from '../view/finding-words.ts';
import { openPoints, unreadPoints } from '../view/open-points.ts';
import { wantedOfBill } from '../view/wanted-words.ts';
import { renderWhy } from './causes.ts';
import { findingsOfBill, findingsOfNoField, renderFinding } from './check-findings.ts';
import { renderDifferingLines, renderRightBill } from './differing-lines.ts';

/** What has to be typed before anything can be said. */
function renderWanted({ view: { wanted, writing }, bill }: CheckDesk): TemplateResult {
  const ofBill = bill.printed === null && (!bill.isBlank || wanted.length === 0);
  const own = [...wanted, ...(ofBill ? wantedOfBill(bill, writing) : [])];
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

/** What cannot be read and what is asked, by the label of its field: there it stands whole. */
function renderOpen(desk: CheckDesk): TemplateResult | typeof nothing {
  const { bill, view, isStale } = desk;
  const points = isStale ? [] : openPoints(bill, findingsOfBill(desk));
  if (points.length === 0) return nothing;
  return html`<section class="part" aria-labelledby="check-open-points">
    <h3 class="sub" id="check-open-points">Still open</h3>
    <ul class="nearest">
      ${points.map(
        ({ label, finding }) =>
          html`<li data-open=${finding.code}>
            <strong>${label}:</strong> ${foundText(finding, view.writing)}
          </li>`,
      )}
    </ul>
  </section>`;
}

/** Own bills beside the invented household of the demo: what is right there is not right for them. */
function renderInvented(desk: CheckDesk): TemplateResult | typeof nothing {
  const words = inventedWords(desk);
  return words === '' ? nothing : html`<p class="notice" role="note" id="check-invented">${words}</p>`;
}

/** What surprises on a bill and is right all the same. */
function renderSurprises({ surprises }: CheckedBill, { view }: CheckDesk): TemplateResult | typeof nothing {
  if (surprises.length === 0) return nothing;
  const notation = notationOf(view.writing);
  return html`<section class="part" aria-labelledby="check-surprises">
    <h3 class="sub" id="check-surprises">Surprising, and right</h3>
    <ul class="nearest">
      ${surprises.map(({ id, said, clause }) => {
        const words = `${surpriseWords({ said }, notation)}${clause === null ? '' : ` (${clause})`}`;
        return html`<li data-surprise=${id}>${words}</li>`;
      })}
    </ul>
  </section>`;
}

/** The verdict first, then the lines that differ, why, and what shows it. */
export function renderAnswer(desk: CheckDesk): TemplateResult {
  const { result, bill, view, isStale } = desk;
  if (view.input === null || bill.printed === null)
    return html`${renderWanted(desk)} ${renderInvented(desk)} ${renderTold(desk)}`;
  if (result === null)
    return html`<p class="verdict" id="check-verdict" role="status">Checking the bill …</p>`;
  const { checked } = result;
  const unread = unreadPoints(bill).map(({ label }) => label);
  const { verdict, more } = verdictWords(checked, view.writing, unread);
  return html`<div class=${isStale ? 'stale' : ''}>
    <p class="particulars">${periodText(checked.printed.period, view.writing)}</p>
    <p class="verdict ${checked.verdict}" id="check-verdict" role="status">${verdict}</p>
    ${more === '' ? nothing : html`<p id="check-should">${more}</p>`} ${renderInvented(desk)}
    ${renderTold(desk)} ${renderOpen(desk)}
    ${checked.verdict === 'right' ? nothing : renderDifferingLines(checked, desk)} ${renderWhy(checked, desk)}
    ${renderSurprises(checked, desk)} ${renderRightBill(checked, desk)}
  </div>`;
}
