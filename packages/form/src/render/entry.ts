import { html, nothing, type TemplateResult } from 'lit';
import { changeRow } from '../household/edit-household.ts';
import type { RowView } from '../view/view-book.ts';
import { daysText } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import { typed, type Desk } from './desk.ts';
import { renderField, type Field } from './field.ts';
import { renderFindings } from './findings.ts';
import { about, fieldId, GENERATION, GRID, renderMeter } from './meter.ts';
import { renderPutBack } from './put-back.ts';

function dateField(row: RowView, before: RowView | null, desk: Desk): Field {
  const { writing } = desk.view;
  const day = row.day === null ? '' : writing.day(row.day);
  const since = row.day === null || before?.day === null || before === null ? null : row.day - before.day;
  return {
    id: fieldId(row.index, 'date'),
    label: before === null ? 'Date of the opening reading' : 'Date of this reading',
    value: row.row.date,
    echo: since === null || since <= 0 ? day : `${day}, ${daysText(since)}`,
    findings: about(row, 'date'),
    inputMode: 'text',
    input: (text) => {
      desk.change(changeRow(desk.household, row.index, { date: text }));
    },
  };
}

function renderStatus(row: RowView, desk: Desk): TemplateResult {
  const id = fieldId(row.index, 'status');
  const status = row.row.status ?? 'actual';
  return html`
    <div class="field">
      <label for=${id}>How it was read</label>
      <select
        id=${id}
        @change=${(event: Event) => {
          const chosen = typed(event) === 'estimated' ? 'estimated' : 'actual';
          desk.change(changeRow(desk.household, row.index, { status: chosen }));
        }}
      >
        <option value="actual" ?selected=${status === 'actual'}>Read from the meter</option>
        <option value="estimated" ?selected=${status === 'estimated'}>Estimated</option>
      </select>
      ${renderFindings(about(row, 'status'), id, desk)}
    </div>
  `;
}

function renderPrintedDays(row: RowView, desk: Desk): TemplateResult {
  return renderField(
    {
      id: fieldId(row.index, 'printedDays'),
      label: 'Days printed on the bill, if you have it',
      value: row.row.printedDays ?? '',
      echo: '',
      findings: about(row, 'printedDays'),
      inputMode: 'numeric',
      input: (text) => {
        desk.change(changeRow(desk.household, row.index, { printedDays: text }));
      },
    },
    desk,
  );
}

function renderDates(before: RowView, row: RowView, desk: Desk): TemplateResult {
  const { writing } = desk.view;
  const hint = 'such as 1 May 2025, 1/5/2025';
  const opening =
    before.index === 0
      ? renderField({ ...dateField(before, null, desk), hint }, desk)
      : html`<div class="field">
          <span class="label">Previous reading</span>
          <span class="carried">${before.day === null ? before.row.date : writing.day(before.day)}</span>
          <span class="hint">carried from last month</span>
        </div>`;
  return html`<div class="pair">
    ${opening}${renderField({ ...dateField(row, before, desk), hint }, desk)}
  </div>`;
}

/** The readings of the month shown: previous and present, register by register. */
export function renderEntry(desk: Desk): TemplateResult {
  const row = desk.view.rows[desk.selected];
  const before = desk.view.rows[desk.selected - 1];
  if (row === undefined || before === undefined) return html``;
  const hasGeneration = desk.household.account.meters.generation !== undefined;
  const general = row.findings.filter((finding) => finding.path.length < 3);
  return html`
    ${renderDates(before, row, desk)} ${renderMeter('Two-way meter, at the grid', GRID, [before, row], desk)}
    ${hasGeneration ? renderMeter('Generation meter, at the plant', [GENERATION], [before, row], desk) : nothing}
    ${renderFindings(general, fieldId(row.index, 'import'), desk)}
    ${[...(before.index === 0 ? [before] : []), row].map((shown) =>
      renderPutBack(shown.row, fieldId(shown.index, 'import'), desk),
    )}
    ${
      row.month === null
        ? nothing
        : html`<p class="carry">
            Carried to the bill <strong>${desk.view.writing.sum(row.month.bill.payable)}</strong>
          </p>`
    }
    <div class="pair">${renderStatus(row, desk)}${renderPrintedDays(row, desk)}</div>
    ${renderButton(
      'Take this month out',
      () => {
        desk.remove(desk.selected);
      },
      { id: 'remove-month', className: 'quiet' },
    )}
  `;
}
