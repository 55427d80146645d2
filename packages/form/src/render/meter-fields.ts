import { html, nothing, type TemplateResult } from 'lit';
import { ACCURACY_CLASSES, type AccountDocument } from '@unitbook/engine';
import type { LaterMeter, Meter } from '../household/later-meters.ts';
import { renderAccountField, renderSelect, type AccountField } from './account-field.ts';
import type { Desk } from './desk.ts';

type Meters = AccountDocument['meters'];
/** A meter of an account, the first or one that took its place. */
type AnyMeter = Meters['grid'] | NonNullable<Meters['generation']> | LaterMeter;

/** A meter with the way to it in the account, and what it is called in labels. */
export interface NamedMeter {
  readonly meter: Meter;
  readonly path: readonly string[];
  readonly name: string;
  readonly held: AnyMeter;
}

const same = (text: string): readonly [string, string] => [text, text];
const DIGITS = ['4', '5', '6', '7', '8'].map(same);
const DECIMALS = ['0', '1', '2', '3'].map(same);
const CLASSES: readonly (readonly [string, string])[] = [['', 'not known'], ...ACCURACY_CLASSES.map(same)];

function renderShape(
  path: readonly string[],
  name: string,
  shape: { readonly digits: string; readonly decimals: string },
  desk: Desk,
): TemplateResult {
  return html`<div class="pair">
    ${renderSelect(
      [...path, 'digits'],
      { label: `${name}: digits before the point`, value: shape.digits, options: DIGITS },
      desk,
    )}
    ${renderSelect(
      [...path, 'decimals'],
      { label: `${name}: digits after it, often red`, value: shape.decimals, options: DECIMALS },
      desk,
    )}
  </div>`;
}

/** The serial number of a meter, as a field. */
export function serialField({ path, name, held }: NamedMeter): AccountField {
  return {
    path: [...path, 'serial'],
    label: `${name}: serial number`,
    value: held.serial,
    unit: '',
    isText: true,
  };
}

function factorField({ path, name, held }: NamedMeter): AccountField {
  return {
    path: [...path, 'multiplyingFactor'],
    label: `${name}: multiplying factor`,
    hint: '1 unless the nameplate says × and a number; blank counts as 1',
    value: held.multiplyingFactor,
    unit: '',
  };
}

function renderClass({ path, name, held }: NamedMeter, desk: Desk): TemplateResult {
  const words = {
    label: `${name}: accuracy class`,
    hint: 'on the nameplate, such as “Cl. 1”; leave it if you cannot find it',
    value: held.accuracyClass ?? '',
    options: CLASSES,
  };
  return renderSelect([...path, 'accuracyClass'], words, desk);
}

/** The digits of every register of a meter. */
function renderDigits({ path, name, held }: NamedMeter, desk: Desk): unknown {
  const shapes =
    'import' in held
      ? ([
          ['import', 'import', held.import],
          ['export', 'export', held.export],
        ] as const)
      : ([['generation', 'generation', held.generation]] as const);
  return shapes.map(([id, words, shape]) => renderShape([...path, id], `${name}, ${words}`, shape, desk));
}

/** What is on the nameplate of a meter: factor and class, and its serial number where that is not asked elsewhere. */
export function renderNameplate(named: NamedMeter, desk: Desk, hasSerial = true): TemplateResult {
  return html`
    <div class="pair">
      ${hasSerial ? renderAccountField(serialField(named), desk) : nothing}
      ${renderAccountField(factorField(named), desk)} ${renderClass(named, desk)}
    </div>
    ${renderDigits(named, desk)}
  `;
}
