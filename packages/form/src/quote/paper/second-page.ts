import { html, type TemplateResult } from 'lit';
import { yearTable } from '../render/tables.ts';
import { hasSeveralReturns } from '../words/payback-text.ts';
import { caseLines } from './case-lines.ts';
import { renderPaperChart } from './paper-chart.ts';
import { renderFacts, renderItem, renderPaperTable } from './paper-parts.ts';
import type { PaperView } from './paper-view.ts';

function renderYears(paper: PaperView): TemplateResult {
  const { quote, words, writing } = paper;
  const { lines, heads } = yearTable(quote, writing);
  const names =
    heads.length === words.tables.years.length
      ? words.tables.years
      : words.tables.years.filter((_, at) => at !== 8);
  return renderItem(
    12,
    `${words.heads.years} (${writing.sign})`,
    html`${renderPaperTable(names, lines)} ${renderPaperChart(paper)}`,
  );
}

function renderCases(paper: PaperView): TemplateResult {
  const { quote, cases, words, writing } = paper;
  const isSeveral = hasSeveralReturns([quote, ...cases.map((one) => one.quote)]);
  return renderItem(
    13,
    `${words.heads.sensitivity} (${writing.sign})`,
    html`${renderPaperTable(words.tables.cases, caseLines(paper))}${isSeveral ? html`<p>${words.cases.ofSeveral}</p>` : ''}`,
  );
}

const renderList = (texts: readonly string[]): TemplateResult =>
  html`<ul>
    ${texts.map((text) => html`<li>${text}</li>`)}
  </ul>`;

function renderWarnings({ words }: PaperView): TemplateResult {
  return renderItem(14, words.heads.warnings, renderList(words.sentences.warnings));
}

function renderPromise({ quote, words }: PaperView): TemplateResult {
  const { promise = '', contact = '' } = quote.input.document.offer;
  const { sentences, labels } = words;
  return renderItem(
    15,
    words.heads.promise,
    html`<p>${promise === '' ? sentences.noPromise : promise}</p>
      ${renderFacts([[labels.contact, contact === '' ? sentences.notSaid : contact]])}
      ${renderList(sentences.promise)}`,
  );
}

function renderSignature({ words }: PaperView): TemplateResult {
  const { labels, sentences, heads } = words;
  const line = (label: string): TemplateResult => html`<p class="sign"><span>${label}</span></p>`;
  return renderItem(
    16,
    heads.signature,
    html`<p>${sentences.signature}</p>
      <div class="signs">${line(labels.place)} ${line(labels.forCustomer)} ${line(labels.forSeller)}</div>`,
  );
}

/** The second page: the years, the cases, what to read, and signatures. */
export function renderSecondPage(paper: PaperView): TemplateResult {
  return html`<div class="second-page">
    ${renderYears(paper)} ${renderCases(paper)}
    <div class="columns">${renderWarnings(paper)} ${renderPromise(paper)}</div>
    ${renderSignature(paper)}
  </div>`;
}
