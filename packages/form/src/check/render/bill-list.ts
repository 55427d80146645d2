import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import type { CheckDesk } from '../check-desk.ts';
import { unreadPoints } from '../view/open-points.ts';
import { periodText, verdictWords } from '../view/verdict-words.ts';
import type { BillView } from '../view/view-check.ts';

/** What a bill is called in the list: its days, or what was typed of them. */
function nameOf({ printed, bill, isBlank }: BillView, { view: { writing } }: CheckDesk): string {
  if (printed !== null) return periodText(printed.period, writing);
  if (isBlank) return 'A blank bill';
  const days = [bill.from, bill.to].filter((text) => text.trim() !== '');
  return days.length === 0 ? 'A bill without its days' : `A bill of ${days.join(' to ')}`;
}

function renderBill(bill: BillView, desk: CheckDesk): TemplateResult {
  const { results, view, store } = desk;
  const result = results.bills[bill.at];
  const unread = unreadPoints(bill).map(({ label }) => label);
  const short = result === undefined ? '' : verdictWords(result.checked, view.writing, unread).short;
  const isOpen = bill.key === desk.bill.key;
  return html`<li>
    <button
      type="button"
      class="bill"
      aria-current=${isOpen ? 'true' : nothing}
      data-bill=${bill.key}
      @click=${() => {
        store.openBill(bill.key);
      }}
    >
      <span>${nameOf(bill, desk)}</span> <strong class="short">${short}</strong>
    </button>
  </li>`;
}

/** The bills in order of time, each with its answer in a word; the one that lies open is marked. */
export function renderBillList(desk: CheckDesk): TemplateResult {
  const { view, store, focusField } = desk;
  return html`<nav class="bills" aria-label="Bills">
    <ul>
      ${view.bills.map((bill) => renderBill(bill, desk))}
    </ul>
    ${renderButton(
      'Add a bill',
      () => {
        store.addBill();
        focusField('check-from');
      },
      { id: 'check-add-bill' },
    )}
    ${
      store.removed === ''
        ? nothing
        : html`<p class="undo" role="status">
            ${store.removed}
            ${renderButton(
              'Put it back',
              () => {
                store.undo();
                focusField(store.removed === '' ? 'check-add-bill' : 'check-undo');
              },
              { id: 'check-undo' },
            )}
          </p>`
    }
  </nav>`;
}
