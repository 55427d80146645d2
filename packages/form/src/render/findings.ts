import { html, nothing, type TemplateResult } from 'lit';
import { describeFinding, type Finding } from '@unitbook/engine';
import { fixesFor, isAnswered } from '../view/fixes.ts';
import { localDates } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

const METER_CHANGED =
  'Find the last figures of the old meter and the first of the new one: whoever changed it writes both ' +
  'down, for all registers. Type the old meter’s last figures here, then press “Start another book” above: ' +
  'this one is put aside. The first figures of the new meter open the other, and the credit carried forward ' +
  'is its opening credit.';

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A finding in one breath: what was found, what was expected, what to do. */
export function findingText(finding: Finding, { view: { writing } }: Pick<Desk, 'view'>): string {
  const { found, expected, remedy } = describeFinding(finding, writing.number);
  return localDates(`${capital(found)}. Expected: ${expected}. ${remedy}`, writing);
}

/** Whether a finding only says that something has still to be typed. */
export function isUnfinished({ code, values }: Finding): boolean {
  return (
    code === 'reading/missing-register' ||
    (code === 'reading/no-day' && values['value'] === '') ||
    code === 'account/number-missing'
  );
}

function belowBeforeChoices(finding: Finding, fieldId: string, desk: Desk): TemplateResult {
  const key = `changed-${finding.path.join('-')}`;
  const isOpen = desk.isOpen(key, false);
  return html`
    <button
      type="button"
      aria-expanded=${String(isOpen)}
      @click=${() => {
        desk.setOpen(key, !isOpen);
      }}
    >
      The meter was changed
    </button>
    ${renderButton('A digit is mistyped: correct it', () => {
      desk.setOpen(key, false);
      desk.focusField(fieldId);
    })}
    ${isOpen ? html`<p class="advice">${METER_CHANGED}</p>` : nothing}
  `;
}

function renderFinding(finding: Finding, fieldId: string, desk: Desk): TemplateResult {
  const { household, view } = desk;
  const isKept = isAnswered(finding, household);
  const kind = isKept ? 'note' : isUnfinished(finding) ? 'unfinished' : finding.severity;
  const fixes = fixesFor(finding, household, view.writing);
  const text = isKept
    ? `Kept as it is: ${localDates(describeFinding(finding, view.writing.number).found, view.writing)}.`
    : kind === 'unfinished'
      ? finding.remedy
      : findingText(finding, desk);
  return html`
    <div class="finding ${kind}" data-code=${finding.code}>
      <p>
        <strong class="mark">${kind === 'unfinished' ? 'Still to type' : MARKS[finding.severity]}:</strong>
        ${text}
      </p>
      <div class="fixes">
        ${fixes.map((fix) =>
          renderButton(fix.label, (event) => {
            desk.fix(fix.apply(desk.household));
            // The button goes with its finding: a keyboard goes on from the field. A finger stays where
            // it is, since focus would bring up the keys.
            if (event.detail === 0) desk.focusField(fieldId);
          }),
        )}
        ${finding.code === 'reading/below-before' ? belowBeforeChoices(finding, fieldId, desk) : nothing}
      </div>
    </div>
  `;
}

/**
 * Findings beneath a field, each with its buttons.
 *
 * @param findings  about the field
 * @param fieldId   of the input they are about
 */
export function renderFindings(
  findings: readonly Finding[],
  fieldId: string,
  desk: Desk,
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  return html`<div class="findings" id="${fieldId}-findings">
    ${findings.map((finding) => renderFinding(finding, fieldId, desk))}
  </div>`;
}
