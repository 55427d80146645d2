import { html, nothing, type TemplateResult } from 'lit';
import type { Finding, RegisterId } from '@unitbook/engine';
import { changeRow, type RowField } from '../household/edit-household.ts';
import type { RowView } from '../view/view-book.ts';
import type { Desk } from './desk.ts';
import { renderInput, type Field } from './field.ts';
import { renderFindings } from './findings.ts';

/** A register in words. */
export interface RegisterWords {
  readonly id: RegisterId;
  readonly name: string;
  readonly hint: string;
}

/** The registers of the two-way meter. */
export const GRID: readonly RegisterWords[] = [
  {
    id: 'import',
    name: 'Import, from the grid',
    hint: 'IMP · 1.8.0 · A+ · arrow to the house',
  },
  {
    id: 'export',
    name: 'Export, to the grid',
    hint: 'EXP · 2.8.0 · A− · arrow to the line',
  },
];
/** The register of the generation meter. */
export const GENERATION: RegisterWords = {
  id: 'generation',
  name: 'Generation, by the plant',
  hint: 'grows in daylight; with its decimals',
};

/** The id of an input, by row and field. */
export function fieldId(index: number, field: RowField): string {
  return `reading-${String(index)}-${field}`;
}

/** What is to be said of one field of a reading. */
export const about = (row: RowView, field: string): readonly Finding[] =>
  row.findings.filter((finding) => finding.path[2] === field);

function registerField(row: RowView, words: RegisterWords, desk: Desk): Field {
  const read = row.read[words.id];
  return {
    id: fieldId(row.index, words.id),
    label: words.name,
    value: row.row[words.id] ?? '',
    echo: read === null ? '' : `Read as ${desk.view.writing.number(read)}`,
    findings: about(row, words.id),
    inputMode: 'decimal',
    input: (text) => {
      desk.change(changeRow(desk.household, row.index, { [words.id]: text }));
    },
  };
}

/** The column of the reading before: typed in where it opens the book, else carried from last month. */
function renderPrevious(before: RowView, words: RegisterWords, desk: Desk): TemplateResult {
  if (before.index > 0) {
    const read = before.read[words.id];
    const text = read === null ? (before.row[words.id] ?? '') : desk.view.writing.number(read);
    return html`<span class="carried">${text === '' ? '—' : text}</span>`;
  }
  const field = registerField(before, words, desk);
  return html`
    <label class="hidden" for=${field.id}>${words.name}, opening reading</label>
    ${renderInput(field)}
    <span class="echo" id="${field.id}-echo">${field.echo}</span>
  `;
}

function renderRegister(row: RowView, before: RowView, words: RegisterWords, desk: Desk): TemplateResult {
  const field = registerField(row, words, desk);
  const opening = before.index === 0 ? registerField(before, words, desk) : null;
  const energy = row.month?.energy[words.id] ?? null;
  return html`
    <div class="register">
      <div class="name">
        <label for=${field.id}>${words.name}</label>
        <span class="hint">${words.hint}</span>
      </div>
      <div class="previous">${renderPrevious(before, words, desk)}</div>
      <div class="present">
        ${renderInput(field)}
        <span class="echo" id="${field.id}-echo">${field.echo}</span>
      </div>
      <div class="units">${energy === null ? '' : desk.view.writing.plain(energy)}</div>
      ${opening === null ? nothing : renderFindings(opening.findings, opening.id, desk)}
      ${renderFindings(field.findings, field.id, desk)}
    </div>
  `;
}

/** The day of a reading, for the head of its column on paper. */
const dateOf = ({ day }: RowView, { view }: Desk): TemplateResult =>
  html`<small class="on">${day === null ? '' : view.writing.day(day)}</small>`;

/** One meter: its registers, previous, present and units. */
export function renderMeter(
  legend: string,
  registers: readonly RegisterWords[],
  rows: readonly [RowView, RowView],
  desk: Desk,
): TemplateResult {
  const [before, row] = rows;
  return html`
    <fieldset class="meter">
      <legend>${legend}</legend>
      <div class="heads" aria-hidden="true">
        <span>Register</span><span>Previous ${dateOf(before, desk)}</span
        ><span>Present ${dateOf(row, desk)}</span><span>Units</span>
      </div>
      ${registers.map((words) => renderRegister(row, before, words, desk))}
    </fieldset>
  `;
}
