import { html, nothing, type TemplateResult } from 'lit';
import { isDecimalText, parseDay, type ComparedFigure, type Quotient } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { renderInput } from '../../render/field.ts';
import type { CheckDesk } from '../check-desk.ts';
import { billFieldId, type BillField } from '../document/bill-fields.ts';
import { putInBill, textInBill } from '../document/edit-bills.ts';
import { plainOf } from '../document/read-typed-bill.ts';
import { differenceText, figureText, isOpposite } from '../view/figure-words.ts';
import { findingsAt, renderFindings } from './check-findings.ts';

/** A row of the bill: its field, and how it is typed. */
export interface BillRow {
  readonly field: BillField;
  readonly id: string;
  readonly type: (text: string) => void;
  /** Stands above the amount of a line that the tariff does not have. */
  readonly name?: TemplateResult;
}

/** The row of a field that stands in the document at its path. */
export function rowOf(field: BillField, desk: CheckDesk): BillRow {
  return {
    field,
    id: billFieldId(field.path),
    type: (text) => {
      desk.change(putInBill(desk.bill.bill, field.path, text));
    },
  };
}

/** How a text was read, where it does not stand there just so. */
function echoOf(field: BillField, typed: string, { view: { writing } }: CheckDesk): string {
  const plain = plainOf(field, typed);
  if (field.is === 'day') {
    const day = parseDay(plain);
    return day === null ? '' : writing.day(day);
  }
  if (field.is === 'text' || plain === typed.trim() || !isDecimalText(plain)) return '';
  return `Read as ${writing.number(plain)}`;
}

/** What a figure comes to on the right bill; null: not known, or nothing is compared. */
function rightOf({ figure }: BillField, { result }: CheckDesk): Quotient | null {
  if (figure === undefined) return null;
  return result?.checked.right?.figures.get(figure) ?? null;
}

function comparedOf({ figure }: BillField, { result }: CheckDesk): ComparedFigure | null {
  return result?.checked.compared.find(({ name }) => name === figure) ?? null;
}

/** The computed column: what the figure should be, and by how much the printed one is off. */
function renderRight(row: BillRow, desk: CheckDesk): TemplateResult {
  const { field, id } = row;
  const compared = comparedOf(field, desk);
  const right = compared?.computed ?? rightOf(field, desk);
  const { writing } = desk.view;
  const differs = compared !== null && compared.computed !== null && !compared.agrees;
  return html`<span class="computed" id="${id}-right">
    ${
      right === null
        ? nothing
        : html`<span class="hidden">Right:</span>
            <span class="amount">${figureText(field.figure ?? '', right, writing)}</span>`
    }
    ${
      differs
        ? html`<span class="off"
            ><span class="hidden">, printed differs by</span> ${differenceText(compared, writing)}</span
          >`
        : nothing
    }
  </span>`;
}

/** A line typed without its minus is offered with it. */
function renderSign(
  { field, id, type }: BillRow,
  typed: string,
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const compared = comparedOf(field, desk);
  const plain = plainOf(field, typed);
  if (desk.isStale || compared?.computed == null || !isDecimalText(plain)) return nothing;
  if (!isOpposite(compared.printed, compared.computed)) return nothing;
  const other = plain.startsWith('-') ? plain.slice(1) : `-${plain}`;
  return html`<div class="finding question" data-code="sign">
    <p><strong class="mark">A question:</strong> is it printed with the other sign?</p>
    <div class="fixes">
      ${renderButton(`Use ${desk.view.writing.number(other)}`, () => {
        type(other);
        desk.focusField(id);
      })}
    </div>
  </div>`;
}

/** A row whole: label, input and echo on the left, what is computed on the right, findings beneath. */
export function renderRow(row: BillRow, desk: CheckDesk): TemplateResult {
  const { field, id, type, name } = row;
  const value = textInBill(desk.bill.bill, field.path);
  // A number is called wrong only once it is left.
  const findings = desk.typing === id ? [] : findingsAt(field.path, desk);
  const compared = comparedOf(field, desk);
  const differs = compared !== null && compared.computed !== null && !compared.agrees;
  const { label, hint, is } = field;
  const isEmpty = value.trim() === '' && rightOf(field, desk) === null;
  return html`<div
    class="row ${differs ? 'differs' : ''} ${isEmpty ? 'empty' : ''}"
    data-figure=${field.figure ?? nothing}
  >
    <div class="typed">
      ${name ?? nothing}
      <label for=${id}>${label}</label>
      ${hint === undefined ? nothing : html`<span class="hint" id="${id}-hint">${hint}</span>`}
      ${renderInput({
        id,
        label,
        ...(hint === undefined ? {} : { hint }),
        value,
        echo: '',
        findings,
        inputMode: is === 'number' || is === 'credit' ? 'decimal' : 'text',
        input: type,
      })}
      <span class="echo" id="${id}-echo">${echoOf(field, value, desk)}</span>
    </div>
    ${renderRight(row, desk)}
    <div class="told">
      ${renderFindings(findings, id, desk, (text) => {
        type(text);
        desk.focusField(id);
      })}
      ${renderSign(row, value, desk)}
    </div>
  </div>`;
}
