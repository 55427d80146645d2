import { html, nothing, type TemplateResult } from 'lit';
import type { Path } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { addItem, fieldIdOf, takeAt, valueAt } from '../document/edit-quote.ts';
import type { QuoteField } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderFields } from './quote-field.ts';

/** A list of lines, each with its fields, a way out and a way to add one more. */
export interface Lines {
  readonly path: Path;
  readonly fieldsOf: (at: number) => readonly QuoteField[];
  readonly blank: unknown;
  readonly add: string;
  readonly takeOut: string;
  readonly told: string;
  /** How many have to stay. */
  readonly least?: number;
  readonly more?: (at: number) => unknown;
}

/** Lines of a list, with a button beneath them that adds one. */
export function renderLines(
  { path, fieldsOf, blank, add, takeOut, told, least = 0, more }: Lines,
  desk: QuoteDesk,
): TemplateResult {
  const list = (valueAt(desk.document, path) ?? []) as readonly unknown[];
  return html`
    ${list.map(
      (_, at) =>
        html`<div class="line" role="group" aria-label=${`${told} ${String(at + 1)}`}>
          ${renderFields(fieldsOf(at), desk)} ${more?.(at) ?? nothing}
          ${
            list.length <= least
              ? nothing
              : renderButton(
                  takeOut,
                  () => {
                    desk.take(
                      takeAt(desk.document, [...path, at]),
                      `${told} ${String(at + 1)} was taken out.`,
                    );
                  },
                  { className: 'quiet', about: `${told} ${String(at + 1)}` },
                )
          }
        </div>`,
    )}
    ${renderButton(add, () => {
      desk.change(addItem(desk.document, path, blank));
      const [first] = fieldsOf(list.length);
      if (first !== undefined) desk.focusField(fieldIdOf(first.path));
    })}
  `;
}
