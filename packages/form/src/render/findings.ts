import { html, nothing, type TemplateResult } from 'lit';
import { describeFinding, type Finding } from '@unitbook/engine';
import type { Fix } from '../view/fix.ts';
import { fixesFor, isAnswered } from '../view/fixes.ts';
import { isUnfinished } from '../view/unfinished.ts';
import { localDates, type Writing } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A finding in one breath: what was found, what was expected, what to do. */
export function findingText(
  finding: Finding,
  { view: { writing } }: { readonly view: { readonly writing: Writing } },
): string {
  const { found, expected, remedy } = describeFinding(finding, writing.number);
  return localDates(`${capital(found)}. Expected: ${expected}. ${remedy}`, writing);
}

/** Press a fix, and go on from the field that it is about or that it names. */
function press(fix: Fix, fieldId: string, event: MouseEvent, desk: Desk): void {
  const household = fix.apply(desk.household);
  if (household !== desk.household) desk.fix(household);
  if (fix.show !== undefined) desk.select(fix.show);
  for (const key of fix.opens ?? []) desk.setOpen(key, true);
  // The button goes with its finding: a keyboard goes on from the field. A finger stays where it is, since
  // focus would bring up the keys; but a fix that wants something typed goes there.
  if (fix.focus !== undefined || event.detail === 0) desk.focusField(fix.focus ?? fieldId);
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
            press(fix, fieldId, event, desk);
          }),
        )}
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
