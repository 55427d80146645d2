import { html, nothing, type TemplateResult } from 'lit';
import { nearestCauses, nearestWords, type BillExplanation, type CheckedBill } from '@unitbook/engine';
import type { CheckDesk } from '../check-desk.ts';
import {
  causeRows,
  CONFIDENCE_WORDS,
  deciderRows,
  evidenceOf,
  namesOf,
  sumRows,
} from '../view/cause-words.ts';

/** What each cause adds, and what they come to together. */
function renderParts(
  explanation: BillExplanation,
  checked: CheckedBill,
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const rows = sumRows(explanation, checked, desk.view.writing);
  if (rows.length === 0) return nothing;
  return html`<table class="parts">
    <thead>
      <tr>
        <th scope="col">Cause, in this order</th>
        <th scope="col">Adds</th>
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        ({ label, adds, isTogether }) =>
          html`<tr class=${isTogether ? 'together' : ''}>
            <th scope="row">${label}</th>
            <td>${adds}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Causes that together make every printed figure: a sentence each, how sure that is, what each adds. */
function renderExplanation(
  at: number,
  checked: CheckedBill,
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const explanation = checked.explanations[at];
  if (explanation === undefined) return nothing;
  const { attempt, confidence } = explanation;
  const { word, why } = CONFIDENCE_WORDS[confidence];
  return html`<div class="explanation" data-explanation=${at}>
    ${at === 0 ? nothing : html`<h4>Or</h4>`}
    ${causeRows(explanation, desk.view.writing).map(
      ({ name, what, adds }) =>
        html`<p class="cause"><strong>${name}${adds === '' ? '' : ` (${adds})`}:</strong> ${what}</p>`,
    )}
    <p class="confidence"><strong>${word}:</strong> ${why}</p>
    ${attempt.signs.map(
      ({ speaks, why: because }) =>
        html`<p class="sign"><strong>${speaks === 'for' ? 'For it:' : 'Against it:'}</strong> ${because}</p>`,
    )}
    ${renderParts(explanation, checked, desk)}
  </div>`;
}

function renderDeciders(checked: CheckedBill, desk: CheckDesk): TemplateResult | typeof nothing {
  const { explanations, facts } = checked;
  const rows = deciderRows(checked, facts.tariff, desk.view.writing);
  if (rows.length === 0) return nothing;
  return html`<section class="part" aria-labelledby="check-decides">
    <h3 class="sub" id="check-decides">What would decide</h3>
    <p class="hint">
      The bill does not print these. Whichever you can find out tells the explanations apart.
    </p>
    <div class="wide" role="region" aria-labelledby="check-decides" tabindex="0">
      <table class="deciders">
        <thead>
          <tr>
            <th scope="col">Figure</th>
            ${explanations.map((one) => html`<th scope="col">${namesOf(one)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({ label, values }) =>
              html`<tr>
                <th scope="row">${label}</th>
                ${values.map((value) => html`<td>${value}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </section>`;
}

/** Evidence by what it is, with a tick for what is at hand. */
function renderEvidence(
  explanations: readonly BillExplanation[],
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const all = [...new Set(explanations.flatMap(evidenceOf))];
  if (all.length === 0) return nothing;
  const wanted = all.filter((one) => !desk.held.has(one)).length;
  return html`<section class="part" aria-labelledby="check-evidence">
    <h3 class="sub" id="check-evidence">What shows it</h3>
    <p class="hint">
      Tick what you hold. ${wanted === 0 ? 'You hold all of it.' : `Still to get: ${String(wanted)}.`}
    </p>
    <ul class="evidence">
      ${all.map(
        (one, at) =>
          html`<li class="field tick">
            <input
              id="check-held-${at}"
              type="checkbox"
              .checked=${desk.held.has(one)}
              @change=${(event: Event) => {
                desk.hold(one, (event.currentTarget as HTMLInputElement).checked);
              }}
            />
            <label for="check-held-${at}"
              >${one}<span class="state">${desk.held.has(one) ? ', held' : ', to get'}</span></label
            >
          </li>`,
      )}
    </ul>
  </section>`;
}

/** Where nothing explains the bill: what comes nearest, and what to ask. */
function renderUnexplained({ nearest: all, facts }: CheckedBill): TemplateResult {
  const nearest = nearestCauses(all, facts.tariff);
  return html`<section class="part" aria-labelledby="check-unexplained">
    <h3 class="sub" id="check-unexplained">Not explained</h3>
    <p>
      No mistake that is known makes these figures, alone or together. Ask how the lines that differ were
      worked out.
    </p>
    ${
      nearest.length === 0
        ? nothing
        : html`<p class="hint">What comes nearest:</p>
            <ul class="nearest">
              ${nearest.map((one) => html`<li>${nearestWords(one)}</li>`)}
            </ul>`
    }
  </section>`;
}

/** Why a bill is wrong: causes, what would decide between them, and what shows it. */
export function renderWhy(checked: CheckedBill, desk: CheckDesk): TemplateResult | typeof nothing {
  const { explanations, verdict } = checked;
  if (verdict !== 'wrong') return nothing;
  if (desk.result?.isSearched !== true)
    return html`<p class="hint" role="status" id="check-searching">
      Looking for what makes these figures …
    </p>`;
  if (explanations.length === 0) return renderUnexplained(checked);
  return html`<section class="part" aria-labelledby="check-why">
      <h3 class="sub" id="check-why">Why</h3>
      ${explanations.map((_, at) => renderExplanation(at, checked, desk))}
    </section>
    ${renderDeciders(checked, desk)} ${renderEvidence(explanations, desk)}`;
}
