import { html, nothing, type TemplateResult } from 'lit';
import type { HouseholdText } from '../household/read-household.ts';
import { readHousehold } from '../household/read-household.ts';
import { HOUSEHOLD_FORMAT, isBlankRow, type Household } from '../household/household.ts';
import type { Aside, Slot } from '../keep.ts';
import { renderButton } from './button.ts';
import { renderFileInput } from './file-input.ts';
import { renderNotOpened, renderReasons } from './refusal.ts';

/** What the shelf shows, and what it can ask for. */
export interface Shelf {
  readonly slot: Slot;
  readonly hasOwn: boolean;
  /** Whether the browser keeps what is typed. */
  readonly isKept: boolean;
  readonly asides: readonly Aside[];
  readonly refused: { readonly name: string; readonly read: HouseholdText } | null;
  readonly startOwn: () => void;
  readonly startAnother: () => void;
  readonly showDemo: () => void;
  readonly saveFile: () => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly takeAside: (aside: Aside) => void;
  readonly openAside: (aside: Aside) => void;
}

/** Why a text cannot be opened as a household; empty for one that can. */
function refusalText(read: HouseholdText): string {
  switch (read.kind) {
    case 'household':
      return '';
    case 'unreadable':
      return read.reason;
    case 'other-version': {
      const [, kind] = /^unitbook-(tariff|readings|account|book)-/.exec(read.found) ?? [];
      if (kind === 'tariff') return 'This is a tariff. Open it under “This account”.';
      if (kind !== undefined) return `This is the ${kind} alone, no whole household.`;
      return (
        `It is in the form “${read.found}”; this page opens “${HOUSEHOLD_FORMAT}”. ` +
        'Open it with the version that wrote it, or reload this page once while online to get the newest.'
      );
    }
    case 'damaged':
      return 'It is not a whole household:';
  }
}

/** Everything that is wrong in a household that is not whole. */
const findingsOf = (read: HouseholdText): readonly string[] =>
  read.kind === 'damaged'
    ? read.findings.map(({ found, expected, remedy }) => `${found}. Expected: ${expected}. ${remedy}`)
    : [];

function renderRefused(shelf: Shelf): TemplateResult | typeof nothing {
  if (shelf.refused === null) return nothing;
  const { name, read } = shelf.refused;
  return renderNotOpened({
    id: 'refused',
    name,
    kept: 'your book is as it was',
    reason: refusalText(read),
    findings: findingsOf(read),
  });
}

/** Which book it is: its number, and how far it goes. */
function asideName({ account, readings }: Household): string {
  const last = readings.findLast((row) => !isBlankRow(row))?.date ?? '';
  return `${account.name || account.id || 'A book without a number'}${last === '' ? '' : `, up to ${last}`}`;
}

function renderAside(aside: Aside, shelf: Shelf): TemplateResult {
  const read = readHousehold(aside.text);
  const isBook = read.kind === 'household';
  return html`<li>
    ${
      isBook
        ? asideName(read.household)
        : html`A book kept here could not be opened. ${renderReasons(refusalText(read), findingsOf(read))}`
    }
    ${
      isBook
        ? renderButton('Open it again', () => {
            shelf.openAside(aside);
          })
        : nothing
    }
    ${renderButton('Save it as a file', () => {
      shelf.takeAside(aside);
    })}
  </li>`;
}

function renderAsides(shelf: Shelf): TemplateResult | typeof nothing {
  const { asides } = shelf;
  if (asides.length === 0) return nothing;
  const isBad = asides.some(({ text }) => readHousehold(text).kind !== 'household');
  return html`<details class="notice" id="asides" ?open=${isBad}>
    <summary>Books put aside: ${asides.length}</summary>
    <ul>
      ${asides.map((aside) => renderAside(aside, shelf))}
    </ul>
  </details>`;
}

function renderDemoNote(shelf: Shelf): TemplateResult {
  if (shelf.slot === 'own')
    return html`<p class="which">Your own book, kept in this browser only.</p>
      ${renderButton('Start another book', shelf.startAnother, { id: 'start-another', className: 'quiet' })}
      ${renderButton('Show the demo', shelf.showDemo, { id: 'show-demo', className: 'quiet' })}`;
  const words = shelf.hasOwn ? 'Back to my own book' : 'Start my own book';
  return html`<p class="which">
      <strong>Demo: an invented place and household.</strong> Change anything; nothing leaves this page.
    </p>
    ${renderButton(words, shelf.startOwn, { id: 'start-own', className: 'strong' })}`;
}

/** Which book lies open, and the ways to save it, open another and get back what was put aside. */
export function renderShelf(shelf: Shelf): TemplateResult {
  return html`
    <div class="shelf">
      ${renderDemoNote(shelf)}
      ${renderButton('Save as a file', shelf.saveFile, { id: 'save-file', className: 'quiet' })}
      <label class="file" for="open-file">Open a saved file</label>
      ${renderFileInput('open-file', shelf.openFile)}
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
