import { html, nothing, type TemplateResult } from 'lit';
import type { AccountDocument } from '@unitbook/engine';
import { changeField, renderAccountField, renderSelect, type AccountField } from './account-field.ts';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';

const same = (text: string): readonly [string, string] => [text, text];
const DIGITS = ['4', '5', '6', '7', '8'].map(same);
const DECIMALS = ['0', '1', '2', '3'].map(same);

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

function meterFields(which: 'grid' | 'generation', document: AccountDocument): readonly AccountField[] {
  const meter = document.meters[which];
  const name = which === 'grid' ? 'Two-way meter' : 'Generation meter';
  return [
    {
      path: ['meters', which, 'serial'],
      label: `${name}: serial number`,
      value: meter?.serial ?? '',
      unit: '',
      isText: true,
    },
    {
      path: ['meters', which, 'multiplyingFactor'],
      label: `${name}: multiplying factor`,
      hint: '1 unless the nameplate says × and a number; blank counts as 1',
      value: meter?.multiplyingFactor ?? '',
      unit: '',
    },
  ];
}

const GENERATION_METER: NonNullable<AccountDocument['meters']['generation']> = {
  serial: '',
  multiplyingFactor: '1',
  generation: { digits: '5', decimals: '1' },
};

function renderGenerationMeter(desk: Desk): TemplateResult {
  const { meters } = desk.household.account;
  const isThere = meters.generation !== undefined;
  const path = ['meters', 'generation'];
  return html`
    <div class="field tick">
      <input
        id="account-has-generation"
        type="checkbox"
        .checked=${isThere}
        @change=${() => {
          changeField(desk, path, isThere ? undefined : GENERATION_METER);
        }}
      />
      <label for="account-has-generation">There is a generation meter</label>
    </div>
    ${
      meters.generation === undefined
        ? nothing
        : html`
            <div class="pair">
              ${meterFields('generation', desk.household.account).map((field) => renderAccountField(field, desk))}
            </div>
            ${renderShape([...path, 'generation'], 'Generation', meters.generation.generation, desk)}
          `
    }
  `;
}

const GROUPINGS: readonly (readonly [string, string])[] = [
  ['en-IN', '1,16,444.5'],
  ['en-GB', '116,444.5'],
  ['de-DE', '116.444,5'],
];

/** What is on the nameplates, typed once: serials, factors, digits; and how numbers are written. */
export function renderMeters(desk: Desk): TemplateResult {
  const { account } = desk.household;
  const locale = account.locale ?? 'en-IN';
  const options = GROUPINGS.some(([known]) => known === locale) ? GROUPINGS : [...GROUPINGS, same(locale)];
  const needsCare = desk.view.account.findings.some(
    (finding) => finding.path[0] === 'meters' && finding.severity !== 'note',
  );
  return renderFold(
    {
      key: 'meters',
      className: 'help',
      isOpen: needsCare,
      summary: 'Meters: serial numbers, digits, multiplying factor',
      content: () => html`
        <div class="pair">
          ${meterFields('grid', account).map((field) => renderAccountField(field, desk))}
        </div>
        ${renderShape(['meters', 'grid', 'import'], 'Import', account.meters.grid.import, desk)}
        ${renderShape(['meters', 'grid', 'export'], 'Export', account.meters.grid.export, desk)}
        ${renderGenerationMeter(desk)}
        ${renderSelect(['locale'], { label: 'Numbers are written', value: locale, options }, desk)}
      `,
    },
    desk,
  );
}
