import { html, nothing, type TemplateResult } from 'lit';
import type { HouseholdText } from '../household/read-household.ts';
import { readHousehold } from '../household/read-household.ts';
import { HOUSEHOLD_FORMAT } from '../household/household.ts';
import type { Aside, Slot } from '../keep.ts';

/** What the shelf shows, and what it can ask for. */
export interface Shelf {
  readonly slot: Slot;
  readonly hasOwn: boolean;
  /** Whether the browser keeps what is typed. */
  readonly isKept: boolean;
  readonly asides: readonly Aside[];
  readonly refused: { readonly name: string; readonly read: HouseholdText } | null;
  readonly startOwn: () => void;
  readonly showDemo: () => void;
  readonly saveFile: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly takeAside: (aside: Aside) => void;
}

/** Why a text cannot be opened as a household; empty for one that can. */
function refusalText(read: HouseholdText): string {
  switch (read.kind) {
    case 'household':
      return '';
    case 'other-version':
      return (
        `It is in the form “${read.found}”; this page opens “${HOUSEHOLD_FORMAT}”. ` +
        'Open it with the version that wrote it, or reload this page once while online to get the newest.'
      );
    case 'damaged':
      return 'It is not a whole household:';
  }
}

function renderReasons(read: HouseholdText): TemplateResult {
  return html`
    ${refusalText(read)}
    ${
      read.kind === 'damaged'
        ? html`<ul>
            ${read.findings.map(
              (finding) => html`<li>${finding.found}. Expected: ${finding.expected}. ${finding.remedy}</li>`,
            )}
          </ul>`
        : nothing
    }
  `;
}

function renderRefused(shelf: Shelf): TemplateResult | typeof nothing {
  if (shelf.refused === null) return nothing;
  const { name, read } = shelf.refused;
  return html`<div class="notice" role="alert" id="refused">
    <strong>“${name}” was not opened; your book is as it was.</strong> ${renderReasons(read)}
  </div>`;
}

function renderAside(aside: Aside, shelf: Shelf): TemplateResult {
  const read = readHousehold(aside.text);
  return html`<li>
    ${
      read.kind === 'household'
        ? html`The book that lay open before a file took its place.`
        : html`<strong>A book kept here could not be opened.</strong> ${renderReasons(read)}`
    }
    <button
      type="button"
      @click=${() => {
        shelf.takeAside(aside);
      }}
    >
      Save it as a file
    </button>
  </li>`;
}

function renderAsides(shelf: Shelf): TemplateResult | typeof nothing {
  if (shelf.asides.length === 0) return nothing;
  const isBad = shelf.asides.some(({ text }) => readHousehold(text).kind !== 'household');
  return html`<details class="notice" id="asides" ?open=${isBad}>
    <summary>Put aside, nothing lost: ${shelf.asides.length}</summary>
    <ul>
      ${shelf.asides.map((aside) => renderAside(aside, shelf))}
    </ul>
  </details>`;
}

function openChosen(event: Event, shelf: Shelf): void {
  const input = event.currentTarget as HTMLInputElement;
  const [file] = input.files ?? [];
  if (file !== undefined) void shelf.openFile(file);
  input.value = '';
}

function renderDemoNote(shelf: Shelf): TemplateResult {
  if (shelf.slot === 'own')
    return html`<p class="which">Your own book, kept in this browser only.</p>
      <button type="button" id="show-demo" class="quiet" @click=${shelf.showDemo}>Show the demo</button>`;
  return html`<p class="which">
      <strong>Demo: an invented place and household.</strong> Change anything; nothing leaves this page.
    </p>
    <button type="button" id="start-own" class="strong" @click=${shelf.startOwn}>
      ${shelf.hasOwn ? 'Back to my own book' : 'Start my own book'}
    </button>`;
}

/** Which book lies open, and the ways to save it, open another and get back what was put aside. */
export function renderShelf(shelf: Shelf): TemplateResult {
  return html`
    <div class="shelf">
      ${renderDemoNote(shelf)}
      <button type="button" id="save-file" class="quiet" @click=${shelf.saveFile}>Save as a file</button>
      <label class="file" for="open-file">Open a saved file</label>
      <input
        id="open-file"
        type="file"
        accept=".json,application/json"
        @change=${(event: Event) => {
          openChosen(event, shelf);
        }}
      />
    </div>
    ${
      shelf.isKept
        ? nothing
        : html`<p class="notice" role="alert" id="not-kept">
            This browser does not keep what you type. Save the book as a file before you close the page.
          </p>`
    }
    ${renderRefused(shelf)} ${renderAsides(shelf)}
  `;
}
