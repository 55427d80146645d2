import { html, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { BLANK_PARTS } from '../document/blank-quote.ts';
import { fieldIdOf, putAt, takeAt } from '../document/edit-quote.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderFindingsAt } from './quote-findings.ts';

type Part = keyof typeof BLANK_PARTS;

/** A part that may be left out: a button to add it, or its content and a way out. */
export function renderPart(
  part: Part,
  { add, takeOut, told }: { readonly add: string; readonly takeOut: string; readonly told: string },
  content: () => unknown,
  desk: QuoteDesk,
): TemplateResult {
  if (desk.document[part] === undefined)
    return html`${renderButton(add, () => {
      desk.change(putAt(desk.document, [part], BLANK_PARTS[part]));
      const [first = ''] = Object.keys(BLANK_PARTS[part]);
      desk.focusField(fieldIdOf([part, first]));
    })}`;
  return html`${content()} ${renderFindingsAt([part], desk)}
  ${renderButton(
    takeOut,
    () => {
      desk.take(takeAt(desk.document, [part]), told);
    },
    { className: 'quiet' },
  )}`;
}
