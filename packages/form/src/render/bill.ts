import { html, nothing, type TemplateResult } from 'lit';
import type { BillLine, BookMonth, Figure } from '@unitbook/engine';
import { toggled, type Desk } from './desk.ts';
import { renderDerivation } from './derivation.ts';
import { spanText } from './answer.ts';

/** A line of the account: with the plant, and beside it without. */
interface AccountLine {
  readonly key: string;
  readonly label: string;
  readonly note: string;
  readonly own: Figure | null;
  readonly without: Figure | null;
  readonly kind: 'line' | 'sum' | 'total';
}

const lineKey = (line: BillLine): string => `${line.version} ${line.figure.id}`;

/** The lines of both bills side by side, in the order of the tariff; each stands in one row. */
function pairLines(month: BookMonth): readonly AccountLine[] {
  const { bill, withoutSolar } = month;
  const without = new Map((withoutSolar?.lines ?? []).map((line) => [lineKey(line), line]));
  const versions = new Set(bill.lines.map((line) => line.version));
  return bill.lines.map((line) => ({
    key: `bill/${line.figure.id}/${versions.size > 1 ? line.version : ''}`,
    label: line.figure.label,
    note: [versions.size > 1 ? line.version : '', line.counts ? '' : 'not added up']
      .filter((part) => part !== '')
      .join(', '),
    own: line.figure,
    without: without.get(lineKey(line))?.figure ?? null,
    kind: 'line',
  }));
}

function endLines(month: BookMonth): readonly AccountLine[] {
  const { bill, withoutSolar } = month;
  const rounding = bill.roundingDifference ?? withoutSolar?.roundingDifference ?? null;
  return [
    {
      key: 'bill/sum',
      label: 'Sum of the lines',
      note: '',
      own: bill.sum,
      without: withoutSolar?.sum ?? null,
      kind: 'sum',
    },
    ...(rounding === null
      ? []
      : [
          {
            key: 'bill/rounding',
            label: rounding.label,
            note: '',
            own: bill.roundingDifference,
            without: withoutSolar?.roundingDifference ?? null,
            kind: 'line',
          } as const,
        ]),
    {
      key: 'bill/payable',
      label: 'Payable',
      note: '',
      own: bill.payable,
      without: withoutSolar?.payable ?? null,
      kind: 'total',
    },
  ];
}

function renderAmount(figure: Figure | null, className: string, desk: Desk): TemplateResult {
  if (figure === null) return html`<span class="amount ${className}">—</span>`;
  const isCredit = figure.numerator < 0;
  return html`<span class="amount ${className} ${isCredit ? 'credit' : ''}"
    >${desk.view.writing.amount(figure)}</span
  >`;
}

function renderLine(line: AccountLine, desk: Desk): TemplateResult {
  const isOpen = desk.isOpen(line.key, false);
  return html`
    <li class=${line.kind}>
      <details
        ?open=${isOpen}
        @toggle=${(event: Event) => {
          desk.setOpen(line.key, toggled(event));
        }}
      >
        <summary>
          <span class="label">
            ${line.label}${line.note === '' ? nothing : html` <span class="hint">${line.note}</span>`}
          </span>
          <span class="hidden">, with solar</span>${renderAmount(line.own, 'own', desk)}<span class="hidden"
            >, without solar</span
          >${renderAmount(line.without, 'without', desk)}
        </summary>
        ${isOpen ? renderOpened(line, desk) : nothing}
      </details>
    </li>
  `;
}

function renderOpened(line: AccountLine, desk: Desk): TemplateResult {
  return html`
    <div class="how">
      ${
        line.own === null
          ? nothing
          : html`<p class="which">With solar</p>
              ${renderDerivation(line.own, `${line.key}/own`, desk)}`
      }
      ${
        line.without === null
          ? nothing
          : html`<p class="which">Without solar</p>
              ${renderDerivation(line.without, `${line.key}/without`, desk)}`
      }
    </div>
  `;
}

function renderSplitLine(figure: Figure, className: string, desk: Desk): TemplateResult {
  const key = `savings/${figure.id}`;
  const isOpen = desk.isOpen(key, false);
  return html`
    <li class=${className}>
      <details
        ?open=${isOpen}
        @toggle=${(event: Event) => {
          desk.setOpen(key, toggled(event));
        }}
      >
        <summary><span class="label">${figure.label}</span>${renderAmount(figure, 'own', desk)}</summary>
        ${isOpen ? html`<div class="how">${renderDerivation(figure, key, desk)}</div>` : nothing}
      </details>
    </li>
  `;
}

function renderSavings(month: BookMonth, desk: Desk): TemplateResult {
  const { savings } = month;
  if (savings === null)
    return html`<p class="hint">What solar saved needs the generation meter and a balance that can be.</p>`;
  return html`
    <h3 class="sub">What solar saved</h3>
    <ul class="lines split">
      ${renderSplitLine(savings.fromSelfConsumption, 'line', desk)}
      ${renderSplitLine(savings.fromExport, 'line', desk)} ${renderSplitLine(savings.saving, 'total', desk)}
    </ul>
  `;
}

/** The bill as a page of an account book, the bill without solar beside it, and the saving between them. */
export function renderBill(desk: Desk): TemplateResult {
  const month = desk.view.rows[desk.selected]?.month ?? null;
  const { book, writing } = desk.view;
  if (month === null || book === null)
    return html`<p class="hint">
      The bill is written here, line by line, as soon as the month can be billed.
    </p>`;
  const { document } = book.tariff;
  return html`
    <p class="particulars">
      ${document.supplier}, ${document.name}. Account ${book.account.document.id || 'without a number'}.
      ${spanText(month, writing)}.
    </p>
    <div class="heads" aria-hidden="true">
      <span>Particulars</span><span>With solar ${writing.sign}</span><span>Without ${writing.sign}</span>
    </div>
    <ul class="lines" id="bill-lines">
      ${[...pairLines(month), ...endLines(month)].map((line) => renderLine(line, desk))}
    </ul>
    ${renderSavings(month, desk)}
  `;
}
