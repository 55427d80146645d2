import { describeFinding, type Finding } from '@unitbook/engine';
import { html, nothing, type TemplateResult } from 'lit';
import { localDates, type Writing } from '../writing/writing.ts';
import { shownFindings, type FindingGroup } from './finding-groups.ts';
import { counted } from './words.ts';

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

/** What was found, what was expected and what to do, with dates as the reader writes them. */
function foundText(finding: Finding, writing: Writing): string {
  const { found, expected, remedy } = describeFinding(finding, writing.number);
  const capital = `${found.charAt(0).toUpperCase()}${found.slice(1)}`;
  return localDates(`${capital}. Expected: ${expected}. ${remedy}`, writing);
}

const moreText = ({ more, lines }: FindingGroup): string =>
  more === 0 ? '' : ` And ${String(more)} more like it${lines === '' ? '' : `, on ${lines}`}.`;

function renderGroup(group: FindingGroup, writing: Writing): TemplateResult {
  const { finding } = group;
  const { severity, code, position } = finding;
  return html`<li class="finding ${severity}" data-code=${code}>
    <p>
      <strong class="mark">${MARKS[severity]}:</strong>
      ${position === undefined ? nothing : html`<span>Line ${position.line}, column ${position.column}:</span>`}
      ${foundText(finding, writing)}${moreText(group)}
    </p>
  </li>`;
}

/** What was found: errors first, of many the first of each kind, and how many there are besides. */
export function renderFound(findings: readonly Finding[], writing: Writing): TemplateResult | typeof nothing {
  if (findings.length === 0) return nothing;
  const { groups, left } = shownFindings(findings);
  return html`
    <ul class="findings">
      ${groups.map((group) => renderGroup(group, writing))}
    </ul>
    ${left === 0 ? nothing : html`<p class="say">And ${counted(left, 'other finding')} of other kinds.</p>`}
  `;
}
