import { nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { ChartView, SensitivityData } from './chart-data.ts';
import { renderFigure, type Key } from './figure.ts';
import { boxOf, hatchPath } from './hatch.ts';
import {
  BASE_NAME,
  BAR_HEIGHT,
  bySpan,
  planSensitivity,
  type CaseBar,
  type SensitivityPlan,
} from './sensitivity-plan.ts';
import type { ChartTable } from './table.ts';

/** The numbers behind the chart of what matters most, in its order. */
export function sensitivityTable({ title, base, baseName, inputs }: SensitivityData): ChartTable {
  return {
    caption: title,
    heads: ['Input', 'Low case', 'Result of the low case', 'High case', 'Result of the high case'],
    lines: bySpan(inputs).map(({ label, low, high }) => [
      label,
      low.input,
      low.result,
      high.input,
      high.result,
    ]),
    notes: [`${baseName}: ${base.text}`],
  };
}

function drawBar(
  bar: CaseBar,
  className: 'low' | 'high',
  columns: SensitivityPlan['columns'],
): SVGTemplateResult {
  const { x, y, width } = bar;
  const box = boxOf([x, y], [x + width, y + BAR_HEIGHT]);
  const squeezed = bar.squeezed ?? nothing;
  return svg`
    <text class="case" x=${columns.input} y=${y + 10} textLength=${squeezed} lengthAdjust="spacingAndGlyphs">${bar.input}</text>
    <text class="result" x=${columns.result} y=${y + 10} text-anchor="end">${bar.result}</text>
    ${className === 'low' ? svg`<path class="hatch" d=${hatchPath(box, 5)} />` : nothing}
    <rect class=${className === 'low' ? 'outline' : 'solid'} x=${x} y=${y} width=${width} height=${BAR_HEIGHT} />`;
}

function draw({ base, columns, rows }: SensitivityPlan): SVGTemplateResult {
  return svg`
    <text class="flag" x=${base.at} y=${BASE_NAME} text-anchor=${base.anchor}>${base.text}</text>
    ${base.spans.map(([from, to]) => svg`<line class="zero" x1=${base.x} x2=${base.x} y1=${from} y2=${to} />`)}
    ${rows.map(
      ({ names, low, high }) => svg`
        ${names.map(({ name, y }) => svg`<text class="input" x="1" y=${y}>${name}</text>`)}
        ${drawBar(low, 'low', columns)} ${drawBar(high, 'high', columns)}`,
    )}`;
}

const KEYS: readonly Key[] = [
  {
    drawing: svg`<path class="hatch" d="M2 12L11 2M8 12L17 2M14 12L22 3" /><rect class="outline" x="1" y="1.5" width="22" height="11" />`,
    text: 'the low case of the input',
  },
  { drawing: svg`<rect class="solid" x="1" y="1.5" width="22" height="11" />`, text: 'its high case' },
];

/** What matters most: for each input the result if it is low and if it is high, the widest pair first. */
export function renderSensitivity(data: SensitivityData, view: ChartView): TemplateResult {
  const plan = planSensitivity(data, view);
  return renderFigure({
    words: data,
    view,
    picture: plan === null ? null : { frame: plan.frame, drawing: draw(plan) },
    keys: plan === null ? [] : KEYS,
    table: sensitivityTable(data),
  });
}
