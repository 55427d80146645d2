import { html, nothing, type TemplateResult } from 'lit';
import type { BookMonth, Figure, LedgerEntry, PassbookEntry, SurplusPayment } from '@unitbook/engine';
import type { RowView } from '../view/view-book.ts';
import { unitsWord } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';
import { renderWorkedOut } from './worked-out.ts';

/** What a column holds, and its heading. */
type Columns<Entry> = readonly (readonly [keyof Entry & string, string])[];

const PASSBOOK: Columns<PassbookEntry> = [
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

const LEDGER: Columns<LedgerEntry> = [
  ['opening', 'Brought forward'],
  ['added', 'Added'],
  ['used', 'Used'],
  ['paid', 'Paid'],
  ['lapsed', 'Lapsed'],
  ['closing', 'Carried forward'],
];

/** A line of a table: what a month did with the passbook or with one ledger. */
interface Line<Entry> {
  readonly row: RowView;
  readonly month: BookMonth;
  readonly entry: Entry;
}

interface Table<Entry> {
  readonly id: string;
  readonly name: string;
  /** What a closed entry is marked with. */
  readonly mark: string;
  readonly columns: Columns<Entry>;
  readonly lines: readonly Line<Entry>[];
  readonly amount: (figure: Figure) => string;
  readonly note: string;
}

/** Where nothing moved, a dash, as in any account book; what is carried is a number even when it is 0. */
function renderCell(figure: Figure, column: string, amount: Table<never>['amount']): TemplateResult {
  const isNone = figure.numerator === 0;
  const text = isNone && column !== 'closing' && column !== 'opening' ? '–' : amount(figure);
  return html`<td class="${column} ${isNone ? 'none' : ''}">${text}</td>`;
}

function renderLine<Entry extends { readonly isClosed: boolean }>(
  { row, month, entry }: Line<Entry>,
  { columns, amount, mark }: Table<Entry>,
  desk: Desk,
): TemplateResult {
  const { writing } = desk.view;
  return html`
    <tr
      class=${entry.isClosed ? 'closed' : ''}
      aria-current=${row.index === desk.selected ? 'true' : nothing}
    >
      <th scope="row">
        ${renderButton(
          writing.day(month.energy.period.to),
          () => {
            desk.select(row.index);
          },
          { className: 'quiet' },
        )}
        ${entry.isClosed ? html`<span class="mark">${mark}</span>` : nothing}
      </th>
      ${columns.map(([column]) => renderCell(entry[column] as Figure, column, amount))}
      <td class="payable">${writing.sum(month.bill.payable)}</td>
    </tr>
  `;
}

function renderTable<Entry extends { readonly isClosed: boolean }>(
  table: Table<Entry>,
  desk: Desk,
): TemplateResult {
  const note = `${table.id}-note`;
  return html`
    <div class="wide" role="region" aria-label="${table.name} table" tabindex="0">
      <table aria-describedby=${note}>
        <thead>
          <tr>
            <th scope="col">Reading of</th>
            ${table.columns.map(([column, name]) => html`<th scope="col" class=${column}>${name}</th>`)}
            <th scope="col" class="payable">Bill</th>
          </tr>
        </thead>
        <tbody>
          ${table.lines.map((line) => renderLine(line, table, desk))}
        </tbody>
      </table>
    </div>
    <p class="hint balance" id=${note}>${table.note}</p>
  `;
}

/** The months of each ledger, in the order in which ledgers began. */
function renderLedgers(billed: readonly Omit<Line<never>, 'entry'>[], desk: Desk): readonly TemplateResult[] {
  const ledgers = new Map<string, Line<LedgerEntry>[]>();
  for (const { row, month } of billed)
    for (const entry of month.ledgers)
      ledgers.set(entry.id, [...(ledgers.get(entry.id) ?? []), { row, month, entry }]);
  const { writing } = desk.view;
  return [...ledgers].map(([id, lines]) => {
    const [
      {
        entry: { label, unit },
      },
    ] = lines as [Line<LedgerEntry>];
    const amount = unit === 'money' ? writing.sum : writing.plain;
    const note = `${{ kWh: 'Units', kVAh: 'kVAh', money: 'Money' }[unit]} of each month, by the reading that closes it. Brought forward + added = used + paid + lapsed + carried forward.`;
    const table = { id: `ledger-${id}`, name: label, mark: 'closed', columns: LEDGER, lines, amount, note };
    return html`<h3 class="sub">${label}</h3>
      ${renderTable(table, desk)}`;
  });
}

/** What the bill after the last one will pay. */
function renderPaymentsDue(desk: Desk): readonly TemplateResult[] {
  return (desk.view.book?.paymentsDue ?? []).map((due, at) => renderPaymentDue(due, at, desk));
}

function renderPaymentDue(due: SurplusPayment, at: number, desk: Desk): TemplateResult {
  const { writing, book } = desk.view;
  return html`<p class="due" id=${`payment-due${at === 0 ? '' : `-${String(at + 1)}`}`}>
    Due in the next bill:
    ${
      due.rate === null
        ? writing.sum(due.units)
        : `${writing.plain(due.units)} ${unitsWord(due.units.unit)} at ${writing.money(due.rate)} each`
    },
    ${due.label.toLowerCase()} (${due.clause}${book === null ? '' : `, ${book.tariff.document.supplier}`}).
  </p>`;
}

/** The passbook or the ledgers: every month's units, from what was brought forward to what is carried on. */
export function renderPassbook(desk: Desk): TemplateResult {
  const billed = desk.view.rows.flatMap((row) => (row.month === null ? [] : [{ row, month: row.month }]));
  if (billed.length === 0)
    return html`<p class="hint">
      Each billed month writes a line here: units brought forward, taken, given and carried on.
    </p>`;
  const lines = billed.flatMap(({ row, month }) =>
    month.passbook === null ? [] : [{ row, month, entry: month.passbook }],
  );
  const note =
    'Units of each month, by the reading that closes it. Brought forward + given = set off + paid + lapsed + ' +
    'carried forward; taken = set off + billed.';
  const amount = desk.view.writing.plain;
  const table = {
    id: 'passbook',
    name: 'Passbook',
    mark: 'bank closed',
    columns: PASSBOOK,
    lines,
    amount,
    note,
  };
  return html`
    ${renderWorkedOut(desk)} ${lines.length === 0 ? nothing : renderTable(table, desk)}
    ${renderLedgers(billed, desk)} ${renderPaymentsDue(desk)}
  `;
}
