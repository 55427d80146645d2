import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { addCapacity, fieldIdOf, setInverters, takeCapacity } from '../document/edit-plant.ts';
import { putAt } from '../document/plant-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { renderPlantField } from './plant-field.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { findingsAt, renderFindingsOf } from './plant-findings.ts';

function renderSize(at: number, desk: PlantDesk): TemplateResult {
  const { capacity } = desk.view.document;
  const { from = '', kWp = '' } = capacity[at] ?? {};
  const isFirst = at === 0;
  const id = fieldIdOf(['capacity', at]);
  return html`
    <div class="pair">
      ${renderPlantField(
        {
          path: ['capacity', at, 'kWp'],
          label: isFirst ? 'Plant size, kWp' : 'Size from then on, kWp',
          ...(isFirst ? { hint: 'all modules together, from the invoice' } : {}),
          kept: kWp,
          is: 'number',
          unit: ' kWp',
        },
        desk,
      )}
      ${renderPlantField(
        {
          path: ['capacity', at, 'from'],
          label: isFirst ? 'First day of the plant' : 'First day of that size',
          ...(isFirst ? { hint: 'may stay blank' } : {}),
          kept: from,
          is: 'day',
          set: (plant, kept) =>
            putAt(plant, ['capacity', at, 'from'], kept === '' && isFirst ? undefined : kept),
        },
        desk,
      )}
    </div>
    ${renderFindingsOf(findingsAt(['capacity', at], desk), id, desk)}
    ${
      isFirst
        ? nothing
        : renderButton('Take this size out', () => {
            desk.take(takeCapacity(desk.view.document, at), 'A later size was taken out.');
          })
    }
  `;
}

/** The size of the plant, and each later one. */
export function renderSizes(desk: PlantDesk): TemplateResult {
  const { document, writing } = desk.view;
  const last = document.capacity.at(-1)?.kWp ?? '';
  const { plantCapacity } = desk.household.account;
  const isOther =
    desk.household.plant !== undefined && plantCapacity.trim() !== '' && plantCapacity.trim() !== last;
  return html`
    ${document.capacity.map((_, at) => renderSize(at, desk))}
    ${
      isOther
        ? html`<p class="hint">The account above says ${writing.number(plantCapacity.trim())} kWp.</p>`
        : nothing
    }
    ${renderButton(
      'The size was changed',
      () => {
        desk.change(addCapacity(desk.view.document));
        desk.focusField(fieldIdOf(['capacity', document.capacity.length, 'kWp']));
      },
      { id: 'plant-add-size' },
    )}
  `;
}

/** How many inverters there are, and of which kind. */
export function renderInverters(desk: PlantDesk): TemplateResult {
  const { inverters } = desk.view.document;
  return html`<div class="pair">
    ${renderPlantField(
      {
        path: ['inverters', 'n'],
        label: 'Inverters, how many',
        hint: 'a lasting fall is told in parts of them',
        kept: inverters?.n ?? '',
        is: 'number',
        set: (plant, kept) => setInverters(plant, kept, plant.inverters?.kind ?? ''),
      },
      desk,
    )}
    ${renderPlainSelect({
      id: 'plant-inverters-kind',
      label: 'Their kind',
      value: inverters?.kind ?? '',
      options: [
        ['', 'Not said'],
        ['string', 'One for a string of modules'],
        ['module', 'One beneath each module, or a few'],
      ],
      choose: (kind) => {
        const { document } = desk.view;
        desk.change(setInverters(document, document.inverters?.n ?? '', kind as 'string' | 'module' | ''));
      },
    })}
  </div>`;
}
