import { html, nothing, type TemplateResult } from 'lit';
import { usualRows } from '../view/month-rows.ts';
import type { RowView } from '../view/view-book.ts';
import type { Writing } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import { typed, type Desk } from './desk.ts';
import { renderPutBack } from './put-back.ts';

/** How a month is called: by the day of the reading that closes it, or by what was typed for it. */
export function monthName(row: RowView, writing: Writing): string {
  if (row.day !== null) return `to ${writing.day(row.day)}`;
  return row.row.date.trim() === '' ? 'not dated yet' : `to “${row.row.date.trim()}”`;
}

function renderRemoved(desk: Desk): TemplateResult | typeof nothing {
  const { removed } = desk;
  if (removed === '') return nothing;
  return html`<p class="undo" role="status">
    ${removed} ${renderButton('Put it back', desk.undo, { id: 'undo' })}
  </p>`;
}

function renderChoice(closing: readonly RowView[], desk: Desk): TemplateResult {
  const { writing } = desk.view;
  return html`
    <label class="hidden" for="month">Month shown</label>
    <select
      id="month"
      @change=${(event: Event) => {
        desk.select(Number.parseInt(typed(event), 10));
      }}
    >
      ${closing.map(
        (row, at) =>
          html`<option value=${row.index} .selected=${row.index === desk.selected}>
            ${at + 1}. ${monthName(row, writing)}
          </option>`,
      )}
    </select>
  `;
}

function renderStep(by: -1 | 1, closing: readonly RowView[], desk: Desk): TemplateResult {
  const target = closing[closing.findIndex(({ index }) => index === desk.selected) + by];
  return html`<button
    type="button"
    aria-label="Month ${by < 0 ? 'before' : 'after'}"
    ?disabled=${target === undefined}
    @click=${() => {
      if (target !== undefined) desk.select(target.index);
    }}
  >
    ${by < 0 ? '‹' : '›'}
  </button>`;
}

/** Which month is shown, the ones beside it and a new one; the way back for what was taken out. */
export function renderMonths(desk: Desk): TemplateResult {
  const closing = usualRows(desk.view.rows).slice(1);
  return html`
    <div class="months">
      ${renderStep(-1, closing, desk)} ${renderChoice(closing, desk)} ${renderStep(1, closing, desk)}
      ${renderButton('New month', desk.addMonth, { id: 'add-month' })}
    </div>
    ${renderRemoved(desk)} ${renderPutBack(desk.household.readings, 'month', desk)}
    ${renderPutBack(desk.household, 'month', desk)}
  `;
}
