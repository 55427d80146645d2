import { html, nothing, type TemplateResult } from 'lit';
import { figureValue, workedOut } from '@unitbook/engine';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { renderDerivation } from './derivation.ts';

/** What the month shown was counted on and what it carries forward, each opening to where it comes from. */
export function renderWorkedOut(desk: Desk): TemplateResult | typeof nothing {
  const month = desk.view.rows[desk.selected]?.month ?? null;
  const { book, writing } = desk.view;
  if (month === null || book === null) return nothing;
  const figures = [...workedOut(book.tariff, month), ...month.ledgers.map(({ closing }) => closing)];
  if (figures.length === 0) return nothing;
  return html`
    <h3 class="sub">Worked out to ${writing.day(month.energy.period.to)}</h3>
    <ul class="lines split">
      ${figures.map((figure) => {
        const key = `worked-out/${figure.id}`;
        const summary = html`<span class="label">${figure.label}</span>
          <span class="amount">${figureValue(figure, writing)}</span>`;
        const content = (isOpen: boolean): unknown =>
          isOpen ? html`<div class="how">${renderDerivation(figure, key, desk)}</div>` : nothing;
        return html`<li>${renderFold({ key, summary, content }, desk)}</li>`;
      })}
    </ul>
  `;
}
