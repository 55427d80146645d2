import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderPlainSelect } from '../../render/select.ts';
import type { CheckDesk } from '../check-desk.ts';
import { billGroups } from '../document/bill-groups.ts';
import { putInBill, textInBill } from '../document/edit-bills.ts';
import type { BillGroup } from '../document/bill-fields.ts';
import { renderRow, rowOf } from './bill-row.ts';
import { renderPrintedLines } from './printed-lines.ts';

function renderStatus(desk: CheckDesk): TemplateResult {
  const { bill } = desk.bill;
  return html`<div class="row status">
    <div class="typed">
      ${renderPlainSelect({
        id: 'check-status',
        label: 'Read status',
        hint: 'a flag beside the readings, such as OK, EST or AVG',
        value: textInBill(bill, ['status']),
        options: [
          ['', 'not printed'],
          ['actual', 'read'],
          ['estimated', 'estimated'],
        ],
        choose: (value) => {
          desk.change(putInBill(bill, ['status'], value === '' ? undefined : value));
        },
      })}
    </div>
    <span class="computed"></span>
  </div>`;
}

function renderGroup({ key, title, fields }: BillGroup, desk: CheckDesk): TemplateResult {
  return html`<section class="part" aria-labelledby="check-group-${key}">
    <h3 class="sub" id="check-group-${key}">${title}</h3>
    ${fields.map((field) => renderRow(rowOf(field, desk), desk))}
    ${key === 'dates' ? renderStatus(desk) : nothing}
  </section>`;
}

function renderTakeOut(desk: CheckDesk): TemplateResult | typeof nothing {
  const { bill, view, store } = desk;
  if (view.bills.length === 1 && bill.isBlank) return nothing;
  return renderButton(
    'Take this bill out',
    () => {
      store.takeBill(bill.key, 'The bill was taken out.');
      desk.focusField('check-undo');
    },
    { id: 'check-take-bill', className: 'quiet' },
  );
}

/** The printed bill in the order of paper, each figure beside the right one. */
export function renderPrintedBill(desk: CheckDesk): TemplateResult {
  const groups = billGroups(desk.bill.form);
  const before = groups.filter(({ key }) => key !== 'account' && key !== 'paid');
  const after = groups.filter(({ key }) => key === 'account' || key === 'paid');
  return html`<p class="hint">
      Type only what is printed. The two reading dates are needed; everything else can stay blank.
    </p>
    <div class="columns ${desk.isStale ? 'stale' : ''}">
      <div class="heads" aria-hidden="true"><span>Printed on the paper</span><span>Right</span></div>
      ${before.map((group) => renderGroup(group, desk))}
      <section class="part" aria-labelledby="check-group-lines">
        <h3 class="sub" id="check-group-lines">Charges</h3>
        ${renderPrintedLines(desk)}
      </section>
      ${after.map((group) => renderGroup(group, desk))}
    </div>
    ${renderTakeOut(desk)}`;
}
