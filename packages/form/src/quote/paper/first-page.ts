import { html, type TemplateResult } from 'lit';
import { exactText, parseDay, quotientText, type Quote } from '@unitbook/engine';
import { monthTable } from '../render/tables.ts';
import { renderGeneration } from './generation-part.ts';
import { renderInputs, renderSurplus } from './ground-parts.ts';
import { renderFacts, renderItem, renderPaperTable } from './paper-parts.ts';
import type { PaperView } from './paper-view.ts';

function dayText(text: string | undefined, { writing }: PaperView): string {
  const day = text === undefined ? null : parseDay(text);
  return day === null ? '' : writing.day(day);
}

function renderWho(paper: PaperView): TemplateResult {
  const { quote, words } = paper;
  const { labels, heads } = words;
  const { offer, start } = quote.input.document;
  return renderItem(
    1,
    heads.who,
    renderFacts([
      [labels.date, dayText(offer.date, paper)],
      [labels.validUntil, dayText(offer.validUntil, paper) || words.sentences.notSaid],
      [labels.customer, offer.customer ?? ''],
      [labels.site, offer.site ?? ''],
      [labels.seller, offer.seller ?? words.sentences.notSaid],
      [labels.licence, offer.licence ?? words.sentences.notSaid],
      [labels.installer, offer.installer ?? words.sentences.notSaid],
      [labels.start, dayText(start, paper)],
    ]),
  );
}

function renderSystem({ quote, words, writing }: PaperView): TemplateResult {
  const { labels, heads } = words;
  const { kW, modules = '', inverter = '', layout = '', shading = '' } = quote.input.document.plant;
  const size = writing.number(exactText(quote.input.watts, 1000));
  return renderItem(
    3,
    heads.system,
    renderFacts([
      [labels.peak, `${size}${kW === undefined ? '' : `${words.assumptions.apart}${writing.number(kW)} kW`}`],
      [labels.modules, modules],
      [labels.inverter, inverter],
      [labels.layout, layout],
      [labels.shading, shading],
    ]),
  );
}

/** What own use follows from: a share, use and generation by intervals, or nothing. */
function ownUseText({ ownUse, input, years }: Quote, { words: { sentences }, writing }: PaperView): string {
  const share = input.document.selfUse?.share;
  if (ownUse === 'profile') {
    const [first] = years;
    const part = quotientText((first?.selfUse ?? 0) * 100, Math.max(1, first?.generation ?? 0), 0);
    return sentences.ownUseByIntervals(writing.number(part));
  }
  return share === undefined ? sentences.ownUseUnknown : sentences.ownUse(writing.number(share));
}

function renderOwnUse(paper: PaperView): TemplateResult {
  const { quote, words } = paper;
  const { sentences, heads, labels } = words;
  const { selfUse } = quote.input.document;
  const basis = selfUse?.basis ?? '';
  return renderItem(
    5,
    heads.ownUse,
    html`<p>${ownUseText(quote, paper)}</p>
      ${renderFacts([[labels.reason, basis === '' ? sentences.notSaid : basis]])}`,
  );
}

function renderMonths({ quote, kept, words, writing }: PaperView): TemplateResult {
  const { lines, sum } = monthTable(quote, kept?.billed ?? null, writing);
  const total = sum === undefined ? null : [words.tables.year, ...sum.slice(1)];
  const hasFilled = quote.months.some(({ isFilled }) => isFilled);
  return renderItem(
    6,
    `${words.heads.months} (${writing.sign})`,
    html`${renderPaperTable(words.tables.months, lines, total)}${hasFilled ? html`<p>${words.sentences.filled}</p>` : ''}`,
  );
}

function renderStays({ quote, words, writing }: PaperView): TemplateResult {
  const { smallestBill, largestBill } = quote.measures;
  const text = words.sentences.stays(writing.cash(smallestBill), writing.cash(largestBill));
  return renderItem(7, words.heads.stays, html`<p>${text}</p>`);
}

/** The first page: who, from what, the plant, and the first year. */
export function renderFirstPage(paper: PaperView): TemplateResult {
  return html`
    <div class="columns">
      ${renderWho(paper)} ${renderInputs(paper)} ${renderSystem(paper)} ${renderGeneration(paper)}
      ${renderOwnUse(paper)} ${renderStays(paper)} ${renderSurplus(paper)}
    </div>
    ${renderMonths(paper)}
  `;
}
