import { html, nothing, type TemplateResult } from 'lit';
import type { QuoteDocument } from '@unitbook/engine';
import { renderPlainSelect } from '../../render/select.ts';
import { fieldIdOf, putAt } from '../document/edit-quote.ts';
import {
  loanFields,
  priceFields,
  replacementFields,
  subsidyFields,
  tierFields,
  upkeepFields,
} from '../document/money-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderFields } from './quote-field.ts';
import { renderLines } from './lines.ts';
import { renderPart } from './part.ts';

function renderFixed(at: number, desk: QuoteDesk): TemplateResult {
  const id = fieldIdOf(['price', at, 'fixed']);
  return html`<div class="field tick">
    <input
      id=${id}
      type="checkbox"
      .checked=${desk.document.price[at]?.fixed === true}
      @change=${(event: Event) => {
        const isOn = (event.currentTarget as HTMLInputElement).checked;
        desk.change(putAt(desk.document, ['price', at, 'fixed'], isOn ? true : undefined));
      }}
    />
    <label for=${id}>The same for any size of plant</label>
  </div>`;
}

/** The price item by item. */
export const renderPrice = (desk: QuoteDesk): TemplateResult =>
  renderLines(
    {
      path: ['price'],
      fieldsOf: priceFields,
      blank: { item: '', amount: '' },
      add: 'Add an item',
      takeOut: 'Take this item out',
      told: 'Item',
      least: 1,
      more: (at) => renderFixed(at, desk),
    },
    desk,
  );

function renderTiers(desk: QuoteDesk): TemplateResult | typeof nothing {
  if (desk.document.subsidy?.tiers === undefined) return nothing;
  return renderLines(
    {
      path: ['subsidy', 'tiers'],
      fieldsOf: tierFields,
      blank: { perKilowatt: '' },
      add: 'Add a tier',
      takeOut: 'Take this tier out',
      told: 'Tier',
      least: 1,
    },
    desk,
  );
}

/** The subsidy said another way: what was typed for the one before can be put back. */
function saySubsidyBy(kind: string, subsidy: NonNullable<QuoteDocument['subsidy']>, desk: QuoteDesk): void {
  const { paidAfter, to, source, most } = subsidy;
  const own = kind === 'tiers' ? { tiers: [{ perKilowatt: '' }] } : { amount: '' };
  const rest = { ...(most === undefined ? {} : { most }), paidAfter, to, source };
  desk.take(
    {
      quote: putAt(desk.document, ['subsidy'], { ...own, ...rest }),
      putBack: (held) => putAt(held, ['subsidy'], subsidy),
    },
    'The subsidy said the other way was put aside.',
  );
}

/** What the state adds. */
export const renderSubsidy = (desk: QuoteDesk): TemplateResult =>
  renderPart(
    'subsidy',
    { add: 'There is a subsidy', takeOut: 'There is no subsidy', told: 'The subsidy was taken out.' },
    () => {
      const { subsidy } = desk.document;
      const byTiers = subsidy?.tiers !== undefined;
      return html`<div class="pair">
          ${renderPlainSelect({
            id: 'quote-subsidy-kind',
            label: 'It is said by',
            value: byTiers ? 'tiers' : 'amount',
            options: [
              ['amount', 'its amount'],
              ['tiers', 'tiers of capacity'],
            ],
            choose: (value) => {
              if (subsidy !== undefined) saySubsidyBy(value, subsidy, desk);
            },
          })}
          ${renderPlainSelect({
            id: 'quote-subsidy-to',
            label: 'It is paid to',
            value: subsidy?.to ?? 'customer',
            options: [
              ['customer', 'the customer'],
              ['seller', 'the seller'],
            ],
            choose: (value) => {
              desk.change(putAt(desk.document, ['subsidy', 'to'], value));
            },
          })}
        </div>
        ${renderTiers(desk)}
        ${renderFields(
          subsidyFields(desk.document).filter(({ path }) => path.length === 2),
          desk,
        )}`;
    },
    desk,
  );

/** What is borrowed. */
export const renderLoan = (desk: QuoteDesk): TemplateResult =>
  renderPart(
    'loan',
    { add: 'There is a loan', takeOut: 'There is no loan', told: 'The loan was taken out.' },
    () =>
      html`${renderFields(loanFields(desk.document), desk)}
      ${renderPlainSelect({
        id: 'quote-loan-kind',
        label: 'Interest is counted',
        value: desk.document.loan?.kind ?? 'reducing',
        options: [
          ['reducing', 'on what is still owed'],
          ['flat', 'flat, on the whole amount to the end'],
        ],
        choose: (value) => {
          desk.change(putAt(desk.document, ['loan', 'kind'], value));
        },
      })}`,
    desk,
  );

const OF_UPKEEP = [
  ['', 'not said'],
  ['included', 'in the maintenance'],
  ['not-included', 'not in the maintenance'],
] as const;

/** Whether something is paid out of the maintenance of each year. */
function renderOfUpkeep(key: 'cleaning' | 'insurance', label: string, desk: QuoteDesk): TemplateResult {
  return renderPlainSelect({
    id: `quote-upkeep-${key}`,
    label,
    value: desk.document.upkeep[key] ?? '',
    options: OF_UPKEEP,
    choose: (value) => {
      desk.change(putAt(desk.document, ['upkeep', key], value === '' ? undefined : value));
    },
  });
}

/** What the plant costs while it runs. */
export const renderUpkeep = (desk: QuoteDesk): TemplateResult => html`
  ${renderFields(upkeepFields({ ...desk.document, upkeep: { ...desk.document.upkeep, replacements: [] } }), desk)}
  <div class="pair">
    ${renderOfUpkeep('cleaning', 'Cleaning of the modules is', desk)}
    ${renderOfUpkeep('insurance', 'An insurance of the plant is', desk)}
  </div>
  ${renderLines(
    {
      path: ['upkeep', 'replacements'],
      fieldsOf: replacementFields,
      blank: { item: '', year: '', amount: '' },
      add: 'Add something that is replaced',
      takeOut: 'Take this out',
      told: 'Replacement',
    },
    desk,
  )}
`;
