import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { putAt } from '../document/edit-quote.ts';
import { plantFields, useFields } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderMonths } from './months.ts';
import { renderFields } from './quote-field.ts';

const FILLS = [
  ['', 'They are not filled: ask for the bills'],
  ['mean', 'By the mean of the months known'],
  ['neighbours', 'By the mean of the nearest months known'],
] as const;

/** Twelve months of use. */
export function renderUse(desk: QuoteDesk): TemplateResult {
  const { bookUse, document } = desk;
  const rest = useFields().slice(12);
  return html`
    ${renderMonths(['use', 'months'], { what: 'the units used in', unit: ' units' }, desk)}
    ${
      bookUse === null
        ? nothing
        : renderButton('Take the use of the book', () => {
            const { use } = document;
            desk.take(
              {
                quote: putAt(desk.document, ['use'], bookUse),
                putBack: (held) => putAt(held, ['use'], use),
              },
              'The use typed before was put aside.',
            );
          })
    }
    ${renderPlainSelect({
      id: 'quote-use-fill',
      label: 'Months without a bill',
      value: document.use.fill ?? '',
      options: FILLS,
      choose: (value) => {
        desk.change(putAt(desk.document, ['use', 'fill'], value === '' ? undefined : value));
      },
    })}
    ${renderFields(rest, desk)}
  `;
}

/** The plant that is offered. */
export const renderPlant = (desk: QuoteDesk): TemplateResult => renderFields(plantFields(), desk);
