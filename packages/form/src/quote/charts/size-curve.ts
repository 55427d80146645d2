import { nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { ChartView, SizeCurveData } from './chart-data.ts';
import { drawAcross, drawFlag, drawUpright, renderFigure } from './figure.ts';
import { planSizeCurve, type SizeCurvePlan } from './size-curve-plan.ts';
import type { ChartTable } from './table.ts';

const withUnit = (name: string, unit: string): string => (unit === '' ? name : `${name}, ${unit}`);

/** The numbers behind the curve of sizes. */
export function sizeCurveTable(data: SizeCurveData): ChartTable {
  const { title, sizeName, sizeUnit, valueName, points, chosen, surplusFrom } = data;
  const marks = [chosen, surplusFrom].filter((mark) => mark !== null);
  return {
    caption: title,
    heads: [withUnit(sizeName, sizeUnit), valueName],
    lines: points.map(({ size, value }) => [size, value]),
    notes: marks.map(({ size, label }) => (label.includes(size.text) ? label : `${label}: ${size.text}`)),
  };
}

function draw(plan: SizeCurvePlan, data: SizeCurveData): SVGTemplateResult {
  const { plot, across, points, line, chosen, surplusFrom } = plan;
  const { frame } = plot;
  const base = frame.height - frame.bottom;
  return svg`
    ${drawUpright(plot, withUnit(data.valueName, data.unit))}
    ${drawAcross(frame, across, withUnit(data.sizeName, data.sizeUnit))}
    ${surplusFrom === null ? nothing : drawFlag(surplusFrom.flag, base)}
    ${chosen === null ? nothing : drawFlag(chosen.flag, chosen.at[1])}
    <path class="halo" d=${line} /><path class="line" d=${line} />
    ${points.map(([x, y]) => svg`<circle class="dot" cx=${x} cy=${y} r="3" />`)}
    ${surplusFrom === null ? nothing : drawCross(surplusFrom.at)}
    ${chosen === null ? nothing : svg`<circle class="ring" cx=${chosen.at[0]} cy=${chosen.at[1]} r="6.5" />`}`;
}

/** A box on its corner: another form than the ring's. */
const drawCross = ([x, y]: readonly [number, number]): SVGTemplateResult =>
  svg`<path class="ring" d=${`M${x} ${y - 7}L${x + 7} ${y}L${x} ${y + 7}L${x - 7} ${y}Z`} />`;

/** What a plant brings by its size: the curve, the size that was chosen, and where surplus begins. */
export function renderSizeCurve(data: SizeCurveData, view: ChartView): TemplateResult {
  const plan = planSizeCurve(data, view);
  return renderFigure({
    words: data,
    view,
    picture: plan === null ? null : { frame: plan.plot.frame, drawing: draw(plan, data) },
    // The labels above the plot say what its marks are.
    keys: [],
    table: sizeCurveTable(data),
  });
}
