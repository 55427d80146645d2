import { html, nothing, type TemplateResult } from 'lit';
import { parseDay } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { typed } from '../../render/desk.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { quoteFindingText } from '../view/quote-finding-text.ts';
import type { PromiseDesk, RefusedHousehold } from './promise-desk.ts';
import { periodText } from './promise-words.ts';

/** Why a file was not taken, in a sentence. */
function refusal({ text }: RefusedHousehold): string {
  switch (text.kind) {
    case 'unreadable':
      return `${text.reason} Expected: a household saved from this page.`;
    case 'other-version':
      return `It is in the form “${text.found}”. Expected: “unitbook-household-1”, a household saved from this page.`;
    case 'damaged':
      return 'It is not a whole household:';
  }
}

function renderRefused({ refused, view }: PromiseDesk): TemplateResult | typeof nothing {
  if (refused === null) return nothing;
  const findings = refused.text.kind === 'damaged' ? refused.text.findings : [];
  return html`<div class="notice" role="alert" id="promise-refused">
    <strong>“${refused.name}” was not opened; the readings are as they were.</strong> ${refusal(refused)}
    ${
      findings.length === 0
        ? nothing
        : html`<ul>
            ${findings.map((finding) => html`<li>${quoteFindingText(finding, view.writing)}</li>`)}
          </ul>`
    }
  </div>`;
}

function renderTariffs({ view: { tariffs }, chooseTariff }: PromiseDesk): TemplateResult | typeof nothing {
  if (tariffs === null) return nothing;
  return html`<div class="field tariffs">
    <label for="promise-tariff">The bills that came are made by</label>
    <select
      id="promise-tariff"
      @change=${(event: Event) => {
        chooseTariff(typed(event) === 'quote' ? 'quote' : 'book');
      }}
    >
      <option value="book" .selected=${tariffs.by === 'book'}>
        the tariff of the readings: ${tariffs.book}
      </option>
      <option value="quote" .selected=${tariffs.by === 'quote'}>
        the tariff of the quote: ${tariffs.quote}
      </option>
    </select>
    <span class="hint">
      The quote was worked out by another tariff. What that changes stands under charges and rules.
    </span>
  </div>`;
}

/** What is compared, for the screen and for paper. */
function renderParticulars({ view, fileName }: PromiseDesk): TemplateResult {
  const { quote, report, writing } = view;
  const day = parseDay(quote?.input.document.offer.date ?? '');
  const first = report?.periods[0];
  const last = report?.periods.at(-1);
  const plant = quote === null ? '' : `, ${writing.number(quote.input.document.plant.kWp)} kWp`;
  const days =
    first === undefined || last === undefined
      ? ''
      : `, ${periodText({ from: first.period.from, to: last.period.to }, writing)}`;
  const { tariffs } = view;
  const by = tariffs === null ? '' : `, billed by ${tariffs[tariffs.by]}`;
  return html`<p class="particulars" id="promise-source">
    The quote${day === null ? '' : ` of ${writing.day(day)}`}${plant}; the readings of
    ${fileName === '' ? 'the book' : html`<strong>“${fileName}”</strong>`}${days}${by}.
  </p>`;
}

/** Which readings are set against the quote, and by which tariff they are billed. */
export function renderSource(desk: PromiseDesk): TemplateResult {
  const { fileName, openFile, useBook } = desk;
  return html`${renderParticulars(desk)}
    <div class="shelf">
      <label class="file" for="promise-open">Open another household’s file</label>
      ${renderFileInput('promise-open', openFile)}
      ${
        fileName === ''
          ? nothing
          : renderButton('Back to the readings of the book', useBook, { id: 'promise-use-book' })
      }
    </div>
    ${renderRefused(desk)} ${renderTariffs(desk)}`;
}

/** So many findings are told at once; the others wait until these are set right. */
const TOLD = 40;

/** Why there is no answer, and what to do. */
export function renderWanted({ view }: PromiseDesk): TemplateResult {
  const { wanted, findings, notes, writing } = view;
  return html`<div id="promise-wanted" role="status">
    <p class="provided">${wanted}</p>
    <ul class="wanted-list">
      ${findings
        .slice(0, TOLD)
        .map((finding) => html`<li data-code=${finding.code}>${quoteFindingText(finding, writing)}</li>`)}
    </ul>
    ${notes.map((note) => html`<p class="hint">${note}</p>`)}
  </div>`;
}
