import { html, nothing, type TemplateResult } from 'lit';
import type { Writing } from '../writing/writing.ts';
import type { LayoutDraft } from './layout-draft.ts';
import type { LayoutCheck } from './panel.ts';
import { renderHeading, renderWide } from './parts.ts';
import { firstLines, type Preview } from './preview.ts';
import { renderFound } from './render-found.ts';

/** Lines of the file that are shown as they stand, and findings about the first of them. */
const LINES = 4;
const FINDINGS = 3;

function renderRows({ columns, rows }: Preview): TemplateResult {
  return renderWide(
    'The first rows as they would be read',
    html`<table>
      <thead>
        <tr>
          <th scope="col">When</th>
          ${columns.map(({ name, words }) => html`<th scope="col">${words}<br />${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ moment, values }) =>
            html`<tr>
              <th scope="row">${moment}</th>
              ${values.map((value) => html`<td>${value === '' ? '–' : value}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`,
  );
}

/** The first lines of a table as they stand in the file, and as they would be read. */
export function renderPreview(
  { head }: LayoutDraft,
  { preview }: LayoutCheck,
  writing: Writing,
): TemplateResult {
  return html`
    ${renderHeading('The first rows')}
    <p class="hint">As they stand in the file:</p>
    <pre
      tabindex="0"
      role="region"
      aria-label="First lines of the file"
      .textContent=${firstLines(head, LINES).join('\n')}
    ></pre>
    ${
      preview === null
        ? nothing
        : html`
            <p class="hint">As they would be read, in units:</p>
            ${preview.rows.length === 0 ? html`<p class="say">Nothing could be read.</p>` : renderRows(preview)}
            ${renderFound(preview.findings.slice(0, FINDINGS), writing)}
          `
    }
  `;
}
