import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { isUnfinished } from '../../view/unfinished.ts';
import { offerText } from '../../writing/writing.ts';
import type { CheckDesk } from '../check-desk.ts';
import { allFields } from '../document/line-fields.ts';
import { checkFindingText } from '../view/finding-words.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

const keyOf = ({ path }: Pick<Finding, 'path'>): string => path.join('.');

/** What is to be said of the bill that lies open, with paths into it: of what was typed, then of what came of it. */
export function findingsOfBill({ bill, result, isStale }: CheckDesk): readonly Finding[] {
  const later = isStale ? [] : (result?.checked.findings ?? []);
  const own = later.map((one) =>
    one.path[0] === 'bills' ? { ...one, path: bill.placeOf(one.path.slice(2)) } : one,
  );
  return [...bill.findings, ...own];
}

/** What is to be said at a field. */
export function findingsAt(path: Finding['path'], desk: CheckDesk): readonly Finding[] {
  const key = path.join('.');
  return findingsOfBill(desk).filter((finding) => keyOf(finding) === key);
}

/** What is to be said of a bill that is about none of its fields. */
export function findingsOfNoField(desk: CheckDesk): readonly Finding[] {
  const known = new Set(allFields(desk.bill.form).map(keyOf));
  return findingsOfBill(desk).filter((finding) => !known.has(keyOf(finding)));
}

/** The texts that a finding offers in the place of what was typed. */
function offers({ code, offer, values }: Finding): readonly string[] {
  if (code === 'reading/comma-unclear') return [values['grouped'] ?? '', values['decimal'] ?? ''];
  return offer === undefined ? [] : [offer];
}

/** One finding in words, with its mark. */
export function renderFinding(
  finding: Finding,
  { view: { writing } }: CheckDesk,
  put: (text: string) => void = () => undefined,
): TemplateResult {
  const kind = isUnfinished(finding) ? 'unfinished' : finding.severity;
  const text = kind === 'unfinished' ? finding.remedy : checkFindingText(finding, writing);
  return html`<div class="finding ${kind}" data-code=${finding.code}>
    <p>
      <strong class="mark">${kind === 'unfinished' ? 'Still to type' : MARKS[finding.severity]}:</strong>
      ${text}
    </p>
    <div class="fixes">
      ${offers(finding).map((offer) =>
        renderButton(`Use ${offerText(offer, writing)}`, () => {
          put(offer);
        }),
      )}
    </div>
  </div>`;
}

/** Findings beneath a field. */
export function renderFindings(
  findings: readonly Finding[],
  id: string,
  desk: CheckDesk,
  put: (text: string) => void,
): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  return html`<div class="findings" id="${id}-findings">
    ${findings.map((finding) => renderFinding(finding, desk, put))}
  </div>`;
}
