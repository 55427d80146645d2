import { html, nothing, type TemplateResult } from 'lit';
import { changeRow } from '../household/edit-household.ts';
import { changesIn } from '../household/meter-change.ts';
import type { Meter } from '../household/later-meters.ts';
import type { MonthRows } from '../view/month-rows.ts';
import type { RowView } from '../view/view-book.ts';
import { daysText } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import { renderChanges } from './change.ts';
import { renderChangeFold } from './change-fold.ts';
import type { Desk } from './desk.ts';
import { renderField, type Field } from './field.ts';
import { renderFindings } from './findings.ts';
import { renderHowRead, renderPhoto } from './how-read.ts';
import { renderMeter } from './meter.ts';
import { monthName } from './months.ts';
import { renderPutBack } from './put-back.ts';
import { about, besideFields, fieldId } from './register-field.ts';

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

function renderDates({ before, row, isFirst }: MonthRows, desk: Desk): TemplateResult {
  const { writing } = desk.view;
  const hint = 'such as 1 May 2025, 1/5/2025';
  const opening = isFirst
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

/** A meter, and beneath it how it was changed in this month. */
function renderMeterOf(meter: Meter, rows: MonthRows, desk: Desk): unknown {
  if (desk.household.account.meters[meter] === undefined) return nothing;
  const { household } = desk;
  const from = rows.events[0]?.index ?? rows.row.index;
  const changes = changesIn(household, from, rows.row.index);
  return html`${renderMeter(meter, rows, desk)}${renderChanges(changes, meter, desk)}`;
}

function renderCarry({ month }: RowView, desk: Desk): TemplateResult | typeof nothing {
  if (month === null) return nothing;
  return html`<p class="carry">
    Carried to the bill <strong>${desk.view.writing.sum(month.bill.payable)}</strong>
  </p>`;
}

/** Take out the reading that closes the month, and what was changed in it. */
function renderRemove({ events, row }: MonthRows, desk: Desk): TemplateResult {
  return renderButton(
    'Take this month out',
    () => {
      const places = [...events, row].map(({ index }) => index);
      desk.remove(places, `The month ${monthName(row, desk.view.writing)} was taken out.`);
    },
    { id: 'remove-month', className: 'quiet' },
  );
}

/** The readings of the month shown: previous and present, register by register. */
export function renderEntry(desk: Desk): TemplateResult {
  const rows = desk.month;
  if (rows === null) return html``;
  const { before, row, isFirst } = rows;
  const ends = isFirst ? [before, row] : [row];
  return html`
    ${renderDates(rows, desk)} ${renderMeterOf('grid', rows, desk)} ${renderMeterOf('generation', rows, desk)}
    ${renderPhoto(row, desk)}
    ${ends.map((shown) => renderFindings(besideFields(shown), fieldId(shown.index, 'import'), desk))}
    ${ends.map((shown) => renderPutBack(shown.row, fieldId(shown.index, 'import'), desk))}
    ${renderCarry(row, desk)}
    <div class="pair">${renderHowRead(row, desk)}${renderPrintedDays(row, desk)}</div>
    ${renderChangeFold(desk)} ${renderRemove(rows, desk)}
  `;
}
