import { html, nothing, type TemplateResult } from 'lit';

/** A line of facts: what it is, and how much or who. */
export type Fact = readonly [label: string, text: string];

/** Facts beneath each other; those of which nothing is said are left out. */
export function renderFacts(facts: readonly Fact[]): TemplateResult {
  return html`<dl class="facts">
    ${facts.map(([label, text]) =>
      text === ''
        ? nothing
        : html`<div>
            <dt>${label}</dt>
            <dd>${text}</dd>
          </div>`,
    )}
  </dl>`;
}

/**
 * A numbered part of the printed quote.
 *
 * @param item  its place in the list of what a quote has to say, from 1 on
 */
export function renderItem(item: number, head: string, content: unknown): TemplateResult {
  return html`<section class="item" data-item=${item}>
    <h4>${item}. ${head}</h4>
    ${content}
  </section>`;
}

/** A table on paper. */
export function renderPaperTable(
  heads: readonly string[],
  lines: readonly (readonly string[])[],
  sum: readonly string[] | null = null,
): TemplateResult {
  const row = ([first = '', ...cells]: readonly string[]): TemplateResult =>
    html`<th scope="row">${first}</th>
      ${cells.map((cell) => html`<td>${cell}</td>`)}`;
  // On a narrow screen it scrolls by itself; whoever uses a keyboard has to be able to come to it.
  return html`<div class="room" role="region" aria-label=${heads.join(', ')} tabindex="0">
    <table>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${lines.map(
          (line) =>
            html`<tr>
              ${row(line)}
            </tr>`,
        )}
        ${
          sum === null
            ? nothing
            : html`<tr class="closed">
                ${row(sum)}
              </tr>`
        }
      </tbody>
    </table>
  </div>`;
}
