import { html, nothing, type TemplateResult } from 'lit';
import type { QuoteDocument } from '@unitbook/engine';
import { renderPlainSelect } from '../../render/select.ts';
import { generationBy, generationKind, type GenerationKind } from '../document/blank-quote.ts';
import { putAt } from '../document/edit-quote.ts';
import { generationFields } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderMonths } from './months.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

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
