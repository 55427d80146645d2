import { html, nothing, type TemplateResult } from 'lit';
import type { Finding, Path } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { offerText } from '../../writing/writing.ts';
import { fieldIdOf, putAt } from '../document/edit-quote.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

/** The texts that a finding offers in the place of what was typed. */
function offers({ code, offer, values }: Finding): readonly string[] {
  if (code === 'reading/comma-unclear') return [values['grouped'] ?? '', values['decimal'] ?? ''];
  return offer === undefined ? [] : [offer];
}

/** What is to be said at a place of the quote. */
export function findingsAt(path: Path, { view }: QuoteDesk): readonly Finding[] {
  const key = path.join('.');
  return view.findings.filter((finding) => finding.path.join('.') === key);
}

/** One finding in words, with its mark. */
export function renderQuoteFinding(finding: Finding, desk: QuoteDesk): TemplateResult {
  const { writing } = desk.view;
  const kind = isUnfinished(finding) ? 'unfinished' : finding.severity;
  const text = kind === 'unfinished' ? finding.remedy : quoteFindingText(finding, writing);
  return html`
    <div class="finding ${kind}" data-code=${finding.code}>
      <p>
        <strong class="mark">${kind === 'unfinished' ? 'Still to type' : MARKS[finding.severity]}:</strong>
        ${text}
      </p>
      <div class="fixes">
        ${offers(finding).map((offer) =>
          renderButton(`Use ${offerText(offer, writing)}`, (event) => {
            desk.change(putAt(desk.document, finding.path, offer));
            if (event.detail === 0) desk.focusField(fieldIdOf(finding.path));
          }),
        )}
      </div>
    </div>
  `;
}

/** Findings beneath what they are about. */
export function renderFindingsAt(path: Path, desk: QuoteDesk): TemplateResult | typeof nothing {
  const findings = findingsAt(path, desk);
  if (findings.length === 0) return nothing;
  return html`<div class="findings" id="${fieldIdOf(path)}-findings">
    ${findings.map((finding) => renderQuoteFinding(finding, desk))}
  </div>`;
}
