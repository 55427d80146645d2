import { html, nothing, type TemplateResult } from 'lit';
import type { Register } from '@unitbook/engine';
import type { Meter } from '../household/later-meters.ts';
import type { RowRegister } from '../view/echo-rows.ts';
import type { MonthRows } from '../view/month-rows.ts';
import type { RowView } from '../view/view-book.ts';
import type { Desk } from './desk.ts';
import { renderFindings } from './findings.ts';
import { registerIn, registerInput, renderPrinted, renderRegisterInput } from './register-field.ts';
import { wordsOf } from './register-words.ts';

const LEGENDS: Readonly<Record<Meter, string>> = {
  grid: 'Two-way meter, at the grid',
  generation: 'Generation meter, at the plant',
};

const isOf = (meter: Meter, { register }: RowRegister): boolean =>
  (register.id === 'generation') === (meter === 'generation');

/** The order of registers: what they count, then the rates, then the total. */
const ORDER: readonly Register['id'][] = ['import', 'export', 'generation'];

/** The registers of both ends of a month: where a meter was changed, each end can have its own. */
function linesOf(meter: Meter, { before, row, isFirst }: MonthRows): readonly RowRegister[] {
  const lines = new Map<string, RowRegister>();
  for (const one of [...row.registers, ...(isFirst ? before.registers : [])])
    if (isOf(meter, one) && !lines.has(one.register.key)) lines.set(one.register.key, one);
  return [...lines.values()].sort((a, b) => ORDER.indexOf(a.register.id) - ORDER.indexOf(b.register.id));
}

/** The column of the reading before: typed in where it opens the book, else carried from last month. */
function renderPrevious({ before, isFirst }: MonthRows, key: string, desk: Desk): TemplateResult {
  const own = registerIn(before, key);
  if (own === undefined) return html`<span class="carried">—</span>`;
  if (isFirst) {
    const field = registerInput(before, own, desk);
    return html`<label class="hidden" for=${field.id}>${field.label}, opening reading</label>
      ${renderRegisterInput(field)}`;
  }
  const read = before.read[key] ?? null;
  return html`<span class="carried">${read === null ? '—' : desk.view.writing.number(read)}</span>`;
}

/** What one rate counted, for a look: the bill rounds as its tariff says. */
function rateUnits({ before, events, row }: MonthRows, { register }: RowRegister, desk: Desk): string {
  const { key, factor, fullScale } = register;
  const [from, to] = [before.shown[key], row.shown[key]];
  if (row.month === null || events.length > 0 || from === undefined || to === undefined) return '';
  const numerator = (to < from ? to + fullScale - from : to - from) * factor.numerator;
  return Number.isSafeInteger(numerator)
    ? desk.view.writing.plain({ numerator, denominator: factor.denominator * 1000 })
    : '';
}

function unitsText(rows: MonthRows, own: RowRegister, desk: Desk): string {
  if (own.register.rate !== null) return rateUnits(rows, own, desk);
  const energy = rows.row.month?.energy[own.register.id] ?? null;
  return energy === null ? '' : desk.view.writing.plain(energy);
}

function renderPresent(row: RowView, own: RowRegister | undefined, desk: Desk): TemplateResult {
  if (own === undefined) return html`<span class="carried">—</span>`;
  return renderRegisterInput(registerInput(row, own, desk));
}

/** Findings about both ends of a line, and what stood there before. */
function renderBeneath(rows: MonthRows, key: string, desk: Desk): unknown {
  const shown = rows.isFirst ? [rows.before, rows.row] : [rows.row];
  return shown.map((row) => {
    const own = registerIn(row, key);
    if (own === undefined) return nothing;
    const { findings, id } = registerInput(row, own, desk);
    return html`${renderPrinted(row, key, desk)}${renderFindings(findings, id, desk)}`;
  });
}

function renderRegister(rows: MonthRows, line: RowRegister, desk: Desk): TemplateResult {
  const { key } = line.register;
  const own = registerIn(rows.row, key);
  const { name, hint } = wordsOf(line, desk);
  return html`
    <div class="register">
      <div class="name">
        ${
          own === undefined
            ? html`<span class="label">${name}</span>`
            : html`<label for=${registerInput(rows.row, own, desk).id}>${name}</label>`
        }
        <span class="hint">${hint}</span>
      </div>
      <div class="previous">${renderPrevious(rows, key, desk)}</div>
      <div class="present">${renderPresent(rows.row, own, desk)}</div>
      <div class="units">${unitsText(rows, line, desk)}</div>
      ${renderBeneath(rows, key, desk)}
    </div>
  `;
}

/** The day of a reading, for the head of its column on paper. */
export function renderDayOf(row: RowView | null, { view }: Desk): TemplateResult {
  const day = row?.day ?? null;
  return html`<small class="on">${day === null ? '' : view.writing.day(day)}</small>`;
}

/** One meter: its registers, previous, present and units. */
export function renderMeter(meter: Meter, rows: MonthRows, desk: Desk): TemplateResult {
  return html`
    <fieldset class="meter">
      <legend>${LEGENDS[meter]}</legend>
      <div class="heads" aria-hidden="true">
        <span>Register</span><span>Previous ${renderDayOf(rows.before, desk)}</span
        ><span>Present ${renderDayOf(rows.row, desk)}</span><span>Units</span>
      </div>
      ${linesOf(meter, rows).map((line) => renderRegister(rows, line, desk))}
    </fieldset>
  `;
}
