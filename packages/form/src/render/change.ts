import { html, nothing, type TemplateResult } from 'lit';
import type { Meter } from '../household/later-meters.ts';
import { nameNewMeter, type MeterChange } from '../household/meter-change.ts';
import type { RowView } from '../view/view-book.ts';
import { renderAccountField } from './account-field.ts';
import { renderButton } from './button.ts';
import { renderDates, renderNumbers, shownChange, type ShownChange } from './change-numbers.ts';
import type { Desk } from './desk.ts';
import { renderFindings } from './findings.ts';
import { renderDayOf } from './meter.ts';
import { serialField } from './meter-fields.ts';
import { newMeter, renderNew } from './new-meter.ts';
import { besideFields, fieldId } from './register-field.ts';

/** What a meter is called in a sentence. */
export const METER_WORDS: Readonly<Record<Meter, string>> = {
  grid: 'two-way meter',
  generation: 'generation meter',
};

const MISSING = {
  final: 'the last numbers of the old meter, from the replacement slip.',
  first: 'the first numbers of the new meter, from the slip; they are not always 0.',
} as const;

/** What is to be said of a reading of the change and of no field of it. */
function renderBeside(row: RowView, isReset: boolean, desk: Desk): unknown {
  const missing = isReset || row.row.event === undefined ? 'the number.' : MISSING[row.row.event];
  const findings = besideFields(row).map((finding) =>
    finding.code === 'reading/event-empty' ? { ...finding, remedy: missing } : finding,
  );
  return renderFindings(findings, fieldId(row.index, 'event'), desk);
}

function titleOf({ meter, isReset }: ShownChange): string {
  return isReset ? 'The generation counter began anew' : `The ${METER_WORDS[meter]} was changed`;
}

function renderActions(change: ShownChange, desk: Desk): TemplateResult {
  const { meter, final, first, isReset } = change;
  const out = (): void => {
    const places = [final, first].filter((place) => place !== null).sort((a, b) => a - b);
    const what = isReset
      ? 'That the generation counter began anew'
      : `The change of the ${METER_WORDS[meter]}`;
    desk.remove(places, `${what} was taken out.`);
  };
  const name = (): void => {
    if (first !== null) desk.change(nameNewMeter(desk.household, meter, first));
  };
  return html`<p class="fixes">
    ${isReset ? renderButton('It is another meter: name it', name, { className: 'quiet' }) : nothing}
    ${renderButton('Take this change out', out, { className: 'quiet', about: titleOf(change) })}
  </p>`;
}

const CAUTION =
  'A sealed meter is changed by the utility only, never by yourself. Copy the numbers from the replacement slip.';

function renderChange(change: ShownChange, desk: Desk): TemplateResult {
  const { old, fresh, isReset } = change;
  const named = newMeter(change, desk);
  const rows = [old, fresh].filter((row) => row !== null);
  return html`
    <fieldset class="meter change">
      <legend>${titleOf(change)}</legend>
      ${isReset ? nothing : html`<p class="hint">${CAUTION}</p>`}
      <div class="pair">
        ${renderDates(change, desk)}
        ${named === null ? nothing : renderAccountField({ ...serialField(named), hint: 'from the slip or the nameplate' }, desk)}
      </div>
      <div class="heads two" aria-hidden="true">
        <span>Register</span
        ><span>${isReset ? 'Last number' : 'Old meter, last'} ${renderDayOf(old, desk)}</span
        ><span>${isReset ? 'First number' : 'New meter, first'} ${renderDayOf(fresh, desk)}</span>
      </div>
      ${renderNumbers(change, desk)} ${rows.map((row) => renderBeside(row, isReset, desk))}
      ${named === null ? nothing : renderNew(change, named, desk)} ${renderActions(change, desk)}
    </fieldset>
  `;
}

/** The changes of one meter in the month shown. */
export function renderChanges(changes: readonly MeterChange[], meter: Meter, desk: Desk): unknown {
  return changes
    .filter((one) => one.meter === meter)
    .map((one) => renderChange(shownChange(one, desk), desk));
}
