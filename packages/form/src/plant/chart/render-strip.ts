import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { calendarDay } from '@unitbook/engine';
import { JUDGEMENT_SIGNS } from '../view/judgement-words.ts';
import { MONTHS } from '../document/plant-texts.ts';
import { overlap, within, type Bar, type Strip } from './chart-model.ts';
import {
  hatchPath,
  monthStarts,
  placeMarks,
  scalesOf,
  tickStep,
  type Frame,
  type Scales,
} from './geometry.ts';

const UNIT = 10_000;
const SIGN_WIDTH = 9;
const ROW = 13;
const LABEL_WIDTH = 26;

/** The two sizes in which strips are drawn: text in them keeps the size of the page's small print. */
const SIZES = { narrow: { width: 360, plot: 130 }, wide: { width: 760, plot: 190 } } as const;

type Size = keyof typeof SIZES;

function frameOf(size: Size, rows: number): Frame {
  const { width, plot } = SIZES[size];
  const [top, bottom] = [8 + ROW * rows, 20];
  return { width, height: plot + top + bottom, left: 22, right: 6, top, bottom };
}

/** Lines of the scale with their numbers. */
function drawGrid({ frame, y }: Scales, top: number): readonly SVGTemplateResult[] {
  const step = tickStep(top);
  const ticks = Array.from({ length: Math.floor(top / step) + 1 }, (_, at) => at * step);
  return ticks.map(
    (tick) => svg`
      <line class="grid" x1=${frame.left} x2=${frame.width - frame.right} y1=${y(tick * UNIT)} y2=${y(tick * UNIT)} />
      <text class="tick" x=${frame.left - 4} y=${y(tick * UNIT) + 4} text-anchor="end">${tick}</text>`,
  );
}

/** Names of months where they begin; where they would touch, some are left out. */
function drawMonths(strip: Strip, { frame, x }: Scales): readonly SVGTemplateResult[] {
  const starts = monthStarts(strip);
  const [first, second] = starts;
  const apart = first === undefined || second === undefined ? LABEL_WIDTH : x(second) - x(first);
  const every = [1, 2, 3, 6, 12].find((step) => step * apart >= LABEL_WIDTH) ?? 12;
  const base = frame.height - frame.bottom;
  return starts.map((day) => {
    const { year, month } = calendarDay(day);
    const isNamed = (month - 1) % every === 0;
    const name = month === 1 ? String(year) : (MONTHS[month - 1] ?? '').slice(0, 3);
    return svg`
      <line class="grid" x1=${x(day)} x2=${x(day)} y1=${base} y2=${base + (isNamed ? 6 : 3)} />
      ${isNamed ? svg`<text class="tick" x=${x(day) + 2} y=${base + 15}>${name}</text>` : nothing}`;
  });
}

/** What is expected: areas beneath what was made, and their lines above it. */
function drawBands(strip: Strip, { x, y }: Scales): Record<'areas' | 'lines', readonly SVGTemplateResult[]> {
  const own = strip.model.bands.filter((band) => overlap(band, strip)).map((band) => within(band, strip));
  const drawn = own.map(({ from, to, low, middle, high }) => {
    const [left, right, up, down] = [x(from), x(to), y(high), y(low)];
    const line = `M${left} ${y(middle)}H${right}`;
    return {
      area: svg`<rect class="band" x=${left} y=${up} width=${right - left} height=${down - up} />`,
      line: svg`
        <path class="band-edge" d="M${left} ${up}H${right}M${left} ${down}H${right}" />
        <path class="halo" d=${line} /><path class="expected" d=${line} />`,
    };
  });
  return { areas: drawn.map(({ area }) => area), lines: drawn.map(({ line }) => line) };
}

function drawOutages(strip: Strip, { frame, x }: Scales): readonly SVGTemplateResult[] {
  const own = strip.model.outages.filter((span) => overlap(span, strip)).map((span) => within(span, strip));
  return own.map(({ from, to }) => {
    const box = {
      x: x(from),
      y: frame.top,
      width: Math.max(3, x(to) - x(from)),
      height: frame.height - frame.top - frame.bottom,
    };
    return svg`<path class="outage" d=${hatchPath(box, 6)} />`;
  });
}

/** A month: a bar as wide as its days, and the sign of its judgement where it is not fine. */
function drawMonth({ from, to, value, judgement }: Bar, { x, y }: Scales): SVGTemplateResult {
  const [left, right, at] = [x(from), x(to), y(value)];
  const sign = judgement === 'watch' || judgement === 'look-at-it' ? JUDGEMENT_SIGNS[judgement] : '';
  return svg`
    <path class="made" d="M${left + 1} ${at}H${right - 1}" />
    ${sign === '' ? nothing : svg`<text class="sign" x=${(left + right) / 2} y=${at + 16} text-anchor="middle">${sign}</text>`}`;
}

/** A day: a bar from 0; of a day that made nothing a ring, so that it is no day without a value. */
function drawDay({ from, to, value }: Bar, { x, y }: Scales): SVGTemplateResult {
  const [left, right, base] = [x(from), x(to), y(0)];
  if (value === 0) return svg`<circle class="zero" cx=${(left + right) / 2} cy=${base - 3} r="2" />`;
  const width = Math.max(1, (right - left) * 0.7);
  return svg`<rect class="day" x=${left} y=${y(value)} width=${width} height=${base - y(value)} />`;
}

function drawMarks(strip: Strip, scales: Scales): readonly SVGTemplateResult[] {
  const { frame, x } = scales;
  const own = strip.model.marks.filter(({ day }) => strip.from <= day && day < strip.to);
  return placeMarks(own, x, SIGN_WIDTH).map(({ day, sign, row }) => {
    const foot = frame.top - 3 - row * ROW;
    return svg`
      <line class="mark-line" x1=${x(day)} x2=${x(day)} y1=${foot} y2=${frame.height - frame.bottom} />
      <text class="mark-sign" x=${x(day)} y=${foot - 1} text-anchor="middle">${sign}</text>`;
  });
}

function drawPointed(strip: Strip, { frame, x }: Scales): SVGTemplateResult | typeof nothing {
  const { pointed } = strip.model;
  if (pointed === null || !overlap(pointed, strip)) return nothing;
  const { from, to } = within(pointed, strip);
  const height = frame.height - frame.top - frame.bottom;
  return svg`<rect class="pointed" x=${x(from) - 1} y=${frame.top} width=${Math.max(4, x(to) - x(from) + 1)} height=${height} />`;
}

/** How many rows the marks of a strip take. */
function rowsOf(strip: Strip, size: Size): number {
  const { x } = scalesOf(frameOf(size, 0), strip, UNIT);
  const own = strip.model.marks.filter(({ day }) => strip.from <= day && day < strip.to);
  return placeMarks(own, x, SIGN_WIDTH).reduce((most, { row }) => Math.max(most, row + 1), 0);
}

/** How a strip is drawn. */
export interface StripWords {
  readonly size: Size;
  /** What it is, in a sentence, for those who do not see it. */
  readonly name: string;
}

/** One strip of the chart as a picture. */
export function renderStrip(strip: Strip, { size, name }: StripWords): TemplateResult {
  const frame = frameOf(size, rowsOf(strip, size));
  const { model } = strip;
  const scales = scalesOf(frame, strip, model.top * UNIT);
  const bars = model.bars.filter((bar) => overlap(bar, strip));
  const draw = model.by === 'days' ? drawDay : drawMonth;
  const made = bars.map((bar) => draw(bar, scales));
  const bands = drawBands(strip, scales);
  return html`<svg
    class="strip ${size}"
    viewBox="0 0 ${frame.width} ${frame.height}"
    role="img"
    aria-label=${name}
  >
    ${drawGrid(scales, model.top)} ${bands.areas} ${drawMonths(strip, scales)}
    ${model.by === 'days' ? [made, bands.lines] : [bands.lines, made]} ${drawOutages(strip, scales)}
    ${drawMarks(strip, scales)} ${drawPointed(strip, scales)}
  </svg>`;
}
