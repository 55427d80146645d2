import { html, nothing, type TemplateResult } from 'lit';
import type { BillLine, BookMonth, Figure } from '@unitbook/engine';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { renderDerivation } from './derivation.ts';
import { spanText } from './answer.ts';

/** A line of the account: with the plant, and beside it without. */
interface AccountLine {
  readonly key: string;
  readonly label: string;
  readonly own: Figure | null;
  readonly without?: Figure | null;
  readonly kind?: 'sum' | 'total';
  readonly note?: string;
}

const lineKey = (line: BillLine): string => `${line.version} ${line.figure.id}`;

/** The lines of both bills side by side, in the order of the tariff; each stands in one row. */
function pairLines({ bill, withoutSolar }: BookMonth): readonly AccountLine[] {
  const without = new Map((withoutSolar?.lines ?? []).map((line) => [lineKey(line), line]));
  const hasVersions = new Set(bill.lines.map((line) => line.version)).size > 1;
  return bill.lines.map((line) => {
    const version = hasVersions ? line.version : '';
    return {
      key: `bill/${line.figure.id}/${version}`,
      label: line.figure.label,
      note: [version, line.counts ? '' : 'not added up'].filter((part) => part !== '').join(', '),
      own: line.figure,
      without: without.get(lineKey(line))?.figure ?? null,
    };
  });
}

function endLines({ bill, withoutSolar }: BookMonth): readonly AccountLine[] {
  const rounding = bill.roundingDifference;
  const roundingWithout = withoutSolar?.roundingDifference ?? null;
  const { label = '' } = rounding ?? roundingWithout ?? {};
  return [
    {
      key: 'bill/sum',
      label: 'Sum of the lines',
      own: bill.sum,
      without: withoutSolar?.sum ?? null,
      kind: 'sum',
    },
    ...(label === '' ? [] : [{ key: 'bill/rounding', label, own: rounding, without: roundingWithout }]),
    {
      key: 'bill/payable',
      label: 'Payable',
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

function renderPart(words: string, figure: Figure | null, key: string, desk: Desk): unknown {
  if (figure === null) return nothing;
  return html`${words === '' ? nothing : html`<p class="which">${words}</p>`}
  ${renderDerivation(figure, key, desk)}`;
}

function renderHow({ own, without, key }: AccountLine, desk: Desk): TemplateResult {
  return html`<div class="how">
    ${
      without === undefined
        ? renderPart('', own, key, desk)
        : [
            renderPart('With solar', own, `${key}/own`, desk),
            renderPart('Without solar', without, `${key}/without`, desk),
          ]
    }
  </div>`;
}

/** One line of the account; without a second amount, it has one column. */
function renderLine(line: AccountLine, desk: Desk): TemplateResult {
  const { note = '', without } = line;
  const summary = html`<span class="label"
      >${line.label}${note === '' ? nothing : html` <span class="hint">${note}</span>`}</span
    >${
      without === undefined
        ? renderAmount(line.own, 'own', desk)
        : html`<span class="hidden">, with solar</span>${renderAmount(line.own, 'own', desk)}<span
              class="hidden"
              >, without solar</span
            >${renderAmount(without, 'without', desk)}`
    }`;
  const content = (isOpen: boolean): unknown => (isOpen ? renderHow(line, desk) : nothing);
  return html`<li class=${line.kind ?? 'line'}>${renderFold({ key: line.key, summary, content }, desk)}</li>`;
}

function renderSavings({ savings }: BookMonth, desk: Desk): TemplateResult {
  if (savings === null)
    return html`<p class="hint">What solar saved needs the generation meter and a balance that can be.</p>`;
  const line = (own: Figure, kind?: 'total'): TemplateResult =>
    renderLine({ key: `savings/${own.id}`, label: own.label, own, ...(kind && { kind }) }, desk);
  return html`
    <h3 class="sub">What solar saved</h3>
    <ul class="lines split">
      ${line(savings.fromSelfConsumption)} ${line(savings.fromExport)} ${line(savings.saving, 'total')}
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
      <span class="tip">Open a line to see where it comes from.</span>
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
