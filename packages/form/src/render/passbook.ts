import { html, nothing, type TemplateResult } from 'lit';
import type { BookMonth, Figure, PassbookEntry } from '@unitbook/engine';
import type { RowView } from '../view/view-book.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';

const COLUMNS: readonly (readonly [keyof PassbookEntry, string])[] = [
  ['opening', 'Brought forward'],
  ['imported', 'Taken'],
  ['exported', 'Given'],
  ['setOff', 'Set off'],
  ['creditUsed', 'of it credit'],
  ['billed', 'Billed'],
  ['paid', 'Paid'],
  ['lapsed', 'Lapsed'],
  ['closing', 'Carried forward'],
];

/** Where nothing moved, a dash, as in any account book; what is carried is a number even when it is 0. */
function renderCell(figure: Figure, column: string, desk: Desk): TemplateResult {
  const isNone = figure.numerator === 0;
  const text = isNone && column !== 'closing' && column !== 'opening' ? '–' : desk.view.writing.plain(figure);
  return html`<td class="${column} ${isNone ? 'none' : ''}">${text}</td>`;
}

function renderRow(row: RowView, month: BookMonth, desk: Desk): TemplateResult {
  const { passbook, bill } = month;
  const { writing } = desk.view;
  const isShown = row.index === desk.selected;
  return html`
    <tr class=${passbook.isClosed ? 'closed' : ''} aria-current=${isShown ? 'true' : nothing}>
      <th scope="row">
        ${renderButton(
          writing.day(month.energy.period.to),
          () => {
            desk.select(row.index);
          },
          { className: 'quiet' },
        )}
        ${passbook.isClosed ? html`<span class="mark">bank closed</span>` : nothing}
      </th>
      ${COLUMNS.map(([column]) => renderCell(passbook[column] as Figure, column, desk))}
      <td class="payable">${writing.sum(bill.payable)}</td>
    </tr>
  `;
}

/** The surplus that the bill after the last one will pay. */
function renderPaymentDue(desk: Desk): TemplateResult | typeof nothing {
  const due = desk.view.book?.paymentDue ?? null;
  if (due === null) return nothing;
  const { writing, book } = desk.view;
  return html`<p class="due" id="payment-due">
    Due in the next bill: ${writing.plain(due.units)} units at ${writing.money(due.rate)} each,
    ${due.label.toLowerCase()} (${due.clause}${book === null ? '' : `, ${book.tariff.document.supplier}`}).
  </p>`;
}

/** The passbook: every month's units, from the credit brought forward to the credit carried on. */
export function renderPassbook(desk: Desk): TemplateResult {
  const billed = desk.view.rows.flatMap((row) => (row.month === null ? [] : [{ row, month: row.month }]));
  if (billed.length === 0)
    return html`<p class="hint">
      Each billed month writes a line here: units brought forward, taken, given and carried on.
    </p>`;
  return html`
    <div class="wide" role="region" aria-label="Passbook table" tabindex="0">
      <table aria-describedby="passbook-note">
        <thead>
          <tr>
            <th scope="col">Reading of</th>
            ${COLUMNS.map(([column, name]) => html`<th scope="col" class=${column}>${name}</th>`)}
            <th scope="col" class="payable">Bill</th>
          </tr>
        </thead>
        <tbody>
          ${billed.map(({ row, month }) => renderRow(row, month, desk))}
        </tbody>
      </table>
    </div>
    <p class="hint" id="passbook-note">
      Units of each month, by the reading that closes it. Brought forward + given = set off + paid + lapsed +
      carried forward; taken = set off + billed.
    </p>
    ${renderPaymentDue(desk)}
  `;
}
