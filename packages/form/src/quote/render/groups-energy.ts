import { html, nothing, type TemplateResult } from 'lit';
import type { QuoteDocument } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { generationBy, generationKind, type GenerationKind } from '../document/blank-quote.ts';
import { putAt } from '../document/edit-quote.ts';
import {
  generationFields,
  lifeFields,
  offerFields,
  plantFields,
  powerFields,
  riseFields,
  selfUseFields,
  useFields,
} from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderMonths } from './months.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

const LOCALES = [
  ['en-IN', '1,23,456.78 (India)'],
  ['en-GB', '123,456.78'],
  ['de-DE', '123.456,78'],
  ['fr-FR', '123 456,78'],
] as const;

/** Who offers what to whom. */
export function renderOffer(desk: QuoteDesk): TemplateResult {
  const { locale = 'en-IN' } = desk.document;
  const known = LOCALES.some(([name]) => name === locale);
  return html`${renderFields(offerFields(), desk)}
  ${renderPlainSelect({
    id: 'quote-locale',
    label: 'Numbers are written',
    value: locale,
    options: [...LOCALES, ...(known ? [] : [[locale, locale] as const])],
    choose: (value) => {
      desk.change(putAt(desk.document, ['locale'], value));
    },
  })}`;
}

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

const KINDS: readonly (readonly [GenerationKind, string])[] = [
  ['months', 'Units of each month'],
  ['irradiation', 'Irradiation of each month × performance ratio'],
  ['year', 'Units of a year, shared out by days'],
];

/** Another way to say the generation: what was typed for the one before can be put back. */
function chooseKind(kind: GenerationKind, desk: QuoteDesk): void {
  const { generation } = desk.document;
  if (kind === generationKind(desk.document)) return;
  desk.take(
    {
      quote: putAt(desk.document, ['generation'], generationBy(desk.document, kind)),
      putBack: (held) => putAt(held, ['generation'], generation),
    },
    'The generation typed the other way was put aside.',
  );
}

function renderIrradiation(generation: QuoteDocument['generation'], desk: QuoteDesk): TemplateResult {
  const { unit = 'kWh/m2/day' } = generation;
  const per = unit === 'kWh/m2/day' ? ' kWh per m² and day' : ' kWh per m²';
  return html`${renderPlainSelect({
    id: 'quote-generation-unit',
    label: 'Irradiation in the plane of the modules, counted in',
    value: unit,
    options: [
      ['kWh/m2/day', 'kWh per m² and day'],
      ['kWh/m2/month', 'kWh per m² and month'],
    ],
    choose: (value) => {
      desk.change(putAt(desk.document, ['generation', 'unit'], value));
    },
  })}
  ${renderMonths(['generation', 'irradiation'], { what: 'the irradiation of', unit: per }, desk)}`;
}

/** What the plant makes, and how it wears. */
export function renderGeneration(desk: QuoteDesk): TemplateResult {
  const { generation } = desk.document;
  const kind = generationKind(desk.document);
  const rest = generationFields(desk.view.source).filter(({ path }) => path.length === 2);
  return html`
    ${renderPlainSelect({
      id: 'quote-generation-kind',
      label: 'The generation is said by',
      value: kind,
      options: KINDS,
      choose: (value) => {
        chooseKind(value as GenerationKind, desk);
      },
    })}
    ${renderFindingsAt(['generation'], desk)}
    ${
      kind === 'months'
        ? renderMonths(['generation', 'months'], { what: 'the units made in', unit: ' units' }, desk)
        : kind === 'irradiation'
          ? renderIrradiation(generation, desk)
          : nothing
    }
    ${renderFields(rest, desk)}
  `;
}

/** Why the house uses so much of it: the number stands by its slider. */
export const renderSelfUse = (desk: QuoteDesk): TemplateResult =>
  html`${renderFields(selfUseFields().slice(1), desk)}${renderFindingsAt(['selfUse'], desk)}`;

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
    ${renderFields(riseFields(source), desk)}
    ${
      follow.length === 0
        ? nothing
        : html`<ul class="follows">
            ${follow.map(({ label, follows }) => html`<li>${label} ${follows}: no rise of its own.</li>`)}
          </ul>`
    }
  `;
}

/** Powers of the account. */
export const renderPowers = (desk: QuoteDesk): TemplateResult =>
  renderFields(powerFields(desk.view.source), desk);

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
