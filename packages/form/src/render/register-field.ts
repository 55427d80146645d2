import { html, nothing, type TemplateResult } from 'lit';
import { rowText, undoEdit, type Finding, type ReadingEdit } from '@unitbook/engine';
import { changeRegisters, mapRow } from '../household/edit-household.ts';
import { registerPath } from '../household/registers.ts';
import type { RowRegister } from '../view/echo-rows.ts';
import type { RowView } from '../view/view-book.ts';
import { offerText } from '../writing/writing.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';
import { renderInput, type Field } from './field.ts';
import { wordsOf } from './register-words.ts';

/** The id of an input, by row and field. */
export function fieldId(index: number, field: string): string {
  return `reading-${String(index)}-${field}`;
}

const fieldOf = (finding: Finding): string => finding.path.slice(2).join('-');

/** What is to be said of one field of a reading. */
export const about = (row: RowView, field: string): readonly Finding[] =>
  row.findings.filter((finding) => fieldOf(finding) === field);

/** The fields of a row that are drawn, whatever meters it is of. */
const FIELDS = ['date', 'status', 'printedDays'];

/** What is to be said of a reading and of no field that is drawn for it. */
export function besideFields(row: RowView): readonly Finding[] {
  const drawn = [...FIELDS, ...row.registers.map(({ register }) => registerPath(register).join('-'))];
  return row.findings.filter((finding) => !drawn.includes(fieldOf(finding)));
}

/** The field of a register. */
export function registerInput(row: RowView, own: RowRegister, desk: Desk): Field {
  const { register } = own;
  const { key } = register;
  const field = registerPath(register).join('-');
  const read = row.read[key] ?? null;
  return {
    id: fieldId(row.index, field),
    label: wordsOf(own, desk).name,
    value: rowText(row.row, key),
    echo: read === null ? '' : `Read as ${desk.view.writing.number(read)}`,
    findings: about(row, field),
    inputMode: 'decimal',
    input: (text) => {
      desk.change(changeRegisters(desk.household, row.index, { [key]: text }));
    },
  };
}

/** The register of a row by its key. */
export function registerIn(row: RowView, key: string): RowRegister | undefined {
  return row.registers.find(({ register }) => register.key === key);
}

const IN_PLACE: Readonly<Record<ReadingEdit['method'], string>> = {
  'own-reading': 'now read by you',
  'by-days': 'now a share by days',
  'mean-of-days': 'now by the mean of days',
  'same-month-last-year': 'now as a year before',
  'typed-again': 'now typed again',
};

/** What stood in a field before something took its place, struck through, and the way back. */
export function renderPrinted(row: RowView, key: string, desk: Desk): TemplateResult | typeof nothing {
  const edits = (row.row.edits ?? []).filter(({ register }) => register === key);
  const [first, last] = [edits[0], edits.at(-1)];
  if (first === undefined || last === undefined) return nothing;
  const raw = first.raw.trim() === '' ? 'nothing' : offerText(first.raw, desk.view.writing);
  const said = first.wasEstimated === true ? `printed: ${raw}, estimated` : `before: ${raw}`;
  return html`<p class="printed">
    <del>${said}</del> <span class="hint">${IN_PLACE[last.method]}</span>
    ${renderButton(
      'Put it back',
      (event) => {
        desk.change(mapRow(desk.household, row.index, (held) => undoEdit(held, key)));
        if (event.detail === 0) desk.focusField(fieldId(row.index, key.includes('-') ? `rates-${key}` : key));
      },
      { className: 'quiet', about: said },
    )}
  </p>`;
}

/** The input of a register with its echo. */
export function renderRegisterInput(field: Field): TemplateResult {
  return html`${renderInput(field)}<span class="echo" id="${field.id}-echo">${field.echo}</span>`;
}
