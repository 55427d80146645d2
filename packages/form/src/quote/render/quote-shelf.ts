import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { renderNotOpened } from '../../render/refusal.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';

function renderRefused({ shelf: { refused }, view }: QuoteDesk): TemplateResult | typeof nothing {
  if (refused?.file.kind !== 'refused') return nothing;
  const { reason, findings } = refused.file;
  return renderNotOpened({
    id: 'quote-refused',
    name: refused.name,
    kept: 'the quote is as it was',
    reason,
    findings: findings.map((finding) => quoteFindingText(finding, view.writing)),
  });
}

/** Which quote lies open, and the ways to save it, open another, print it and get the one before back. */
export function renderQuoteShelf(desk: QuoteDesk): TemplateResult {
  const { shelf } = desk;
  const isDemo = shelf.slot === 'demo';
  return html`
    <div class="shelf">
      <p class="which">
        ${
          isDemo
            ? html`<strong>Demo: an invented offer in an invented place.</strong> Change anything; nothing
                leaves this page.`
            : 'Your own quote, kept in this browser only.'
        }
      </p>
      ${
        isDemo
          ? renderButton('Start my own quote', shelf.startOwn, { id: 'quote-start-own', className: 'strong' })
          : shelf.hasDemo
            ? renderButton('Show the demo', shelf.showDemo, { id: 'quote-show-demo', className: 'quiet' })
            : nothing
      }
      ${renderButton('Print the quote', shelf.print, { id: 'quote-print' })}
      ${renderButton('Save the quote as a file', shelf.saveFile, { id: 'quote-save', className: 'quiet' })}
      <label class="file" for="quote-open">Open a saved quote</label>
      ${renderFileInput('quote-open', shelf.openFile)}
    </div>
    ${
      shelf.isKept
        ? nothing
        : html`<p class="notice" role="alert">
            This browser does not keep what you type. Save the quote as a file before you close the page.
          </p>`
    }
    ${
      shelf.before === ''
        ? nothing
        : html`<p class="notice" role="status" id="quote-before">
            ${shelf.before} ${renderButton('Put it back', shelf.putBack, { id: 'quote-put-back' })}
          </p>`
    }
    ${renderRefused(desk)}
  `;
}
