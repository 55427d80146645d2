import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderFold } from '../../render/fold.ts';
import type { CheckDesk } from '../check-desk.ts';
import { slabFields } from '../document/bill-groups.ts';
import { putInBill } from '../document/edit-bills.ts';
import { besideLine, lineFields, typeLine, type LineField } from '../document/line-fields.ts';
import { renderRow, rowOf } from './bill-row.ts';

/** The name of a line that the tariff does not have, taken over when it is left. */
function renderName({ id, charge, at }: LineField, desk: CheckDesk): TemplateResult {
  return html`<div class="name">
    <label for="${id}-name">A line that is not in the tariff</label>
    <input
      id="${id}-name"
      type="text"
      autocomplete="off"
      .value=${charge}
      @change=${(event: Event) => {
        if (at !== null) desk.change(putInBill(desk.bill.bill, ['lines', at, 'charge'], typed(event).trim()));
      }}
    />
    ${renderButton(
      'Take this line out',
      () => {
        const name = charge === '' ? 'The line' : `“${charge}”`;
        if (at !== null) desk.store.takeLine(desk.bill.key, at, `${name} was taken out.`);
        desk.focusField('check-undo');
      },
      { className: 'quiet', about: charge === '' ? 'without a name' : charge },
    )}
  </div>`;
}

function renderLine(line: LineField, desk: CheckDesk): TemplateResult {
  const { id, isOfTariff } = line;
  return renderRow(
    {
      field: line,
      id,
      type: (text) => {
        desk.change(typeLine(desk.bill.form, line, text));
      },
      ...(isOfTariff ? {} : { name: renderName(line, desk) }),
    },
    desk,
  );
}

/** Parts of the energy charge: units at a rate each. */
function renderSlabs(desk: CheckDesk): TemplateResult {
  const slabs = desk.bill.bill.slabs ?? [];
  return renderFold(
    {
      key: 'check-slabs',
      className: 'help',
      isOpen: slabs.length > 0,
      summary: 'Parts of the energy charge, slab by slab',
      content: () =>
        html`<div class="thirds">
            ${slabs.flatMap((_, at) => slabFields(at).map((field) => renderRow(rowOf(field, desk), desk)))}
          </div>
          ${renderButton(
            'Add a part',
            () => {
              desk.change({ ...desk.bill.bill, slabs: [...slabs, { units: '' }] });
              desk.focusField(`check-slabs-${String(slabs.length)}-units`);
            },
            { id: 'check-add-slab' },
          )}`,
    },
    desk,
  );
}

/** Units and rates that some bills print beside their lines. */
function renderBeside(lines: readonly LineField[], desk: CheckDesk): TemplateResult | typeof nothing {
  const fields = lines.flatMap(besideLine);
  if (fields.length === 0) return nothing;
  return renderFold(
    {
      key: 'check-beside',
      className: 'help',
      summary: 'Units and rates beside the lines',
      content: (isOpen) =>
        isOpen
          ? html`<div class="thirds two">${fields.map((field) => renderRow(rowOf(field, desk), desk))}</div>`
          : nothing,
    },
    desk,
  );
}

/** The charges of a printed bill, each beside the right one, and lines that the tariff does not have. */
export function renderPrintedLines(desk: CheckDesk): TemplateResult {
  const { bill } = desk.bill;
  const lines = lineFields(desk.bill.form);
  const others = lines.filter(({ isOfTariff }) => !isOfTariff).length;
  return html`${lines.map((line) => renderLine(line, desk))}
  ${renderButton(
    'Add a line that is not here',
    () => {
      desk.change({ ...bill, lines: [...(bill.lines ?? []), { charge: '', amount: '' }] });
      desk.focusField(`check-line-other-${String(others + 1)}-name`);
    },
    { id: 'check-add-line' },
  )}
  ${renderSlabs(desk)} ${renderBeside(lines, desk)}`;
}
