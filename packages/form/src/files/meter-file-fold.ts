import { html, noChange, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import type { Desk } from '../render/desk.ts';
import { renderFold } from '../render/fold.ts';
import type { LayoutKeep } from './keep-layouts.ts';
import type { FilesDesk } from './panel.ts';

const NAME = 'unitbook-meter-file';
const FOLD = 'meter-file';
const FAILED = 'meter-file-failed';

/** Fetch the panel once it is wanted: whoever types readings never needs what reads files. */
async function definePanel(): Promise<void> {
  const { UnitbookMeterFile } = await import('./meter-file.ts');
  if (customElements.get(NAME) === undefined) customElements.define(NAME, UnitbookMeterFile);
}

function wantPanel(desk: Desk): void {
  if (customElements.get(NAME) !== undefined) return;
  definePanel().catch(() => {
    desk.setOpen(FAILED, true);
  });
}

/** What stands in the place of the panel until it is there. */
function renderWaiting(desk: Desk): TemplateResult {
  if (!desk.isOpen(FAILED, false)) return html`<p class="hint">Getting what reads files …</p>`;
  return html`<p class="finding error">
    What reads files could not be fetched. Open the page once while online, then try again.
    ${renderButton('Try again', () => {
      desk.setOpen(FAILED, false);
      wantPanel(desk);
    })}
  </p>`;
}

function filesDesk(desk: Desk, given: Pick<FilesDesk, 'today' | 'layouts'>): FilesDesk {
  const { household, view, tariff, change, select } = desk;
  return {
    ...given,
    household,
    writing: view.writing,
    tariff: tariff.kind === 'open' ? tariff.tariff.tariff.document : null,
    change,
    select,
    goToAccount: (field) => {
      for (const key of ['account', 'meters', 'rates-meters-grid']) desk.setOpen(key, true);
      desk.focusField(field);
    },
  };
}

/**
 * The fold in which readings are taken over from a meter file.
 *
 * @param given  what the page knows besides: the day it is, and where layouts of tables are remembered
 */
export function renderMeterFileFold(
  desk: Desk,
  given: { readonly today: string; readonly layouts: LayoutKeep | null },
): TemplateResult {
  return renderFold(
    {
      key: FOLD,
      className: 'help',
      summary: 'From a meter file, or from what a display shows',
      content: (isOpen) => {
        if (isOpen) wantPanel(desk);
        // Folded away it need not follow every key that is typed.
        return html`<unitbook-meter-file .desk=${isOpen ? filesDesk(desk, given) : noChange}>
          ${renderWaiting(desk)}
        </unitbook-meter-file>`;
      },
    },
    desk,
  );
}
