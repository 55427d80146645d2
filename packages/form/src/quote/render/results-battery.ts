import { html, nothing, type TemplateResult } from 'lit';
import { exactText, type Quote } from '@unitbook/engine';
import type { QuoteDesk } from '../quote-desk.ts';
import { paybackWords } from '../view/answer-view.ts';
import type { BatteryLater } from '../work/later-work.ts';
import { batteryLines } from '../view/battery-view.ts';
import { renderAnswerLine } from './answer.ts';
import { renderTable } from './tables.ts';

/** The battery by itself, so that the plant does not pay for it unseen. */
export function renderBatteryResult(quote: Quote, desk: QuoteDesk): TemplateResult | typeof nothing {
  const lines = batteryLines(quote, desk.view.writing);
  if (lines.length === 0) return nothing;
  return html`<section class="part" aria-labelledby="quote-battery-result">
    <h3 class="sub" id="quote-battery-result">The battery by itself</h3>
    <dl class="answer">${lines.map(renderAnswerLine)}</dl>
  </section>`;
}

/** The size of the quote beside a battery, and the size that is worth most beside it. */
function batteryLine({ wattHours, points, own }: BatteryLater, { view }: QuoteDesk): readonly string[] {
  const { writing } = view;
  const best = points.reduce(
    (most, point) => (most === null || point.netPresentValue > most.netPresentValue ? point : most),
    points[0] ?? null,
  );
  return [
    wattHours === 0 ? 'none' : `${writing.number(exactText(wattHours, 1000))} kWh`,
    own === null ? '' : writing.column(own.saving),
    own === null ? '' : paybackWords({ first: own.payback, last: own.paybackForGood }, writing),
    own === null ? '' : writing.column(own.netPresentValue),
    best === null ? '' : `${writing.number(exactText(best.watts, 1000))} kWp`,
  ];
}

/** Other batteries beside the same plant, where the quote has one. */
export function renderBatterySizes(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { batteries } = desk.later;
  if (batteries === null || batteries.length === 0) return nothing;
  return html`${renderTable({
      id: 'quote-batteries',
      caption: `Other batteries beside this plant; money in ${desk.view.writing.sign}`,
      heads: ['Battery', 'Saving, year 1', 'Payback of both', 'Present value', 'Plant worth most beside it'],
      lines: batteries.map((one) => batteryLine(one, desk)),
    })}
    <p class="hint">Power and prices of a battery go by its capacity.</p>`;
}
