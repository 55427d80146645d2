import { html, type TemplateResult } from 'lit';
import { MONTH_KEYS, type Path } from '@unitbook/engine';
import { pastedCells } from '../../plant/document/edit-plant.ts';
import { keptNumber } from '../../plant/document/typed-texts.ts';
import { putAt, valueAt } from '../document/edit-quote.ts';
import { monthFields } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderQuoteField } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

/** Twelve fields; a list that was copied from a sheet fills them from the one it is pasted in. */
export function renderMonths(
  path: Path,
  { what, unit }: { readonly what: string; readonly unit: string },
  desk: QuoteDesk,
): TemplateResult {
  const paste = (event: ClipboardEvent, at: number): void => {
    const cells = pastedCells(event.clipboardData?.getData('text') ?? '');
    if (cells.length < 2) return;
    event.preventDefault();
    const held = (valueAt(desk.document, path) ?? {}) as Readonly<Record<string, string>>;
    const filled = MONTH_KEYS.slice(at).flatMap((key, place) =>
      cells[place] === undefined ? [] : [[key, keptNumber(cells[place])] as const],
    );
    desk.change(putAt(desk.document, path, { ...held, ...Object.fromEntries(filled) }));
  };
  return html`
    <div class="twelve" role="group" aria-label="January to December">
      ${monthFields(path, what, unit).map(
        (field, at) =>
          html`<div
            @paste=${(event: ClipboardEvent) => {
              paste(event, at);
            }}
          >
            ${renderQuoteField(field, desk)}
          </div>`,
      )}
    </div>
    ${renderFindingsAt(path, desk)}
    <p class="hint">Twelve numbers copied from a sheet can be pasted into January.</p>
  `;
}
