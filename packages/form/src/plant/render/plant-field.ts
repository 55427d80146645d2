import { html, nothing, type TemplateResult } from 'lit';
import { isDecimalText, parseDay, type Path, type PlantDocument } from '@unitbook/engine';
import { renderInput } from '../../render/field.ts';
import { fieldIdOf } from '../document/edit-plant.ts';
import { putAt } from '../document/plant-texts.ts';
import { keptDay, keptNumber } from '../document/typed-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { findingsAt, renderFindingsOf } from './plant-findings.ts';

/** A field of the plant: where it stands, its words and what the document keeps of it. */
export interface PlantField {
  readonly path: Path;
  readonly label: string;
  readonly hint?: string;
  readonly kept: string;
  readonly is: 'number' | 'day' | 'text';
  /** What stands behind a number that was read, such as " kWp". */
  readonly unit?: string;
  /** How a new text changes the document; left out: it is put in its place. */
  readonly set?: (document: PlantDocument, kept: string) => PlantDocument;
}

const KEPT = { number: keptNumber, day: keptDay, text: (text: string): string => text } as const;

/** How a text was read, where it does not stand there just so. */
function echoOf({ is, kept, unit = '' }: PlantField, shown: string, desk: PlantDesk): string {
  const { writing } = desk.view;
  const day = is === 'day' ? parseDay(kept) : null;
  if (day !== null) return writing.day(day);
  if (is !== 'number' || !isDecimalText(kept) || shown === kept) return '';
  return `Read as ${writing.number(kept)}${unit}`;
}

/** A field whole: label, hint, input, echo, findings. */
export function renderPlantField(field: PlantField, desk: PlantDesk): TemplateResult {
  const { path, label, hint, kept, is, set } = field;
  const id = fieldIdOf(path);
  const shown = desk.shown(id, kept);
  const findings = findingsAt(path, desk);
  return html`
    <div class="field">
      <label for=${id}>${label}</label>
      ${hint === undefined ? nothing : html`<span class="hint" id="${id}-hint">${hint}</span>`}
      ${renderInput({
        id,
        label,
        ...(hint === undefined ? {} : { hint }),
        value: shown,
        echo: '',
        findings,
        inputMode: is === 'number' ? 'decimal' : 'text',
        input: (text) => {
          const next = KEPT[is](text);
          desk.noteTyped(id, text, next);
          const { document } = desk.view;
          desk.change(set === undefined ? putAt(document, path, next) : set(document, next));
        },
      })}
      <span class="echo" id="${id}-echo">${echoOf(field, shown, desk)}</span>
      ${renderFindingsOf(findings, id, desk)}
    </div>
  `;
}
