import { html, nothing, type TemplateResult } from 'lit';
import { offerFile } from '../../offer-file.ts';
import { renderButton } from '../../render/button.ts';
import { chartCsv, type ChartTable } from '../charts/table.ts';
import type { QuoteDesk } from '../quote-desk.ts';

/** A button that saves a table. */
export function renderCsv(name: string, table: ChartTable): TemplateResult {
  return renderButton(
    'Save as CSV',
    () => {
      offerFile(`unitbook-quote-${name}.csv`, chartCsv(table), 'text/csv');
    },
    { className: 'quiet', about: table.caption },
  );
}

/** Stands where something is not there yet. */
export const WAITING = html`<p class="hint">Being worked out …</p>`;

/** What takes longer than a frame. */
export interface LaterPart {
  /** Names its heading. */
  readonly id: string;
  readonly title: string;
  /** Whether anything of it is there, if only from before. */
  readonly isThere: boolean;
  readonly content: unknown;
}

/** A part that is worked out later: while it is not, it is that of the quote before, and says so. */
export function renderLaterPart(
  { id, title, isThere, content }: LaterPart,
  { isStale }: QuoteDesk,
): TemplateResult {
  return html`<section
    class="part ${isStale ? 'stale' : ''}"
    aria-labelledby=${id}
    aria-busy=${isStale ? 'true' : 'false'}
  >
    <h3 class="sub" id=${id}>${title}</h3>
    ${
      isStale && isThere
        ? html`<p class="hint">From before the last change; being worked out anew …</p>`
        : nothing
    }
    ${content}
  </section>`;
}
