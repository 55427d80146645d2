import { html, nothing, type TemplateResult } from 'lit';
import { drawCashFlow } from '../charts/cash-flow.ts';
import { planCashFlow } from '../charts/cash-flow-plan.ts';
import type { CashFlowData } from '../charts/chart-data.ts';
import { cashFlowOf } from '../view/chart-views.ts';
import { paybackOn, type PaperView } from './paper-view.ts';

/** Money by year as the screen has it, in the words of the paper. */
function dataOf(paper: PaperView): CashFlowData {
  const { quote, draws, writing, words } = paper;
  const { chart, assumptions } = words;
  const data = cashFlowOf(quote, draws, writing);
  const { payback, years } = data;
  const life = assumptions.years(String(quote.years.length));
  return {
    ...data,
    title: chart.title,
    says: chart.says(years[0]?.value.text ?? '', years.at(-1)?.value.text ?? '', life),
    // Drawn narrow, the line has no name at its end: its name stands beside the drawing.
    lineName: '',
    payback:
      payback === null ? null : { ...payback, label: chart.payback(paybackOn(quote.measures.simple, paper)) },
  };
}

/** The chart of money by year on paper, and beside it what its words mean. Its figures stand in the table above it. */
export function renderPaperChart(paper: PaperView): TemplateResult | typeof nothing {
  const { chart, sentences } = paper.words;
  const data = dataOf(paper);
  const plan = planCashFlow(data, { id: 'paper-cash', size: 'narrow', writing: paper.writing });
  if (plan === null) return nothing;
  const { width, height } = plan.plot.frame;
  return html`<figure class="quote-figure" id="paper-cash">
    <svg
      class="quote-chart narrow"
      viewBox="0 0 ${width} ${height}"
      role="img"
      aria-labelledby="paper-cash-title paper-cash-says"
    >
      <title id="paper-cash-title">${data.title}</title>
      <desc id="paper-cash-says">${data.says}</desc>
      ${drawCashFlow(plan, data, chart.across)}
    </svg>
    <figcaption>
      <p>${sentences.payback}</p>
      ${plan.band === null ? nothing : html`<p>${chart.band}</p>`}
    </figcaption>
  </figure>`;
}
