import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { renderNotOpened } from '../../render/refusal.ts';
import type { CheckDesk } from '../check-desk.ts';
import { checkFindingText } from '../view/finding-words.ts';

function renderRefused({ store: { refused }, view }: CheckDesk): TemplateResult | typeof nothing {
  if (refused?.file.kind !== 'refused') return nothing;
  const { reason, findings } = refused.file;
  return renderNotOpened({
    id: 'check-refused',
    name: refused.name,
    kept: 'everything is as it was',
    reason,
    findings: findings.map((finding) => checkFindingText(finding, view.writing)),
  });
}

/** Do something that takes away the button that was pressed, and go on with the bill that lies open then. */
const goOn =
  (act: () => void, { focusField }: CheckDesk) =>
  (): void => {
    act();
    focusField('check-from');
  };

function renderBefore(desk: CheckDesk): TemplateResult | typeof nothing {
  const { store } = desk;
  if (store.before === null) return nothing;
  return html`<p class="notice" role="status" id="check-before">
    ${store.before.told} ${renderButton('Put it back', goOn(store.putBack, desk), { id: 'check-put-back' })}
  </p>`;
}

/** The invented bills or one's own: how to come from the one to the other. */
function renderOther(desk: CheckDesk): TemplateResult | typeof nothing {
  const { store, hasDemo } = desk;
  if (store.slot === 'demo')
    return renderButton('Type my own bills', goOn(store.startOwn, desk), {
      id: 'check-start-own',
      className: 'strong',
    });
  if (!hasDemo) return nothing;
  return renderButton('Show the demo', store.showDemo, { id: 'check-show-demo', className: 'quiet' });
}

/** Which bills lie open, and the ways to save them, open others, print and get those before back. */
export function renderCheckShelf(desk: CheckDesk): TemplateResult {
  const { store } = desk;
  return html`
    <div class="shelf">
      <p class="which">
        ${
          store.slot === 'demo'
            ? html`<strong>Demo: invented bills of an invented place.</strong> Change anything; nothing leaves
                this page.`
            : 'Your own bills, kept in this browser only.'
        }
      </p>
      ${renderOther(desk)}
      ${renderButton('Print', desk.print, { id: 'check-print', about: 'the answer and the bill' })}
      ${renderButton('Save as a file', desk.saveFile, { id: 'check-save', className: 'quiet', about: 'the bills' })}
      <label class="file" for="check-open">Open saved bills</label>
      ${renderFileInput('check-open', store.openFile)}
    </div>
    ${
      store.isKept
        ? nothing
        : html`<p class="notice" role="alert">
            This browser does not keep what you type. Save it as a file before you close the page.
          </p>`
    }
    ${renderBefore(desk)} ${renderRefused(desk)}
  `;
}
