import { html, type TemplateResult } from 'lit';
import { ACCURACY_CLASSES } from '@unitbook/engine';
import { renderFold } from '../../render/fold.ts';
import { blankExpected, kindOf, type ExpectedKind } from '../document/edit-plant.ts';
import { putAt } from '../document/plant-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { renderPlantField } from './plant-field.ts';
import { renderPlainSelect } from '../../render/select.ts';
import { findingsAt, renderFindingsOf } from './plant-findings.ts';
import { renderInverters, renderSizes } from './plant-itself.ts';
import { renderKind } from './year-table.ts';

const KINDS: readonly (readonly [ExpectedKind, string])[] = [
  ['', 'Choose …'],
  ['monthly', 'The quote’s table: units of each month'],
  ['irradiation', 'Irradiation of each month × performance ratio'],
  ['last-years', 'The same days of earlier years'],
];

/** Another way to judge: what was typed for the one before can be put back. */
function chooseKind(kind: ExpectedKind, desk: PlantDesk): void {
  const { document } = desk.view;
  const { expected } = document;
  if (kind === kindOf(document)) return;
  const plant = putAt(document, ['expected'], blankExpected(kind));
  const isTyped = expected !== undefined && expected.lastYears === undefined;
  if (!isTyped) desk.change(plant);
  else
    desk.take(
      { plant, putBack: (held) => putAt(held, ['expected'], expected) },
      'What was typed for the other way was put aside.',
    );
}

function renderDoubt(desk: PlantDesk): TemplateResult {
  const { meterClass, uncertainty } = desk.view.document;
  return html`<div class="pair">
    ${renderPlainSelect({
      id: 'plant-meter-class',
      label: 'Class of the generation meter',
      hint: 'on its plate; read it through the cover',
      value: meterClass ?? '',
      options: [['', 'Not said'], ...ACCURACY_CLASSES.map((text) => [text, text] as const)],
      choose: (value) => {
        desk.change(putAt(desk.view.document, ['meterClass'], value === '' ? undefined : value));
      },
    })}
    ${renderPlantField(
      {
        path: ['uncertainty', 'yearToYear'],
        label: 'A month differs from year to year by, %',
        hint: 'where the plant stands, one sigma; blank counts as 10',
        kept: uncertainty?.yearToYear ?? '',
        is: 'number',
        unit: ' %',
        set: (plant, kept) => putAt(plant, ['uncertainty'], kept === '' ? undefined : { yearToYear: kept }),
      },
      desk,
    )}
  </div>`;
}

/** What the plant should make, typed once. */
export function renderExpected(desk: PlantDesk): TemplateResult {
  const { document, findings } = desk.view;
  const needsCare = findings.some(({ path, severity }) => path[0] !== 'diary' && severity !== 'note');
  const words = KINDS.find(([kind]) => kind === kindOf(document))?.[1] ?? '';
  const heading = kindOf(document) === '' ? 'not typed yet' : words.toLowerCase();
  return renderFold(
    {
      key: 'expected',
      className: 'account',
      isOpen: needsCare,
      summary: html`<span class="label">What the plant should make</span>
        <span class="hint">${heading}</span>`,
      content: () => html`
        ${renderSizes(desk)} ${renderInverters(desk)}
        <div class="field tick">
          <input
            id="plant-coast"
            type="checkbox"
            .checked=${document.coast === true}
            @change=${(event: Event) => {
              const isOn = (event.currentTarget as HTMLInputElement).checked;
              desk.change(putAt(desk.view.document, ['coast'], isOn ? true : undefined));
            }}
          />
          <label for="plant-coast">It stands near the sea</label>
        </div>
        ${renderPlainSelect({
          id: 'plant-expected',
          label: 'Judge the plant by',
          value: kindOf(document),
          options: KINDS,
          choose: (kind) => {
            chooseKind(kind as ExpectedKind, desk);
          },
        })}
        ${renderFindingsOf(findingsAt(['expected'], desk), 'plant-expected', desk)} ${renderKind(desk)}
        ${renderDoubt(desk)}
      `,
    },
    desk,
  );
}
