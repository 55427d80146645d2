import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import type { Frame } from '../../plant/chart/geometry.ts';
import type { ChartView, ChartWords } from './chart-data.ts';
import type { PlacedFlag } from './flags.ts';
import { GAP, type Plot } from './frame.ts';
import { renderChartTable, type ChartTable } from './table.ts';
import { LINE } from './text-width.ts';

/** A piece of a chart and what it stands for. */
export interface Key {
  /** Drawn in 24 by 14. */
  readonly drawing: SVGTemplateResult;
  readonly text: string;
}

/** What a figure holds. */
export interface Figure {
  readonly words: ChartWords;
  readonly view: ChartView;
  /** Null when there is nothing to draw. */
  readonly picture: { readonly frame: Frame; readonly drawing: unknown } | null;
  readonly keys: readonly Key[];
  readonly table: ChartTable;
}

function renderPicture({ words, view, picture }: Figure): TemplateResult {
  if (picture === null) return html`<p class="hint">There is nothing to draw yet.</p>`;
  const { id, size } = view;
  const { width, height } = picture.frame;
  return html`<svg
    class="quote-chart ${size}"
    viewBox="0 0 ${width} ${height}"
    role="img"
    aria-labelledby=${`${id}-title ${id}-says`}
  >
    <title id=${`${id}-title`}>${words.title}</title>
    <desc id=${`${id}-says`}>${words.says}</desc>
    ${picture.drawing}
  </svg>`;
}

function renderKeys(keys: readonly Key[]): TemplateResult | typeof nothing {
  if (keys.length === 0) return nothing;
  return html`<ul class="keys">
    ${keys.map(
      ({ drawing, text }) =>
        html`<li><svg class="quote-key" viewBox="0 0 24 14" aria-hidden="true">${drawing}</svg>${text}</li>`,
    )}
  </ul>`;
}

/** A chart with its name above it, and what its lines are and its numbers beneath it. */
export function renderFigure(figure: Figure): TemplateResult {
  const { words, view, picture, keys, table } = figure;
  return html`<figure class="quote-figure" id=${view.id}>
    <figcaption>${words.title}</figcaption>
    ${renderPicture(figure)}
    ${picture === null ? nothing : [renderKeys(keys), renderChartTable(table, view.id)]}
  </figure>`;
}

/** The lines of the upright axis with their numbers, what they count above them, and the line of zero. */
export function drawUpright({ frame, y, labels }: Plot, unit: string): SVGTemplateResult {
  const right = frame.width - frame.right;
  const zero = y.at(0);
  return svg`
    <text class="axis-name" x="0" y=${TOP_NAME - 4}>${unit}</text>
    ${y.ticks.map(
      (tick, at) => svg`
        <line class="grid" x1=${frame.left} x2=${right} y1=${y.at(tick)} y2=${y.at(tick)} />
        <text class="tick" x=${frame.left - GAP} y=${y.at(tick) + 4} text-anchor="end">${labels[at]}</text>`,
    )}
    <line class="zero" x1=${frame.left} x2=${right} y1=${zero} y2=${zero} />`;
}

/** How much room the name of the upright axis takes. */
export const TOP_NAME = 18;

/** A mark beneath the plot, with a name or without. */
export interface AcrossTick {
  readonly x: number;
  /** '' for none. */
  readonly name: string;
}

/** The marks beneath the plot with their names, and what they count beneath them. */
export function drawAcross(frame: Frame, ticks: readonly AcrossTick[], unit: string): SVGTemplateResult {
  const base = frame.height - frame.bottom;
  const right = frame.width - frame.right;
  return svg`
    <line class="axis" x1=${frame.left} x2=${right} y1=${base} y2=${base} />
    ${ticks.map(
      ({ x, name }) => svg`
        <line class="axis" x1=${x} x2=${x} y1=${base} y2=${base + (name === '' ? 3 : 5)} />
        ${name === '' ? nothing : svg`<text class="tick" x=${x} y=${base + 17} text-anchor="middle">${name}</text>`}`,
    )}
    ${unit === '' ? nothing : svg`<text class="axis-name" x=${right} y=${base + 17 + LINE} text-anchor="end">${unit}</text>`}`;
}

/** How much room the names beneath a plot take, and what they count. */
export const BELOW = { names: 23, unit: 23 + LINE } as const;

/** A label above the plot, with a line down to what it marks. */
export function drawFlag({ x, lines, at, anchor, foot }: PlacedFlag, to: number): SVGTemplateResult {
  const last = foot + LINE * (lines.length - 1);
  return svg`
    <line class="flag-line" x1=${x} x2=${x} y1=${last + 4} y2=${to} />
    ${lines.map((text, line) => svg`<text class="flag" x=${at} y=${foot + line * LINE} text-anchor=${anchor}>${text}</text>`)}`;
}
