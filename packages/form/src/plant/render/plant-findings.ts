import { html, nothing, type TemplateResult } from 'lit';
import type { Finding, Path } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { offerText } from '../../writing/writing.ts';
import { fieldIdOf } from '../document/edit-plant.ts';
import { putAt } from '../document/plant-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { plantFindingText } from '../view/finding-words.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

/** The texts that a finding offers in the place of what was typed. */
function offers({ code, offer, values }: Finding): readonly string[] {
  if (code === 'reading/comma-unclear') return [values['grouped'] ?? '', values['decimal'] ?? ''];
  return offer === undefined ? [] : [offer];
}

/** What is typed in a field right now is not wrong yet: the rest of it is still to come. */
function whileTyping(finding: Finding, { typing }: PlantDesk): Finding {
  const isTyped = finding.severity === 'error' && fieldIdOf(finding.path) === typing;
  return isTyped ? { ...finding, code: 'account/number-missing', remedy: 'the rest of it.' } : finding;
}

/** What is to be said at a place of the document. */
export function findingsAt(path: Path, desk: PlantDesk): readonly Finding[] {
  const key = path.join('.');
  return desk.view.findings
    .filter((finding) => finding.path.join('.') === key)
    .map((finding) => whileTyping(finding, desk));
}

/** One finding in words, with its mark. */
export function renderPlantFinding(finding: Finding, desk: PlantDesk): TemplateResult {
  const kind = isUnfinished(finding) ? 'unfinished' : finding.severity;
  const text = kind === 'unfinished' ? finding.remedy : plantFindingText(finding, desk.view.writing);
  return html`
    <div class="finding ${kind}" data-code=${finding.code}>
      <p>
        <strong class="mark">${kind === 'unfinished' ? 'Still to type' : MARKS[finding.severity]}:</strong>
        ${text}
      </p>
      <div class="fixes">
        ${offers(finding).map((offer) =>
          renderButton(`Use ${offerText(offer, desk.view.writing)}`, (event) => {
            desk.change(putAt(desk.view.document, finding.path, offer));
            if (event.detail === 0) desk.focusField(fieldIdOf(finding.path));
          }),
        )}
      </div>
    </div>
  `;
}

/** Findings beneath what they are about. */
export function renderFindingsOf(
  findings: readonly Finding[],
  id: string,
  desk: PlantDesk,
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  return html`<div class="findings" id="${id}-findings">
    ${findings.map((finding) => renderPlantFinding(finding, desk))}
  </div>`;
}
