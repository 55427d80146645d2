import { html, nothing, type TemplateResult } from 'lit';
import { editRow, rowText, type RegisterId } from '@unitbook/engine';
import { mapRow } from '../household/edit-household.ts';
import { estimatedOf, howRead, registerPath, setHowRead, type HowRead } from '../household/registers.ts';
import type { RowView } from '../view/view-book.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';
import { renderFindings } from './findings.ts';
import { about, fieldId } from './register-field.ts';
import { SHORT, shortName } from './register-words.ts';
import { renderPlainSelect } from './select.ts';

const WAYS: readonly (readonly [HowRead, string])[] = [
  ['actual', 'Read from the meter'],
  ['estimated', 'Estimated'],
  ['some', 'Estimated: some registers'],
];

/** What a row has registers for: import, export, generation. */
const idsOf = ({ registers }: RowView): readonly RegisterId[] => [
  ...new Set(registers.map(({ register }) => register.id)),
];

function renderTick(row: RowView, id: RegisterId, desk: Desk): TemplateResult {
  const input = fieldId(row.index, `estimated-${id}`);
  const ticked = row.row.estimated ?? [];
  return html`<span class="tick">
    <input
      id=${input}
      type="checkbox"
      .checked=${ticked.includes(id)}
      @change=${() => {
        const estimated = ticked.includes(id) ? ticked.filter((one) => one !== id) : [...ticked, id];
        desk.change(mapRow(desk.household, row.index, (held) => ({ ...held, estimated })));
      }}
    />
    <label for=${input}>${SHORT[id]}</label>
  </span>`;
}

/** How a reading came about: read, estimated, or estimated in part, register by register. */
export function renderHowRead(row: RowView, desk: Desk): TemplateResult {
  const id = fieldId(row.index, 'status');
  const how = howRead(row.row);
  const ids = idsOf(row);
  return html`<div class="field">
    ${renderPlainSelect({
      id,
      label: 'How it was read',
      value: how,
      options: WAYS,
      choose: (value) => {
        const chosen = WAYS.find(([way]) => way === value)?.[0] ?? 'actual';
        desk.change(mapRow(desk.household, row.index, (held) => setHowRead(held, chosen, ids)));
      },
    })}
    ${
      how === 'some'
        ? html`<fieldset class="ticks">
            <legend>Estimated were</legend>
            ${ids.map((one) => renderTick(row, one, desk))}
          </fieldset>`
        : nothing
    }
    ${renderFindings(about(row, 'status'), id, desk)}
  </div>`;
}

/** The way to type what a photo of the day shows in the place of an estimate; what was printed is kept. */
export function renderPhoto(row: RowView, desk: Desk): TemplateResult | typeof nothing {
  const estimated = estimatedOf(row.row, idsOf(row));
  const registers = row.registers
    .map(({ register }) => register)
    .filter(({ id, key }) => estimated.includes(id) && rowText(row.row, key).trim() !== '');
  if (registers.length === 0) return nothing;
  const id = fieldId(row.index, 'photo');
  return html`<div class="photo" role="group" aria-labelledby=${id}>
    <p id=${id}>You have a photo of that day? Type what it showed:</p>
    <p class="fixes">
      ${registers.map((register) =>
        renderButton(shortName(register), () => {
          const edit = { register: register.key, value: '', method: 'own-reading' } as const;
          desk.change(mapRow(desk.household, row.index, (held) => editRow(held, edit)));
          desk.focusField(fieldId(row.index, registerPath(register).join('-')));
        }),
      )}
    </p>
  </div>`;
}
