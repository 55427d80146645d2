import { html, type TemplateResult } from 'lit';
import type { CheckDesk } from '../check-desk.ts';
import { renderSheets } from '../report/render-sheets.ts';
import { renderAnswer } from './answer.ts';
import { renderBillList } from './bill-list.ts';
import { renderCautions } from './cautions.ts';
import { renderCheckShelf } from './check-shelf.ts';
import { renderGround } from './ground.ts';
import { renderPrintedBill } from './printed-bill.ts';

/** Printed bills as an account book: the answer on the left page, the bill beside the right one on the right page. */
export function renderCheckBook(desk: CheckDesk): TemplateResult {
  return html`${renderCheckShelf(desk)}
    <div class="book check-book ${desk.printed === 'page' ? '' : `prints-${desk.printed}`}">
      <section class="page answer-page" aria-labelledby="check-answer">
        <h2 id="check-answer">The answer</h2>
        ${renderBillList(desk)} ${renderAnswer(desk)}
      </section>
      <section class="page paper-page" aria-labelledby="check-paper">
        <h2 id="check-paper">The printed bill</h2>
        ${renderGround(desk)} ${renderPrintedBill(desk)}
      </section>
      ${renderSheets(desk)} ${renderCautions()}
    </div>`;
}
