import { html, nothing, type TemplateResult } from 'lit';
import type { PlantDocument } from '@unitbook/engine';
import { fieldIdOf, fillMonths, kindOf, pastedCells } from '../document/edit-plant.ts';
import { MONTHS, putAt } from '../document/plant-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { renderPlantField } from './plant-field.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { findingsAt, renderFindingsOf } from './plant-findings.ts';

/** Twelve fields, January to December; a list that was copied from a sheet fills them from the one it is pasted in. */
function renderYear(table: 'monthly' | 'irradiation', unit: string, desk: PlantDesk): TemplateResult {
  const texts = desk.view.document.expected?.[table] ?? [];
  const path = ['expected', table];
  return html`
    <div class="twelve" role="group" aria-label="January to December">
      ${texts.map(
        (kept, month) =>
          html`<div
            @paste=${(event: ClipboardEvent) => {
              const cells = pastedCells(event.clipboardData?.getData('text') ?? '');
              if (cells.length < 2) return;
              event.preventDefault();
              desk.change(fillMonths(desk.view.document, table, month, cells));
            }}
          >
            ${renderPlantField(
              { path: [...path, month], label: MONTHS[month] ?? '', kept, is: 'number', unit },
              desk,
            )}
          </div>`,
      )}
    </div>
    ${renderFindingsOf(findingsAt(path, desk), fieldIdOf(path), desk)}
    <p class="hint">Twelve numbers copied from a sheet can be pasted into January.</p>
  `;
}

function renderIrradiation(
  expected: NonNullable<PlantDocument['expected']>,
  desk: PlantDesk,
): TemplateResult {
  const unit = expected.unit ?? 'kWh/m2/day';
  return html`
    <div class="pair">
      ${renderPlantField(
        {
          path: ['expected', 'performanceRatio'],
          label: 'Performance ratio',
          hint: 'as in the quote, such as 0.78',
          kept: expected.performanceRatio ?? '',
          is: 'number',
        },
        desk,
      )}
      ${renderPlantField(
        {
          path: ['expected', 'source'],
          label: 'Where the irradiation was taken from',
          hint: 'publisher, title and year',
          kept: expected.source ?? '',
          is: 'text',
        },
        desk,
      )}
    </div>
    ${renderPlainSelect({
      id: 'plant-expected-unit',
      label: 'Irradiation in the plane of the modules, counted in',
      value: unit,
      options: [
        ['kWh/m2/day', 'kWh per m² and day'],
        ['kWh/m2/month', 'kWh per m² and month'],
      ],
      choose: (value) => {
        desk.change(putAt(desk.view.document, ['expected', 'unit'], value));
      },
    })}
    ${renderYear('irradiation', unit === 'kWh/m2/day' ? ' kWh per m² and day' : ' kWh per m²', desk)}
  `;
}

/** What goes with the way in which the plant is judged. */
export function renderKind(desk: PlantDesk): TemplateResult | typeof nothing {
  const { document } = desk.view;
  switch (kindOf(document)) {
    case '':
      return nothing;
    case 'monthly':
      return html`<p class="hint">
          Units of each month, as the quote lists them for ${document.capacity[0]?.kWp ?? ''} kWp.
        </p>
        ${renderYear('monthly', ' units', desk)}`;
    case 'irradiation':
      return renderIrradiation(document.expected ?? {}, desk);
    case 'last-years':
      return html`<p class="hint">
        Each month is compared with the same days of the years before, by size of the plant. It takes a full
        year of readings.
      </p>`;
  }
}
