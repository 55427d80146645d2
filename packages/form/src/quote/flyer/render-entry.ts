import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderInput } from '../../render/field.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { renderNotOpened } from '../../render/refusal.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { offerText } from '../../writing/writing.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';
import type { FlyerDesk } from './flyer-desk.ts';
import { FLYER_FIELDS, flyerFieldId, WORDS_LABEL, type FlyerField } from './flyer-fields.ts';

/** The texts that a finding offers in the place of what was typed. */
function offers({ code, offer, values }: Finding): readonly string[] {
  if (code === 'reading/comma-unclear') return [values['grouped'] ?? '', values['decimal'] ?? ''];
  return offer === undefined ? [] : [offer];
}

function renderFinding(finding: Finding, { claim }: FlyerField, desk: FlyerDesk): TemplateResult {
  const { writing } = desk.view;
  const isOpen = isUnfinished(finding);
  return html`<div class="finding ${isOpen ? 'unfinished' : 'error'}" data-code=${finding.code}>
    <p>
      <strong class="mark">${isOpen ? 'Still to type' : 'To set right'}:</strong>
      ${isOpen ? finding.remedy : quoteFindingText(finding, writing)}
    </p>
    <div class="fixes">
      ${offers(finding).map((offer) =>
        renderButton(`Use ${offerText(offer, writing)}`, () => {
          desk.type(claim, offer);
          desk.focusLine(claim);
        }),
      )}
    </div>
  </div>`;
}

/** How a number was read, where it does not stand there just so. */
function echoOf({ claim }: FlyerField, { flyer, view }: FlyerDesk): string {
  const read = view.usable[claim];
  return read === undefined || read === flyer[claim] ? '' : `Read as ${view.writing.number(read)}`;
}

function renderLine(field: FlyerField, desk: FlyerDesk): TemplateResult {
  const { claim, label, hint } = field;
  const id = flyerFieldId(claim);
  const findings = desk.view.findings.filter(({ path }) => path[0] === claim);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <span class="hint" id="${id}-hint">${hint}</span>
    ${renderInput({
      id,
      label,
      hint,
      value: desk.flyer[claim] ?? '',
      echo: '',
      findings,
      inputMode: 'decimal',
      input: (text) => {
        desk.type(claim, text);
      },
    })}
    <span class="echo" id="${id}-echo">${echoOf(field, desk)}</span>
    ${
      findings.length === 0
        ? nothing
        : html`<div class="findings" id="${id}-findings">
            ${findings.map((finding) => renderFinding(finding, field, desk))}
          </div>`
    }
  </div>`;
}

function renderWords(desk: FlyerDesk): TemplateResult {
  const id = flyerFieldId('words');
  return html`<div class="field whole-line">
    <label for=${id}>${WORDS_LABEL}</label>
    <span class="hint" id="${id}-hint">what it promises, word for word</span>
    <textarea
      id=${id}
      rows="3"
      aria-describedby="${id}-hint"
      .value=${desk.flyer.words ?? ''}
      @input=${(event: Event) => {
        desk.type('words', typed(event));
      }}
    ></textarea>
  </div>`;
}

function renderRefused({ refused, view }: FlyerDesk): TemplateResult | typeof nothing {
  if (refused?.file.kind !== 'refused') return nothing;
  const { reason, findings } = refused.file;
  return renderNotOpened({
    id: 'flyer-refused',
    name: refused.name,
    kept: 'the flyer is as it was',
    reason,
    findings: findings.map((finding) => quoteFindingText(finding, view.writing)),
  });
}

function renderShelf(desk: FlyerDesk): TemplateResult {
  return html`<div class="shelf">
      ${renderButton('Save the flyer as a file', desk.saveFile, { id: 'flyer-save', className: 'quiet' })}
      <label class="file" for="flyer-open">Open a saved flyer</label>
      ${renderFileInput('flyer-open', desk.openFile)}
      ${
        desk.view.isBlank
          ? nothing
          : renderButton('Take the flyer out', desk.takeOut, { id: 'flyer-take-out', className: 'quiet' })
      }
    </div>
    ${
      desk.before === ''
        ? nothing
        : html`<p class="undo" role="status">
            ${desk.before} ${renderButton('Put it back', desk.putBack, { id: 'flyer-put-back' })}
          </p>`
    }
    ${renderRefused(desk)}`;
}

/** Where a flyer is typed in, line by line, opened, saved and taken out. */
export function renderEntry(desk: FlyerDesk): TemplateResult {
  return html`<section class="entry" aria-labelledby="flyer-entry">
    <h4 id="flyer-entry">What it says</h4>
    <p class="hint">Type only what stands there; what it does not say stays blank.</p>
    <div class="pair">${FLYER_FIELDS.map((field) => renderLine(field, desk))} ${renderWords(desk)}</div>
    ${renderShelf(desk)}
  </section>`;
}
