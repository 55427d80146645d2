import { html, nothing, type TemplateResult } from 'lit';
import { laterOf } from '../household/later-meters.ts';
import type { MeterChange } from '../household/meter-change.ts';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';
import { renderNameplate, type NamedMeter } from './meter-fields.ts';
import { renderRates } from './rates.ts';

/** The new meter of a change as the account names it; null where it names none. */
export function newMeter({ meter, later }: MeterChange, desk: Desk): NamedMeter | null {
  const held = later === null ? undefined : laterOf(desk.household, meter)[later];
  if (held === undefined) return null;
  return { meter, path: ['meters', meter, 'later', String(later)], name: 'New meter', held };
}

/** "factor 1, 5 digits and 1 after the point", register by register where they differ. */
function nameplateText({ held }: NamedMeter): string {
  const shapes = 'import' in held ? [held.import, held.export] : [held.generation];
  const digits = new Set(
    shapes.map(({ digits, decimals }) => `${digits} digits and ${decimals} after the point`),
  );
  return [`factor ${held.multiplyingFactor.trim() === '' ? '1' : held.multiplyingFactor}`, ...digits].join(
    ', ',
  );
}

/** The nameplate of a new meter: at first a copy of the old one's, which is said. */
export function renderNew({ meter, later }: MeterChange, named: NamedMeter, desk: Desk): TemplateResult {
  const way = named.path.join('.');
  const needsCare = desk.view.account.findings.some(
    ({ path, severity }) => severity !== 'note' && path.join('.').startsWith(`${way}.`),
  );
  const held = laterOf(desk.household, meter)[(later ?? 0) - 1] ?? desk.household.account.meters[meter];
  const before = held === undefined ? '' : nameplateText({ ...named, held });
  const isAlike = before === nameplateText(named);
  return renderFold(
    {
      key: `new-${named.path.join('-')}`,
      className: 'help',
      isOpen: needsCare,
      summary: html`<span class="label">Nameplate of the new meter</span>
        <span class="hint"
          >${nameplateText(named)}${isAlike ? ': copied from the old one, check it' : ''}</span
        >`,
      content: () => html`
        ${renderNameplate(named, desk, false)}
        ${meter === 'grid' && later !== null ? renderRates(later, desk) : nothing}
      `,
    },
    desk,
  );
}
