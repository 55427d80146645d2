import { html, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { batteryFields, nextBatteryFields } from '../document/battery-fields.ts';
import { fieldIdOf, putAt, takeAt } from '../document/edit-quote.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderPart } from './part.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

const NEXT = ['battery', 'replacement'] as const;

/** The next battery, which may be left out as well. */
function renderNext(desk: QuoteDesk): TemplateResult {
  const fields = nextBatteryFields(desk.document);
  if (fields.length === 0)
    return renderButton('It is replaced within the life', () => {
      desk.change(putAt(desk.document, NEXT, { year: '', amount: '' }));
      desk.focusField(fieldIdOf([...NEXT, 'year']));
    });
  return html`${renderFields(fields, desk)}
  ${renderButton(
    'It is not replaced',
    () => {
      desk.take(takeAt(desk.document, NEXT), 'The next battery was taken out.');
    },
    { className: 'quiet' },
  )}`;
}

/** A battery in the house, charged from surplus and used at home. */
export const renderBattery = (desk: QuoteDesk): TemplateResult =>
  renderPart(
    'battery',
    { add: 'There is a battery', takeOut: 'There is no battery', told: 'The battery was taken out.' },
    () =>
      html`${renderFields(batteryFields(desk.document), desk)} ${renderNext(desk)}
      ${renderFindingsAt(NEXT, desk)}`,
    desk,
  );
