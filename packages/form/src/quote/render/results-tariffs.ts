import { html, nothing, type TemplateResult } from 'lit';
import type { Quote } from '@unitbook/engine';
import type { QuoteDesk } from '../quote-desk.ts';
import { tariffTable } from '../view/tariff-views.ts';
import { renderCsv, renderLaterPart, WAITING } from './results-parts.ts';
import { renderTable } from './tables.ts';

function renderCompared(quote: Quote, desk: QuoteDesk): TemplateResult {
  const { later, view, tariff } = desk;
  if (later.tariffs === null || tariff.view.kind !== 'open') return WAITING;
  const { name } = tariff.view.tariff.tariff.document;
  const table = tariffTable(quote, { name, others: later.tariffs }, view.writing);
  const { caption, heads, lines, notes } = table;
  const texts = lines.map((line) => line.map((cell) => (typeof cell === 'string' ? cell : cell.text)));
  return html`${renderTable({ id: 'quote-tariffs', caption, heads, lines: texts })}
    ${renderCsv('tariffs', table)}
    <p class="hint">
      Compare the bills after, not only the saving: a dear tariff saves more, and costs more.
    </p>
    ${notes.map((note) => html`<p class="finding question">${note}</p>`)}`;
}

/** The quote under other tariffs, where any are ticked. */
export function renderTariffResults(quote: Quote, desk: QuoteDesk): TemplateResult | typeof nothing {
  if (!desk.others.list.some(({ isTicked }) => isTicked)) return nothing;
  return renderLaterPart(
    {
      id: 'quote-compared',
      title: 'Under other tariffs',
      isThere: desk.later.tariffs !== null,
      content: renderCompared(quote, desk),
    },
    desk,
  );
}
