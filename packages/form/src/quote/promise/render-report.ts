import { html, nothing, type TemplateResult } from 'lit';
import type { PromiseReport, Quote } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderBills } from '../charts/bills.ts';
import { renderTable } from '../render/tables.ts';
import type { PromiseDesk } from './promise-desk.ts';
import { billsData, causeTable, periodTable } from './promise-tables.ts';
import type { PromiseView } from './promise-view.ts';
import {
  billSentence,
  keptSentence,
  paybackDate,
  periodText,
  weatherSentence,
  type Compared,
} from './promise-words.ts';

/** A report that is there, with what it is written by. */
interface Told extends Pick<PromiseView, 'writing' | 'notes'> {
  readonly quote: Quote;
  readonly report: PromiseReport;
}

const row = (key: string, [label, value, note]: readonly [string, string, string]): TemplateResult =>
  html`<div>
    <dt>${label}</dt>
    <dd id="promise-${key}">${value}</dd>
    <dd class="note" id="promise-note-${key}">${note}</dd>
  </div>`;

/** The answer in one sentence, and what goes with it. */
function renderAnswer({ quote, report, writing, notes }: Told): TemplateResult {
  const { promised, actual, generation, payback } = report;
  const isHigh = actual.after > promised.after;
  const time = (years: number | null): string => paybackDate(years, quote.input.start, writing);
  return html`<section class="part" aria-labelledby="promise-why-high">
    <h4 id="promise-why-high">${isHigh ? 'Why is my bill still high?' : 'Are the bills as quoted?'}</h4>
    <p class="verdict" id="promise-answer" role="status">${billSentence(report, 'Your bills', writing)}</p>
    <dl class="answer">
      ${row('saved', ['Saved so far', writing.cash(actual.saving), keptSentence(report, writing)])}
      ${row('bills', [
        'Bills with the plant',
        writing.cash(actual.after),
        `Quoted were ${writing.cash(promised.after)}. Without the plant they would have been ${writing.cash(actual.before)}.`,
      ])}
      ${row('generation', [
        'Generation, of what was quoted',
        writing.percent(generation.ratio),
        weatherSentence(generation, writing),
      ])}
      ${row('payback', [
        'Paid back, with what came so far',
        time(payback.restAsQuoted),
        `Quoted: ${time(payback.promised)}. If all goes on as so far: ${time(payback.ifItGoesOn)}.`,
      ])}
    </dl>
    ${notes.map((note) => html`<p class="provided">${note}</p>`)}
  </section>`;
}

function renderChoice({ report, writing }: Told, { chosen, choosePeriod }: PromiseDesk): TemplateResult {
  return html`<div class="field which-bills">
    <label for="promise-period">Which bills</label>
    <select
      id="promise-period"
      @change=${(event: Event) => {
        const value = typed(event);
        choosePeriod(value === '' ? null : Number.parseInt(value, 10));
      }}
    >
      <option value="" .selected=${chosen === null}>all of them together</option>
      ${report.periods.map(
        ({ period }, at) =>
          html`<option value=${at} .selected=${chosen === at}>${periodText(period, writing)}</option>`,
      )}
    </select>
  </div>`;
}

/** What explains the difference, of all bills or of one. */
function renderCauses(told: Told, desk: PromiseDesk): TemplateResult {
  const { report, writing } = told;
  const one = desk.chosen === null ? undefined : report.periods[desk.chosen];
  const compared: Compared = one ?? report;
  const which = one === undefined ? 'All bills together' : periodText(one.period, writing);
  return html`<section class="part" aria-labelledby="promise-why">
    <h4 id="promise-why">Why it differs</h4>
    ${renderChoice(told, desk)}
    ${
      one === undefined
        ? nothing
        : html`<p class="verdict" id="promise-one" role="status">
            ${billSentence(one, `The bill of ${which}`, writing)}
          </p>`
    }
    ${renderTable(causeTable(compared, which, writing))}
    <p class="hint">
      Each line is what the bills change when this cause is put to what came, those above it already so.
      Another order would give other parts; the sum is always the same.
    </p>
    ${
      one === undefined
        ? html`<p class="hint">
            Generation came to ${writing.percent(report.generation.ratio)} of the quote.
            ${weatherSentence(report.generation, writing)}
          </p>`
        : nothing
    }
  </section>`;
}

function renderMonths({ report, writing }: Told, desk: PromiseDesk): TemplateResult {
  return html`<section class="part" aria-labelledby="promise-months">
    <h4 id="promise-months">Month by month</h4>
    ${renderTable(periodTable(report, writing))}
    ${renderButton('Save as CSV', desk.saveCsv, { id: 'promise-csv', className: 'quiet', about: 'month by month' })}
    ${renderBills(billsData(report, writing), { id: 'promise-chart-bills', size: 'narrow', writing })}
  </section>`;
}

/** The promise and what came: the answer, why it differs, month by month; nothing where there is no report. */
export function renderReport(desk: PromiseDesk): TemplateResult | typeof nothing {
  const { quote, report, writing, notes } = desk.view;
  if (quote === null || report === null) return nothing;
  const told = { quote, report, writing, notes };
  return html`${renderAnswer(told)} ${renderCauses(told, desk)} ${renderMonths(told, desk)}`;
}
