import { html, nothing, type TemplateResult } from 'lit';
import { addChange, undatedEvent } from '../household/meter-change.ts';
import { METERS, type Meter } from '../household/later-meters.ts';
import { renderButton } from './button.ts';
import { METER_WORDS } from './change.ts';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { fieldId } from './register-field.ts';

function renderAdd(meter: Meter, desk: Desk): TemplateResult {
  return renderButton(`The ${METER_WORDS[meter]} was changed`, () => {
    const waiting = undatedEvent(desk.household, meter);
    if (waiting === null) desk.change(addChange(desk.household, meter, desk.selected));
    else desk.select(waiting);
    desk.focusField(fieldId(waiting ?? desk.selected, 'date'));
  });
}

/** The way to tell that a meter was changed, where no finding asks about it. */
export function renderChangeFold(desk: Desk): TemplateResult {
  const { meters } = desk.household.account;
  return renderFold(
    {
      key: 'change',
      className: 'help',
      summary: 'A meter was changed in this month',
      content: () => html`
        <p>
          Meters are sealed, and the utility alone changes them. It leaves a replacement slip with the last
          numbers of the old meter and the first ones of the new: have it at hand.
        </p>
        <p class="fixes">
          ${METERS.map((meter) => (meters[meter] === undefined ? nothing : renderAdd(meter, desk)))}
        </p>
      `,
    },
    desk,
  );
}
