import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { nameOf, otherTariffNamed } from '../document/tariff-of-quote.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';

const OWN = 'own-tariff-file';

/** A tariff that cannot be used, and why; '' names the one that lies open. */
export function renderWrong(name: string, findings: readonly Finding[], { view }: QuoteDesk): TemplateResult {
  return html`<div class="finding error" role="alert">
    <p><strong class="mark">${name === '' ? 'This tariff' : `“${name}”`} cannot be used yet:</strong></p>
    <ol class="file-findings">
      ${findings.map((finding) => html`<li>${quoteFindingText(finding, view.writing)}</li>`)}
    </ol>
  </div>`;
}

function renderState(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { view } = desk.tariff;
  switch (view.kind) {
    case 'none':
      return html`<p class="hint">A quote is worked out from the bills of a tariff: choose it first.</p>`;
    case 'opening':
      return html`<p class="hint">Opening the tariff …</p>`;
    case 'open': {
      const { document } = view.tariff.tariff;
      return html`<p class="hint">
        ${document.supplier}${document.invented === true ? ', an invented place' : ''}. The quote’s file names
        its tariff and does not carry it: keep both.
      </p>`;
    }
    case 'unknown':
      return html`<p class="finding error">
        The tariff “${view.id}” is not among the examples. Choose another, or open its file.
      </p>`;
    case 'failed':
      return html`<p class="finding error">
        The tariff could not be fetched (${view.reason}). Open the page once while online, then choose it
        again.
      </p>`;
    case 'wrong':
      return renderWrong('', view.findings, desk);
  }
}

/** That the quote was worked out by another tariff than the one that lies open. */
function renderOther({ document, tariff }: QuoteDesk): TemplateResult | typeof nothing {
  const { chosen, choices, choose } = tariff;
  const other = otherTariffNamed(document, chosen);
  const own = nameOf(chosen, choices);
  if (other === '' || own === '') return nothing;
  return html`<div class="finding question" id="quote-other-tariff">
    <p>
      <strong class="mark">A question:</strong> this quote names the tariff “${other}”, and it is not the one
      that lies open: the bills here are by “${own}”. Choose the other above or open its file, or go on by
      this one.
    </p>
    ${renderButton('Go on by this one', () => {
      choose(chosen);
    })}
  </div>`;
}

/** The tariff of the bills: one of the examples, or a file. */
export function renderQuoteTariff(desk: QuoteDesk): TemplateResult {
  const { chosen, choices, refused, choose, openFile } = desk.tariff;
  const value = typeof chosen === 'string' ? chosen : OWN;
  return html`
    <div class="pair">
      <div class="field">
        <label for="quote-tariff">Tariff</label>
        <select
          id="quote-tariff"
          @change=${(event: Event) => {
            const id = typed(event);
            if (id !== OWN) choose(id);
          }}
        >
          ${value === '' ? html`<option value="" selected>Choose …</option>` : nothing}
          ${choices.map(({ id, name }) => html`<option value=${id} .selected=${id === value}>${name}</option>`)}
          ${
            typeof chosen === 'string'
              ? nothing
              : html`<option value=${OWN} selected>${chosen.name} (its file)</option>`
          }
        </select>
      </div>
      <div class="field">
        <label for="quote-tariff-file">Or a tariff file</label>
        ${renderFileInput('quote-tariff-file', openFile)}
      </div>
    </div>
    ${refused === null ? nothing : renderWrong(refused.name, refused.findings, desk)} ${renderOther(desk)}
    ${renderState(desk)}
  `;
}
