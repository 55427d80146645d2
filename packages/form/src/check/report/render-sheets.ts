import { html, nothing, type TemplateResult } from 'lit';
import type { BillLetter, SheetPart, SheetSection } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { renderFold, type Folds } from '../../render/fold.ts';
import { renderFileInput } from '../../render/file-input.ts';
import { renderNotUsable } from '../../render/refusal.ts';
import type { CheckDesk } from '../check-desk.ts';
import { checkFindingText } from '../view/finding-words.ts';

const paragraphs = (texts: readonly string[]): readonly TemplateResult[] =>
  texts.map((text) => html`<p>${text}</p>`);

const list = (items: readonly string[]): TemplateResult =>
  html`<ul>
    ${items.map((item) => html`<li>${item}</li>`)}
  </ul>`;

/** A table that scrolls by itself where the paper is narrow: numbers stay whole. */
function renderTable({ head, rows, numbers }: SheetPart & { readonly kind: 'table' }): TemplateResult {
  const side = (at: number): string => (numbers.includes(at) ? 'number' : 'words');
  return html`<div class="wide" role="group" aria-label=${head.join(', ')} tabindex="0">
    <table>
      <thead>
        <tr>
          ${head.map((cell, at) => html`<th scope="col" class=${side(at)}>${cell}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (cells) =>
            html`<tr>
              ${cells.map((cell, at) =>
                at === 0
                  ? html`<th scope="row" class=${side(at)}>${cell}</th>`
                  : html`<td class=${side(at)}>${cell}</td>`,
              )}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

function renderPart(part: SheetPart): TemplateResult {
  switch (part.kind) {
    case 'paragraph':
      return html`<p>${part.text}</p>`;
    case 'list':
      return list(part.items);
    case 'table':
      return renderTable(part);
  }
}

const renderSection = ({ id, title, parts }: SheetSection): TemplateResult =>
  html`<section data-section=${id}>
    <h4>${title}</h4>
    ${parts.map(renderPart)}
  </section>`;

function renderListed(words: string, items: readonly string[]): TemplateResult | typeof nothing {
  return items.length === 0
    ? nothing
    : html`<p>${words}</p>
        ${list(items)}`;
}

function renderLetter({ to, date, subject, greeting, closing, ...letter }: BillLetter): TemplateResult {
  return html`<div class="letter">
      <p class="address">${to.map((one) => html`${one}<br />`)}</p>
      <p class="date">${date}</p>
      <p><strong>${subject}</strong></p>
      <p>${greeting}</p>
      ${paragraphs(letter.paragraphs)} ${letter.asks.length === 0 ? nothing : list(letter.asks)}
      ${renderListed('Enclosed:', letter.encloses)} ${paragraphs(closing)}
    </div>
    <div class="beside-letter">
      ${renderListed('Not part of the letter. Still to gather:', letter.toGather)}
      <p class="hint">${letter.caution}</p>
    </div>`;
}

function renderRefused({ rules: { refused }, view }: CheckDesk): TemplateResult | typeof nothing {
  if (refused === null) return nothing;
  const { name, findings } = refused;
  return renderNotUsable({
    name,
    findings: findings.map((finding) => checkFindingText(finding, view.writing)),
  });
}

/** The rules of the place: to whom to write, by when, and what interest is due. */
function renderRules(desk: CheckDesk): TemplateResult {
  const { rules } = desk;
  return html`<div class="field rules">
      <p id="check-rules">
        ${rules.name === '' ? 'No rules for disputes are known here: the sheets name no dates and no interest.' : `By “${rules.name}”.`}
      </p>
      <label for="check-rules-file">Rules for disputes of your place, from a file</label>
      <span class="hint">with them the sheets know to whom to write, by when, and what interest is due</span>
      ${renderFileInput('check-rules-file', rules.openFile)}
    </div>
    ${renderRefused(desk)}`;
}

/** A sheet that folds away, and is opened while it is printed. */
function renderSheet(
  key: 'memo' | 'letter',
  title: string,
  content: unknown,
  desk: CheckDesk,
): TemplateResult {
  const folds: Folds = {
    isOpen: (fold, otherwise) => desk.printed === key || desk.isOpen(fold, otherwise),
    setOpen: desk.setOpen,
  };
  return html`<article class="sheet ${key}" aria-labelledby="check-${key}">
    <h3 class="sub" id="check-${key}">${title}</h3>
    ${renderButton(
      `Print the ${key}`,
      () => {
        desk.printSheet(key);
      },
      { id: `check-print-${key}` },
    )}
    ${renderFold({ key: `check-sheet-${key}`, className: 'help', summary: `Read the ${key}`, content: () => content }, folds)}
  </article>`;
}

/** The memo and the letter as sheets that can be printed, each by itself. */
export function renderSheets(desk: CheckDesk): TemplateResult | typeof nothing {
  const { sheets } = desk;
  if (sheets === null) return nothing;
  const { memo, letter } = sheets;
  return html`<section class="page sheets-page" aria-labelledby="check-sheets">
    <h2 id="check-sheets">To print and send</h2>
    ${renderRules(desk)}
    <div class="sheets">
      ${renderSheet('memo', 'The memo: every finding with its working', memo.map(renderSection), desk)}
      ${
        letter === null
          ? nothing
          : renderSheet('letter', 'The letter to the billing office', renderLetter(letter), desk)
      }
    </div>
  </section>`;
}
