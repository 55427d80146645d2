import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { putAt } from '../document/edit-quote.ts';
import {
  lifeFields,
  powerFields,
  riseFields,
  settlementFields,
  strayRises,
} from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

/** A way out for rises of another tariff, all at once. */
function renderStrays(desk: QuoteDesk): TemplateResult | typeof nothing {
  const strays = strayRises(desk.view.source);
  if (strays.length === 0) return nothing;
  const { charges } = desk.document.escalation;
  const left = Object.fromEntries(Object.entries(charges).filter(([id]) => !strays.includes(id)));
  return html`<p class="finding question">
    <strong class="mark">A question:</strong> rises of ${strays.join(', ')} are typed, and this tariff has no
    such charge that rises. Leave them out, or choose the tariff that they belong to.
    ${renderButton('Leave them out', () => {
      desk.take(
        {
          quote: putAt(desk.document, ['escalation', 'charges'], left),
          putBack: (held) => putAt(held, ['escalation', 'charges'], charges),
        },
        'The rises of other charges were put aside.',
      );
    })}
  </p>`;
}

/** How rates rise, charge by charge of the tariff. */
export function renderRises(desk: QuoteDesk): TemplateResult {
  const { source } = desk.view;
  const follow = source.charges.filter(({ follows }) => follows !== '');
  return html`
    ${
      source.charges.length === 0
        ? html`<p class="hint">Choose a tariff first: its charges are listed here.</p>`
        : html`<p class="hint">Each charge of the tariff; blank stays as it is today.</p>`
    }
    ${renderStrays(desk)} ${renderFields(riseFields(source), desk)}
    ${
      follow.length === 0
        ? nothing
        : html`<ul class="follows">
            ${follow.map(({ label, follows }) => html`<li>${label} ${follows}: no rise of its own.</li>`)}
          </ul>`
    }
  `;
}

/** What the tariff has to know of the account: its powers, and the day that it settles on. */
export const renderAccount = (desk: QuoteDesk): TemplateResult =>
  renderFields([...powerFields(desk.view.source), ...settlementFields()], desk);

/** How long is looked ahead, and how bills and units are rounded. */
export function renderLife(desk: QuoteDesk): TemplateResult {
  const { payable, units = 'whole' } = desk.document;
  return html`${renderFields(lifeFields().slice(1), desk)} ${renderFindingsAt(['years'], desk)}
    <div class="pair">
      ${renderPlainSelect({
        id: 'quote-payable',
        label: 'Bills are counted',
        value: payable,
        options: [
          ['as-billed', 'as the tariff rounds what is payable'],
          ['before-rounding', 'before the total is rounded'],
        ],
        choose: (value) => {
          desk.change(putAt(desk.document, ['payable'], value));
        },
      })}
      ${renderPlainSelect({
        id: 'quote-units',
        label: 'Units of a month are',
        value: units,
        options: [
          ['whole', 'whole units'],
          ['thousandths', 'thousandths of a unit'],
        ],
        choose: (value) => {
          desk.change(putAt(desk.document, ['units'], value === 'whole' ? undefined : value));
        },
      })}
    </div>`;
}
