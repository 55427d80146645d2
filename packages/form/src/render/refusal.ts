import { html, nothing, type TemplateResult } from 'lit';

/** A file that was chosen and not taken. */
export interface Refusal {
  readonly name: string;
  /** Why, a sentence each. */
  readonly findings: readonly string[];
}

const items = (texts: readonly string[]): readonly TemplateResult[] =>
  texts.map((text) => html`<li>${text}</li>`);

/** Why something cannot be opened: what it is, and then all that is wrong in it. */
export function renderReasons(reason: string, findings: readonly string[]): TemplateResult {
  return html`${reason}
  ${
    findings.length === 0
      ? nothing
      : html`<ul>
          ${items(findings)}
        </ul>`
  }`;
}

/**
 * A file that was not opened, and that nothing was lost by it.
 *
 * @param refusal  with `kept`, what is as it was: "the quote is as it was"; and `reason`, what the file is
 */
export function renderNotOpened({
  id,
  name,
  kept,
  reason,
  findings,
}: Refusal & {
  readonly id: string;
  readonly kept: string;
  readonly reason: string;
}): TemplateResult {
  return html`<div class="notice" role="alert" id=${id}>
    <strong>“${name}” was not opened; ${kept}.</strong> ${renderReasons(reason, findings)}
  </div>`;
}

/** A file of a tariff or of rules that was opened and cannot be used, with all that is wrong in it. */
export function renderNotUsable({ name, findings }: Refusal): TemplateResult {
  return html`<div class="finding error" role="alert">
    <p><strong class="mark">“${name}” cannot be used:</strong></p>
    <ol class="file-findings">
      ${items(findings)}
    </ol>
  </div>`;
}
