import { html, nothing, type TemplateResult } from 'lit';
import { addDays } from '@unitbook/engine';
import { renderFound } from '../../files/render-found.ts';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import type { ProfileDesk, QuoteDesk } from '../quote-desk.ts';
import type { ReadIntervals } from '../work/open-profile.ts';
import { renderFindingsAt } from './quote-findings.ts';

function renderChooser({ openFile }: ProfileDesk): TemplateResult {
  return html`<div class="field">
    <label for="quote-profile">Use and generation by intervals, from a meter file</label>
    <span class="hint" id="quote-profile-hint">
      a year of both, every 5 to 60 minutes: own use follows from them, and not from the share. The file stays
      on this device.
    </span>
    <input
      id="quote-profile"
      type="file"
      aria-describedby="quote-profile-hint"
      @change=${(event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const [file] = input.files ?? [];
        // The same file can be chosen again.
        input.value = '';
        if (file !== undefined) void openFile(file);
      }}
    />
  </div>`;
}

/** What was read, in a sentence, and the way out. */
function renderRead(
  { name, profile, span, isGiving, findings }: ReadIntervals,
  desk: QuoteDesk,
): TemplateResult {
  const { writing } = desk.view;
  const count = writing.number(String(profile.starts.length));
  const [from, through] = [writing.day(span.from), writing.day(addDays(span.to, -1))];
  return html`<p id="quote-profile-read">
      “${name}”: ${count} intervals of ${profile.minutes} minutes, from ${from} to ${through}. Own use follows
      from them; the units of each month stay those typed above. They are kept for this visit only: neither in
      this browser nor in the quote’s file.
    </p>
    ${
      isGiving
        ? html`<p class="caution">
            Units were given to the grid in it: this house has a plant already, and what it takes from the
            grid is not all that it uses.
          </p>`
        : nothing
    }
    ${renderFound(findings, writing)}
    ${renderButton(
      'Leave the intervals out',
      () => {
        const putBack = desk.profile.takeOut();
        // They are no part of the document: the way back brings them in beside it.
        const quote = desk.document;
        desk.take(
          {
            quote,
            putBack: (held) => {
              putBack();
              return held;
            },
          },
          `The intervals of “${name}” were taken out.`,
        );
      },
      { id: 'quote-profile-out', className: 'quiet' },
    )}`;
}

function renderZone({ zone, setZone }: ProfileDesk): TemplateResult | typeof nothing {
  if (zone === null) return nothing;
  return html`<div class="field">
    <label for="quote-profile-zone">The house keeps the time of</label>
    <span class="hint" id="quote-profile-zone-hint">
      the file names its clock; this is the zone of this device, correct it for a house elsewhere
    </span>
    <input
      id="quote-profile-zone"
      type="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      aria-describedby="quote-profile-zone-hint"
      .value=${zone}
      @change=${(event: Event) => void setZone(typed(event))}
    />
  </div>`;
}

/** A table of which a person has to say what its columns are. */
function renderAsked(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { asked, layouts, answerTable } = desk.profile;
  if (asked === null) return nothing;
  return html`<div class="asked">
    <p><strong>“${asked.name}”</strong></p>
    <unitbook-table-question
      .asked=${asked}
      .writing=${desk.view.writing}
      .layouts=${layouts}
      .answer=${answerTable}
    ></unitbook-table-question>
    ${renderButton('Leave this file out', () => void answerTable(null), { id: 'quote-profile-leave-out' })}
  </div>`;
}

function renderRefused(desk: QuoteDesk): TemplateResult | typeof nothing {
  const { refused, read } = desk.profile;
  if (refused === null) return nothing;
  return html`<div class="finding error" role="alert" id="quote-profile-refused">
      <p><strong class="mark">“${refused.name}” was not taken:</strong> ${refused.reason}</p>
      ${read === null ? nothing : html`<p>“${read.name}” still counts.</p>`}
    </div>
    ${renderFound(refused.findings, desk.view.writing)}`;
}

/** Use and generation by intervals: chosen, asked about, read, and what is to be said of them. */
export function renderProfile(desk: QuoteDesk): TemplateResult {
  const { read, reading } = desk.profile;
  return html`
    ${renderChooser(desk.profile)}
    <div role="status">${reading === '' ? nothing : html`<p class="hint">Reading “${reading}” …</p>`}</div>
    ${renderAsked(desk)} ${renderRefused(desk)} ${read === null ? nothing : renderRead(read, desk)}
    ${renderZone(desk.profile)} ${renderFindingsAt(['profile'], desk)}
    ${renderFindingsAt(['profile', 'use'], desk)} ${renderFindingsAt(['profile', 'generation'], desk)}
  `;
}
