import { html, nothing, type TemplateResult } from 'lit';
import { putBack } from '../household/put-back.ts';
import { renderButton } from './button.ts';
import type { Desk } from './desk.ts';

/** The texts of a reading or of an account by their way, those of rates among them. */
function textsOf(held: object, way = ''): readonly (readonly [string, string])[] {
  return Object.entries(held).flatMap(([key, value]: [string, unknown]) => {
    if (typeof value === 'string') return [[`${way}${key}`, value] as const];
    return key === 'rates' || way !== '' ? textsOf(value as object, `${way}${key}.`) : [];
  });
}

/** The texts that were typed and that a fix took the place of; empty where they are not texts. */
function typedTexts(now: object, before: object): string {
  const fixed = new Map(textsOf(now));
  return textsOf(before)
    .filter(([way, text]) => way !== 'status' && text !== '' && text !== fixed.get(way))
    .map(([, text]) => text)
    .join(', ');
}

/**
 * The way back from a fix, until something else is typed in its place.
 *
 * @param now      a reading, all of them or the account, as it is now
 * @param fieldId  the input to go on from
 */
export function renderPutBack(now: object, fieldId: string, desk: Desk): TemplateResult | typeof nothing {
  const before = desk.fixed.get(now);
  if (before === undefined) return nothing;
  const texts = typedTexts(now, before);
  return html`<p class="undo" role="status">
    ${texts && `You typed ${texts}.`}
    ${renderButton('Put it back as it was', (event) => {
      desk.change(putBack(desk.household, now, before));
      if (event.detail === 0) desk.focusField(fieldId);
    })}
  </p>`;
}
