import { html, nothing, type TemplateResult } from 'lit';
import { exactText, quoteWarnings, savingOfAddedUnits, type Quote, type Sizes } from '@unitbook/engine';
import { billsTable, renderBills } from '../charts/bills.ts';
import { cashFlowTable, renderCashFlow } from '../charts/cash-flow.ts';
import type { ChartView } from '../charts/chart-data.ts';
import { renderSensitivity, sensitivityTable } from '../charts/sensitivity.ts';
import { renderSizeCurve, sizeCurveTable } from '../charts/size-curve.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { billsOf, cashFlowOf, sensitivityOf, sizeCurveOf } from '../view/chart-views.ts';
import type { QuoteWriting } from '../view/quote-writing.ts';
import { ENGLISH_CASES } from '../words/english-sentences.ts';
import { hasSeveralReturns } from '../words/payback-text.ts';
import { renderQuoteFinding } from './quote-findings.ts';
import { renderBeside } from './beside.ts';
import { renderMeasures } from './results-measures.ts';
import { renderBatteryResult, renderBatterySizes } from './results-battery.ts';
import { renderCsv, renderLaterPart, WAITING } from './results-parts.ts';
import { renderTariffResults } from './results-tariffs.ts';
import { caseTable, monthTable, renderTable, yearTable } from './tables.ts';

/** How a chart stands on the page. */
const chartView = (id: string, { size, view: { writing } }: QuoteDesk): ChartView => ({
  id,
  size,
  writing,
});

/** The months and the chart of their bills. */
function renderFirstYear(quote: Quote, desk: QuoteDesk): TemplateResult {
  const { writing } = desk.view;
  const bills = billsOf(quote, writing);
  const hasFilled = quote.months.some(({ isFilled }) => isFilled);
  return html`<section class="part" aria-labelledby="quote-first-year">
    <h3 class="sub" id="quote-first-year">The first year</h3>
    ${renderTable(monthTable(quote, desk.later.kept?.billed ?? null, writing))}
    ${hasFilled ? html`<p class="hint">* The use of this month was filled by a rule, for want of a bill.</p>` : nothing}
    ${renderBills(bills, chartView('quote-chart-bills', desk))} ${renderCsv('bills', billsTable(bills))}
  </section>`;
}

/** The years: the chart, and the table folded away beneath it. */
function renderLife(quote: Quote, desk: QuoteDesk): TemplateResult {
  const { writing } = desk.view;
  const cash = cashFlowOf(quote, desk.later.draws, writing);
  return html`<section class="part" aria-labelledby="quote-life">
    <h3 class="sub" id="quote-life">The whole life</h3>
    ${renderCashFlow(cash, chartView('quote-chart-cash', desk))} ${renderCsv('years', cashFlowTable(cash))}
    <details
      class="help"
      ?open=${desk.isOpen('quote-year-table', false)}
      @toggle=${(event: Event) => {
        desk.setOpen('quote-year-table', (event.currentTarget as HTMLDetailsElement).open);
      }}
    >
      <summary>Year by year</summary>
      ${desk.isOpen('quote-year-table', false) ? renderTable(yearTable(quote, writing)) : nothing}
    </details>
  </section>`;
}

/** What comes of other inputs and rules. */
function renderCases(quote: Quote, desk: QuoteDesk): TemplateResult {
  const { cases } = desk.later;
  const { writing } = desk.view;
  if (cases === null) return WAITING;
  const data = sensitivityOf(quote, cases, writing);
  const found = cases.flatMap(({ findings }) => findings);
  return html`${renderSensitivity(data, chartView('quote-chart-cases', desk))}
    ${renderCsv('cases', sensitivityTable(data))} ${renderTable(caseTable(quote, cases, writing))}
    ${hasSeveralReturns([quote, ...cases.map((one) => one.quote)]) ? html`<p class="hint">${ENGLISH_CASES.ofSeveral}</p>` : nothing}
    <div class="findings">${found.map((finding) => renderQuoteFinding(finding, desk))}</div>`;
}

/** What each unit earns that the next larger size makes more, beside the mean of this plant. */
function stepText(quote: Quote, { points }: Sizes, writing: QuoteWriting): string {
  const at = points.findIndex(({ watts }) => watts > quote.input.watts);
  const step = savingOfAddedUnits(points, at, quote.grid);
  const size = points[at]?.watts;
  const [first] = quote.years;
  if (step === null || size === undefined || first === undefined || first.generation === 0) return '';
  const mean = writing.share({ numerator: first.saving * 1000, denominator: first.generation * quote.grid });
  const name = writing.number(exactText(size, 1000));
  return `Each unit that the step to ${name} kWp adds earns ${writing.share(step)}, against ${mean} for each unit of this plant in the mean.`;
}

/** Sizes, and what to say before a larger plant is sold. */
function renderSizes(quote: Quote, desk: QuoteDesk): TemplateResult {
  const { sizes } = desk.later;
  const { writing } = desk.view;
  if (sizes === null) return WAITING;
  const data = sizeCurveOf(quote, sizes, writing);
  const { onlySurplusFrom } = sizes;
  const isBeyond = onlySurplusFrom !== null && quote.input.watts >= onlySurplusFrom.watts;
  return html`${renderSizeCurve(data, chartView('quote-chart-sizes', desk))}
    ${renderCsv('sizes', sizeCurveTable(data))} ${renderBatterySizes(desk)}
    <p class=${isBeyond ? 'caution' : 'hint'} id="quote-upsell">
      ${isBeyond ? html`<strong class="mark">This plant is beyond it:</strong>` : html`<strong>Before a larger one is sold:</strong>`}
      ${data.says} ${stepText(quote, sizes, writing)}
    </p>`;
}

/** What the seller should read before the quote is printed. */
function renderWarnings(quote: Quote, desk: QuoteDesk): TemplateResult {
  const notes = desk.view.findings.filter(({ severity }) => severity !== 'error');
  const all = [...(desk.later.warnings ?? quoteWarnings(quote)), ...notes];
  return html`<section class="part" aria-labelledby="quote-warnings">
    <h3 class="sub" id="quote-warnings">Before it is printed</h3>
    ${
      all.length === 0
        ? html`<p class="hint">
            Nothing in it promises more than it can keep, as far as this page can tell.
          </p>`
        : html`<div class="findings" id="quote-warning-list">
            ${all.map((finding) => renderQuoteFinding(finding, desk))}
          </div>`
    }
  </section>`;
}

/** Everything beneath the answer. */
export function renderResults(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { quote } = desk.view;
  if (quote === null) return nothing;
  const { cases, sizes } = desk.later;
  return html`
    ${renderFirstYear(quote, desk)} ${renderBatteryResult(quote, desk)} ${renderLife(quote, desk)}
    ${renderMeasures(quote, desk)}
    ${renderLaterPart(
      {
        id: 'quote-what-if',
        title: 'If it comes otherwise',
        isThere: cases !== null,
        content: renderCases(quote, desk),
      },
      desk,
    )}
    ${renderTariffResults(quote, desk)}
    ${renderLaterPart(
      {
        id: 'quote-sizes',
        title: 'Other sizes',
        isThere: sizes !== null,
        content: renderSizes(quote, desk),
      },
      desk,
    )}
    ${renderWarnings(quote, desk)} ${renderBeside(desk)}
  `;
}
