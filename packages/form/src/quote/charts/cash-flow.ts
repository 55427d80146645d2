import { nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { CashFlowData, ChartView } from './chart-data.ts';
import { planCashFlow, type CashFlowPlan } from './cash-flow-plan.ts';
import { drawAcross, drawFlag, drawUpright, renderFigure, type Key } from './figure.ts';
import { GAP } from './frame.ts';
import { NONE, type ChartTable } from './table.ts';

/**
 * The numbers behind the chart of money by year.
 *
 * @example
 * cashFlowTable({ title: 'Money', says: '', unit: '₹', years: [], lineName: 'as quoted', payback: null }).heads //=> ["Year","as quoted"]
 */
export function cashFlowTable({ title, years, lineName, payback }: CashFlowData): ChartTable {
  const hasBand = years.some(({ band }) => band !== null);
  return {
    caption: title,
    heads: ['Year', lineName, ...(hasBand ? ['P10', 'P50', 'P90'] : [])],
    lines: years.map(({ label, value, band }) => [
      label,
      value,
      ...(hasBand ? [band?.low ?? NONE, band?.middle ?? NONE, band?.high ?? NONE] : []),
    ]),
    notes: payback === null ? [] : [payback.label],
  };
}

/**
 * What the chart of money by year draws.
 *
 * @param name  of the axis across
 */
export function drawCashFlow(
  plan: CashFlowPlan,
  data: CashFlowData,
  name = 'years since the purchase',
): SVGTemplateResult {
  const { plot, across, points, line, band, ends, payback } = plan;
  const { frame } = plot;
  return svg`
    ${drawUpright(plot, data.unit)} ${drawAcross(frame, across, name)}
    ${
      band === null
        ? nothing
        : svg`<path class="hatch" d=${band.hatch} /><path class="edge" d=${band.edge} />
          <path class="halo" d=${band.middle} /><path class="dashed" d=${band.middle} />`
    }
    <path class="halo" d=${line} /><path class="line" d=${line} />
    ${points.map(([x, y]) => svg`<circle class="dot" cx=${x} cy=${y} r="2" />`)}
    ${ends.map(({ name, y }) => svg`<text class="end" x=${frame.width - frame.right + GAP} y=${y + 4}>${name}</text>`)}
    ${
      payback === null
        ? nothing
        : svg`${drawFlag(payback.flag, payback.at[1])}
          <circle class="ring" cx=${payback.at[0]} cy=${payback.at[1]} r="4.5" />`
    }`;
}

function keysOf({ lineName }: CashFlowData, { band }: CashFlowPlan): readonly Key[] {
  const own: Key = {
    drawing: svg`<path class="line" d="M1 7H23" /><circle class="dot" cx="12" cy="7" r="2" />`,
    text: lineName,
  };
  const banded: readonly Key[] = [
    { drawing: svg`<path class="dashed" d="M1 7H23" />`, text: 'P50: half of all cases end above it' },
    {
      drawing: svg`<path class="hatch" d="M2 13L13 2M8 13L19 2M14 13L22 5M1 7L6 2" /><path class="edge" d="M1 1H23M1 13H23" />`,
      text: 'P10 to P90: eight cases of ten',
    },
  ];
  return [own, ...(band === null ? [] : banded)];
}

/** Money by year since the purchase: a line, the band of what may come, and where it is paid back. */
export function renderCashFlow(data: CashFlowData, view: ChartView): TemplateResult {
  const plan = planCashFlow(data, view);
  return renderFigure({
    words: data,
    view,
    picture: plan === null ? null : { frame: plan.plot.frame, drawing: drawCashFlow(plan, data) },
    keys: plan === null ? [] : keysOf(data, plan),
    table: cashFlowTable(data),
  });
}
