import { html, nothing, type TemplateResult } from 'lit';
import type { AccountDocument } from '@unitbook/engine';
import {
  hasReadings,
  laterAt,
  laterOf,
  METERS,
  withLater,
  type LaterMeter,
  type Meter,
} from '../household/later-meters.ts';
import { changeField, renderAccountField, renderSelect } from './account-field.ts';
import { renderButton } from './button.ts';
import { METER_WORDS } from './change.ts';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { renderNameplate, type NamedMeter } from './meter-fields.ts';
import { renderRates } from './rates.ts';

const same = (text: string): readonly [string, string] => [text, text];

const GENERATION_METER: NonNullable<AccountDocument['meters']['generation']> = {
  serial: '',
  multiplyingFactor: '1',
  generation: { digits: '5', decimals: '1' },
};

function renderGenerationMeter(desk: Desk): TemplateResult {
  const { generation } = desk.household.account.meters;
  const path = ['meters', 'generation'];
  const named = { meter: 'generation', path, name: 'Generation meter' } as const;
  return html`
    <div class="field tick">
      <input
        id="account-has-generation"
        type="checkbox"
        .checked=${generation !== undefined}
        @change=${() => {
          changeField(desk, path, generation === undefined ? GENERATION_METER : undefined);
        }}
      />
      <label for="account-has-generation">There is a generation meter</label>
    </div>
    ${generation === undefined ? nothing : renderNameplate({ ...named, held: generation }, desk)}
  `;
}

/** A meter that took the place of another, where it is typed: in the month of its change, else here. */
function renderLater(meter: Meter, held: LaterMeter, at: number, desk: Desk): TemplateResult {
  const { household } = desk;
  const first = household.readings.findIndex((_, index) => laterAt(household, meter, index) === at);
  const day = held.from.trim() === '' ? 'a day still to type' : held.from;
  const words = `Another ${METER_WORDS[meter]}, or another factor, from ${day}`;
  if (first >= 0)
    return html`<p>
      ${words}${held.serial === '' ? '' : `: ${held.serial}`}.
      ${renderButton(
        'Show the month of the change',
        () => {
          desk.select(first);
          desk.focusField(`reading-${String(first)}-date`);
        },
        { className: 'quiet' },
      )}
    </p>`;
  return renderLaterFields(
    { meter, held, path: ['meters', meter, 'later', String(at)], name: 'Later meter' },
    words,
    desk,
  );
}

/** A later meter without readings of its change, such as a factor that changed on the day of a reading. */
function renderLaterFields(named: NamedMeter, words: string, desk: Desk): TemplateResult {
  const { meter, path, held } = named;
  const from = 'from' in held ? held.from : '';
  const out = (): void => {
    const left = laterOf(desk.household, meter).filter((one) => one !== held);
    desk.fix(withLater(desk.household, meter, left));
  };
  return html`
    <p>${words}.</p>
    <div class="pair">
      ${renderAccountField(
        {
          path: [...path, 'from'],
          label: 'Later meter: from which day',
          hint: 'as 2025-04-16',
          value: from,
          unit: '',
          isText: true,
        },
        desk,
      )}
    </div>
    ${renderNameplate(named, desk)}
    <p>${renderButton('Take this meter out', out, { className: 'quiet', about: words })}</p>
  `;
}

const GROUPINGS: readonly (readonly [string, string])[] = [
  ['en-IN', '1,16,444.5'],
  ['en-GB', '116,444.5'],
  ['de-DE', '116.444,5'],
];

function renderGrouping(desk: Desk): TemplateResult {
  const locale = desk.household.account.locale ?? 'en-IN';
  const options = GROUPINGS.some(([known]) => known === locale) ? GROUPINGS : [...GROUPINGS, same(locale)];
  return renderSelect(['locale'], { label: 'Numbers are written', value: locale, options }, desk);
}

/** Whether a finding is about a meter that is typed here, and asks for something. */
function needsCareHere(desk: Desk): boolean {
  return desk.view.account.findings.some(({ path, severity }) => {
    const [meters, meter, later, at] = path;
    if (meters !== 'meters' || severity === 'note') return false;
    const isElsewhere = later === 'later' && hasReadings(desk.household, meter as Meter, at as number);
    return !isElsewhere;
  });
}

/** What is on the nameplates, typed once: serials, factors, digits; and how numbers are written. */
export function renderMeters(desk: Desk): TemplateResult {
  const { grid } = desk.household.account.meters;
  const named: NamedMeter = { meter: 'grid', path: ['meters', 'grid'], name: 'Two-way meter', held: grid };
  return renderFold(
    {
      key: 'meters',
      className: 'help',
      isOpen: needsCareHere(desk),
      summary: 'Meters: serial numbers, digits, multiplying factor',
      content: () => html`
        ${renderNameplate(named, desk)} ${renderRates(-1, desk)} ${renderGenerationMeter(desk)}
        ${METERS.map((meter) =>
          laterOf(desk.household, meter).map((held, at) => renderLater(meter, held, at, desk)),
        )}
        ${renderGrouping(desk)}
      `,
    },
    desk,
  );
}
