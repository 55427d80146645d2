import { isZone, type TableDecision, type TableLayout } from '@unitbook/meter-files';
import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import { renderPlainSelect } from '../render/select.ts';
import {
  answerQuestion,
  canRemember,
  changeDelimiter,
  confirmQuestion,
  decisionsOf,
  isUncertain,
  openQuestions,
  questionKeys,
  type LayoutDraft,
  type QuestionKey,
} from './layout-draft.ts';
import { CHOICES, clockChoice, NO_OFFSET, OFFSET, type Choice } from './layout-words.ts';
import type { AskedTable, Panel } from './panel.ts';
import { renderHeading, renderTextField, renderTick } from './parts.ts';
import { renderColumn } from './render-column.ts';
import { renderFound } from './render-found.ts';
import { renderPreview } from './render-preview.ts';
import { counted } from './words.ts';
import { knownZones } from './zones.ts';

const columnOf = (key: QuestionKey): number | null =>
  key.startsWith('column-') ? Number.parseInt(key.slice('column-'.length), 10) : null;

function titleOf(key: QuestionKey, { layout }: LayoutDraft): string {
  const at = columnOf(key);
  if (at === null) return CHOICES[key]?.title ?? 'Where the columns are named';
  const name = layout.header[at]?.trim() ?? '';
  return `Column ${String(at + 1)}${name === '' ? '' : `: “${name}”`}`;
}

/** Why something was detected, and where that stands. */
function evidenceText({ evidence, position, about, detected }: TableDecision): string {
  const place = position === null ? '' : ` (line ${String(position.line)})`;
  const words = about === 'lines-above' ? `${detected} above the names: ${evidence}` : evidence;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${place}.`;
}

function evidenceOf(draft: LayoutDraft, key: QuestionKey): string {
  if (draft.changed.has(key)) return 'You have said so.';
  const decisions = decisionsOf(draft, key);
  return decisions.length === 0
    ? 'Nothing in the table tells it.'
    : [...new Set(decisions.map(evidenceText))].join(' ');
}

function renderChoice(key: QuestionKey, choice: Choice, draft: LayoutDraft, panel: Panel): TemplateResult {
  return renderPlainSelect({
    id: `layout-${key}`,
    label: titleOf(key, draft),
    hint: evidenceOf(draft, key),
    value: choice.value(draft.layout),
    options: choice.options,
    choose: (value) => {
      panel.setDraft(
        key === 'delimiter'
          ? changeDelimiter(draft, value as TableLayout['delimiter'])
          : answerQuestion(draft, key, choice.change(value)),
      );
    },
  });
}

/** What goes with the clock: the zone of a local one, which may stay open, or the offset of a fixed one. */
function renderClockParts(draft: LayoutDraft, panel: Panel): TemplateResult | typeof nothing {
  const { layout } = draft;
  const clock = clockChoice(layout);
  const set = (change: Partial<TableLayout>): void => {
    panel.setDraft(answerQuestion(draft, 'clock', change));
  };
  if (clock === 'fixed') {
    const text = layout.clock === NO_OFFSET ? '' : layout.clock;
    return renderTextField({
      id: 'layout-offset',
      label: 'Hours from UTC',
      hint: 'such as +05:30 or -08:00',
      value: text,
      echo: OFFSET.test(text) ? `UTC${text}` : '',
      isWrong: text !== '' && !OFFSET.test(text),
      input: (typed) => {
        set({ clock: typed.trim() === '' ? NO_OFFSET : typed.trim() });
      },
    });
  }
  if (clock !== 'local') return nothing;
  const zone = layout.zone ?? '';
  return html`
    ${renderTextField({
      id: 'layout-zone',
      label: 'Time zone of the place, if its clocks change',
      hint: 'such as Europe/Amsterdam; empty: times stand as they are',
      value: zone,
      echo: isZone(zone) ? `Read as ${zone}` : '',
      isWrong: zone !== '' && !isZone(zone),
      list: 'layout-zones',
      input: (typed) => {
        set(typed.trim() === '' ? { zone: undefined } : { zone: typed.trim() });
      },
    })}
    <datalist id="layout-zones">
      ${knownZones().map((name) => html`<option value=${name}></option>`)}
    </datalist>
  `;
}

function renderHeader({ layout }: LayoutDraft): TemplateResult {
  const names = layout.header.filter((name) => name.trim() !== '');
  return names.length === 0
    ? html`<p>The columns have no names.</p>`
    : html`<p>${names.map((name) => `“${name.trim()}”`).join(', ')}</p>`;
}

/** A question without a choice of its own: what it is about, and why it was detected so. */
function renderTitle(key: QuestionKey, draft: LayoutDraft): TemplateResult {
  return html`
    <p class="label">${titleOf(key, draft)}</p>
    <p class="hint">${evidenceOf(draft, key)}</p>
  `;
}

function renderConfirmation(key: QuestionKey, draft: LayoutDraft, panel: Panel): TemplateResult {
  const isRight = draft.confirmed.has(key);
  return html`
    ${isRight ? nothing : html`<p class="mark">To be confirmed:</p>`}
    ${renderTick({
      id: `confirm-${key}`,
      words: 'That is right',
      about: titleOf(key, draft),
      isTicked: isRight,
      change: (isTicked) => {
        panel.setDraft(confirmQuestion(draft, key, isTicked));
      },
    })}
  `;
}

function renderQuestion(key: QuestionKey, draft: LayoutDraft, panel: Panel): TemplateResult {
  const at = columnOf(key);
  const choice = CHOICES[key];
  const isOpen = openQuestions(draft).includes(key);
  return html`<div
    class="question-card ${isOpen ? 'open' : ''} ${at === null ? '' : 'column'}"
    role="group"
    aria-label=${titleOf(key, draft)}
    data-question=${key}
  >
    ${choice === undefined ? renderTitle(key, draft) : renderChoice(key, choice, draft, panel)}
    ${key === 'header' ? renderHeader(draft) : nothing}
    ${key === 'clock' ? renderClockParts(draft, panel) : nothing}
    ${at === null ? nothing : renderColumn(draft, at, panel)}
    ${isUncertain(draft, key) ? renderConfirmation(key, draft, panel) : nothing}
  </div>`;
}

/** What still stands in the way of reading the table. */
function renderConfirm({ draft, check }: AskedTable, panel: Panel): TemplateResult {
  const open = openQuestions(draft);
  const isSound = check.findings.length === 0;
  const { writing } = panel.desk;
  return html`
    ${renderFound(check.findings, writing)}
    ${
      open.length > 0
        ? html`<p class="say" role="status">
            ${counted(open.length, 'thing')} above ${open.length === 1 ? 'is' : 'are'} still to be confirmed.
          </p>`
        : nothing
    }
    ${
      open.length === 0 && isSound
        ? renderButton('That is right: read it', panel.confirmLayout, {
            id: 'confirm-layout',
            className: 'strong',
          })
        : nothing
    }
    <p class="hint">
      ${
        panel.desk.layouts !== null && canRemember(draft.layout)
          ? 'This browser then remembers it for files with the same columns.'
          : 'It is not remembered: without names of columns another table could be taken for this one.'
      }
    </p>
  `;
}

/** A table with columns that nobody has named yet: what was detected, why, and what would come of it. */
export function renderLayout(table: AskedTable, panel: Panel): TemplateResult {
  const { draft, check } = table;
  return html`
    ${renderHeading('How this table is to be read')}
    <p>
      Nothing says what its columns are. This is what the first lines tell; what they leave in doubt is
      marked, and is yours to confirm.
    </p>
    ${renderFound(draft.proposal.findings, panel.desk.writing)}
    <div class="questions">${questionKeys(draft).map((key) => renderQuestion(key, draft, panel))}</div>
    ${renderPreview(draft, check, panel.desk.writing)} ${renderConfirm(table, panel)}
  `;
}
