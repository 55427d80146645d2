import { html, nothing, type TemplateResult } from 'lit';
import { renderFileInput } from '../../render/file-input.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import type { TariffAtHand } from '../state/tariffs-at-hand.ts';
import { renderWrong } from './quote-tariff.ts';

/** What keeps a tariff that is ticked from being compared. */
function renderState(
  { name, isTicked, view }: TariffAtHand,
  desk: QuoteDesk,
): TemplateResult | typeof nothing {
  if (!isTicked) return nothing;
  switch (view.kind) {
    case 'opening':
      return html`<p class="hint">Opening the tariff …</p>`;
    case 'failed':
      return html`<p class="finding error">
        ${name} could not be fetched (${view.reason}). Open the page once while online, then tick it again.
      </p>`;
    case 'wrong':
      return renderWrong(name, view.findings, desk);
    default:
      return nothing;
  }
}

function renderTick(tariff: TariffAtHand, desk: QuoteDesk): TemplateResult {
  const id = `quote-against-${tariff.key}`;
  return html`<div class="field tick">
      <input
        id=${id}
        type="checkbox"
        .checked=${tariff.isTicked}
        @change=${(event: Event) => {
          desk.others.tick(tariff.key, (event.currentTarget as HTMLInputElement).checked);
        }}
      />
      <label for=${id}>${tariff.name}</label>
    </div>
    ${renderState(tariff, desk)}`;
}

/** Other tariffs that the customer could choose: each that is ticked is compared with that of the quote. */
export function renderOthers(desk: QuoteDesk): TemplateResult {
  const { list, refused, openFile } = desk.others;
  return html`
    <fieldset class="ticks">
      <legend>Compare the quote under</legend>
      ${list.length === 0 ? html`<p class="hint">No other tariff is at hand: open its file.</p>` : nothing}
      ${list.map((tariff) => renderTick(tariff, desk))}
    </fieldset>
    <div class="field">
      <label for="quote-against-file">Or another tariff’s file</label>
      ${renderFileInput('quote-against-file', openFile)}
    </div>
    ${refused === null ? nothing : renderWrong(refused.name, refused.findings, desk)}
    <p class="hint">
      The same house, plant and price under each. What is ticked here is kept for this visit only, and is not
      in the quote’s file.
    </p>
  `;
}
