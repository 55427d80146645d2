import { svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { planBills, type BillBar, type BillsPlan } from './bills-plan.ts';
import type { BillsData, ChartView } from './chart-data.ts';
import { drawAcross, drawUpright, renderFigure, type Key } from './figure.ts';
import type { ChartTable } from './table.ts';

/**
 * The numbers behind the chart of the bills.
 *
 * @example
 * billsTable({ title: 'Bills', says: '', unit: '₹', months: [], beforeName: 'without', afterName: 'with' }).heads //=> ["Month","without","with"]
 */
export function billsTable({ title, months, beforeName, afterName }: BillsData): ChartTable {
  return {
    caption: title,
    heads: ['Month', beforeName, afterName],
    lines: months.map(({ label, before, after }) => [label, before, after]),
    notes: [],
  };
}

/** A bar; of nothing a ring, so that it is no month without a bill. */
function drawBar({ x, y, width, height }: BillBar, className: string): SVGTemplateResult {
  if (height === 0) return svg`<circle class="nil" cx=${x + width / 2} cy=${y - 4} r="2.2" />`;
  return svg`<rect class=${className} x=${x} y=${y} width=${width} height=${height} />`;
}

const draw = ({ plot, across, pairs }: BillsPlan, unit: string): SVGTemplateResult => svg`
  ${drawUpright(plot, unit)} ${drawAcross(plot.frame, across, '')}
  ${pairs.map(({ before, after }) => [drawBar(before, 'outline'), drawBar(after, 'solid')])}`;

function keysOf({ beforeName, afterName }: BillsData, { pairs }: BillsPlan): readonly Key[] {
  const hasNil = pairs.some(({ before, after }) => before.height === 0 || after.height === 0);
  return [
    { drawing: svg`<rect class="outline" x="7" y="1.5" width="10" height="11" />`, text: beforeName },
    { drawing: svg`<rect class="solid" x="7" y="1.5" width="10" height="11" />`, text: afterName },
    ...(hasNil ? [{ drawing: svg`<circle class="nil" cx="12" cy="7" r="2.2" />`, text: 'a bill of 0' }] : []),
  ];
}

/** The bill of each month before and after: an outlined bar and a filled one beside it. */
export function renderBills(data: BillsData, view: ChartView): TemplateResult {
  const plan = planBills(data, view);
  return renderFigure({
    words: data,
    view,
    picture: plan === null ? null : { frame: plan.plot.frame, drawing: draw(plan, data.unit) },
    keys: plan === null ? [] : keysOf(data, plan),
    table: billsTable(data),
  });
}
