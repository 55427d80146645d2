import { html, nothing, type TemplateResult } from 'lit';
import type { RefusedTariff } from '../view/tariff-view.ts';
import { typed, type Desk } from './desk.ts';
import { renderFileInput } from './file-input.ts';
import { findingText } from './findings.ts';

const OWN = 'own-tariff-file';

function renderFileFindings({ name, findings }: RefusedTariff, desk: Desk): TemplateResult {
  return html`
    <div class="finding error" role="alert">
      <p>
        <strong class="mark">${name === '' ? 'This tariff file' : `“${name}”`} cannot be used yet:</strong>
        ${findings.length === 1 ? 'one thing' : `${String(findings.length)} things`} to set right in the file.
        ${name !== '' && desk.tariff.kind === 'open' ? 'The tariff chosen before still counts.' : nothing}
      </p>
      <ol class="file-findings">
        ${findings.map(
          (finding) =>
            html`<li>
              ${
                finding.position === undefined
                  ? nothing
                  : html`<span class="place"
                      >Line ${finding.position.line}, column ${finding.position.column}</span
                    >`
              }
              ${findingText(finding, desk)} <code>${finding.path.join('.')}</code>
            </li>`,
        )}
      </ol>
    </div>
  `;
}

function renderState(desk: Desk): TemplateResult | typeof nothing {
  const { tariff } = desk;
  switch (tariff.kind) {
    case 'none':
      return html`<p class="hint">Every bill needs its tariff: the supplier’s rates and rules.</p>`;
    case 'opening':
      return html`<p class="hint">Opening the tariff …</p>`;
    case 'open': {
      const { document } = tariff.tariff.tariff;
      return html`<p class="hint">
        ${document.supplier}${document.invented === true ? ', an invented place' : ''}; from
        ${Object.values(document.sources)
          .map((source) => source.title)
          .join(', ')}.
      </p>`;
    }
    case 'unknown':
      return html`<p class="finding error">
        This book uses the tariff “${tariff.id}”, which is not among the examples. Choose another, or open its
        file.
      </p>`;
    case 'failed':
      return html`<p class="finding error">
        The tariff could not be fetched (${tariff.reason}). Open the page once while online, then choose it
        again.
      </p>`;
    case 'wrong':
      return renderFileFindings({ name: '', findings: tariff.findings }, desk);
  }
}

/** The tariff: one of the examples, or a file of the homeowner's own. */
export function renderTariffChoice(desk: Desk): TemplateResult {
  const { tariff } = desk.household;
  const chosen = typeof tariff === 'string' ? tariff : OWN;
  return html`
    <div class="pair">
      <div class="field">
        <label for="tariff">Tariff</label>
        <select
          id="tariff"
          @change=${(event: Event) => {
            const id = typed(event);
            desk.setOpen('account', true);
            if (id !== OWN) desk.change({ ...desk.household, tariff: id });
          }}
        >
          ${chosen === '' ? html`<option value="" selected>Choose …</option>` : nothing}
          ${desk.tariffs.map(
            ({ id, name }) => html`<option value=${id} .selected=${id === chosen}>${name}</option>`,
          )}
          ${
            typeof tariff === 'string'
              ? nothing
              : html`<option value=${OWN} selected>${tariff.name} (your file)</option>`
          }
        </select>
      </div>
      <div class="field">
        <label for="tariff-file">Or a tariff file of your own</label>
        ${renderFileInput('tariff-file', desk.openTariffFile)}
      </div>
    </div>
    ${desk.refusedTariff === null ? nothing : renderFileFindings(desk.refusedTariff, desk)}
    ${renderState(desk)}
  `;
}
