import { layoutKey } from '@unitbook/meter-files';
import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import { readTypedDay } from '@unitbook/engine';
import type { MeterSource } from './open-source.ts';
import type { Panel, ReadFile, Stage } from './panel.ts';
import { renderHeading } from './parts.ts';
import { renderContents, renderCounting } from './render-contents.ts';
import { renderFound } from './render-found.ts';
import { renderIntervals } from './render-intervals.ts';
import { renderLayout } from './render-layout.ts';
import { renderOpening } from './render-opening.ts';
import { renderRegisters } from './render-registers.ts';
import { canPutBack } from './take-over.ts';
import { counted, KIND_WORDS } from './words.ts';

const MEGABYTE = 1024 * 1024;

const nameOf = ({ name }: MeterSource): string => (name === '' ? 'What you typed' : `“${name}”`);

/** How much of a file: in megabytes, one decimal. */
function megabytes(bytes: number): string {
  const tenths = Math.round((bytes * 10) / MEGABYTE);
  return `${String(Math.floor(tenths / 10))}.${String(tenths % 10)} MB`;
}

/** What happened last, in a sentence. */
function toldText(stage: Stage): string {
  switch (stage.kind) {
    case 'nothing':
      return '';
    case 'reading': {
      return `Reading ${nameOf(stage.source)} …`;
    }
    case 'table':
      return `${nameOf(stage.table.source)} is a table: ${stage.table.told.why}.`;
    case 'read': {
      const { source, told } = stage.read;
      const words = told.kind === null ? 'A file' : KIND_WORDS[told.kind];
      return `${nameOf(source)}: ${words}. That is told by this: ${told.why}.`;
    }
    case 'refused':
      return `${nameOf(stage.source)} was not read: ${stage.told.why}. Your book is as it was.`;
    case 'book':
      return `${nameOf(stage.source)} was saved from this page, and is no meter file. Open it with “Open a saved file” above the book.`;
    case 'not-given':
      return `The browser does not give ${nameOf(stage.source)} to the page: it was moved or changed, or may not be read. Choose it again.`;
    case 'fault':
      return '';
  }
}

/** What to do about a fault of ours. */
export function renderFault(report: string): TemplateResult {
  return html`<div class="finding error" role="alert">
    <p>
      <strong class="mark">A fault of ours:</strong> the file could not be dealt with, and that is not its
      doing. Your book is as it was, and the file too. Please report it to whoever keeps this page, with this
      text, which holds none of your readings; look it over before you send it. Then reload the page.
    </p>
    <pre tabindex="0" role="region" aria-label="What to report" .textContent=${report}></pre>
    ${renderButton('Copy it', () => void navigator.clipboard.writeText(report))}
  </div>`;
}

function renderKnown({ known, draft }: ReadFile, panel: Panel): TemplateResult | typeof nothing {
  if (draft === null) return nothing;
  const isKept = (panel.desk.layouts?.load(layoutKey(draft.layout.header)) ?? null) !== null;
  return html`<div class="row">
    <p>
      The table was read as you confirmed${known === null ? '' : ' on an earlier file'}.
      ${panel.isForgetful ? 'This browser does not remember it: you will be asked again.' : nothing}
    </p>
    ${renderButton('Look at how it is read', panel.showLayout, { className: 'quiet' })}
    ${isKept ? renderButton('Forget it and ask again', panel.forgetLayout, { className: 'quiet' }) : nothing}
  </div>`;
}

/** The day that a list lacks, to be typed where it is missed. */
function renderLackingDay({ session }: ReadFile, panel: Panel): TemplateResult | typeof nothing {
  const lacks = session.findings.some(({ code }) => code === 'obis/no-day' || code === 'obis/no-time');
  if (!lacks) return nothing;
  const isTyped = readTypedDay(panel.day) !== null;
  return html`
    <p class="finding question" id="lacking-day">
      <strong class="mark">A question:</strong> On which day was the meter read? The list does not say.
      ${
        isTyped
          ? renderButton('Read it again with the day', panel.readAgain, { id: 'read-again' })
          : renderButton('Type the day', () => {
              panel.goTo('meter-day');
            })
      }
    </p>
  `;
}

function renderRead(read: ReadFile, panel: Panel): TemplateResult {
  const { session } = read;
  const { writing } = panel.desk;
  return html`
    ${renderKnown(read, panel)} ${renderLackingDay(read, panel)} ${renderContents(read)}
    ${session.findings.length === 0 ? nothing : renderHeading('What was found')}
    ${renderFound(session.findings, writing)} ${renderCounting(session, panel)}
    ${renderRegisters(session, panel)} ${renderIntervals(session, panel)}
  `;
}

function renderStage(panel: Panel): TemplateResult | typeof nothing {
  const { stage, desk } = panel;
  switch (stage.kind) {
    case 'reading':
      return html`
        <progress aria-label="Read so far" max=${stage.source.blob.size} value=${stage.done}></progress>
        <p class="hint">${megabytes(stage.done)} of ${megabytes(stage.source.blob.size)}</p>
        ${renderButton('Stop', panel.stop)}
      `;
    case 'table':
      return renderLayout(stage.table, panel);
    case 'read':
      return renderRead(stage.read, panel);
    case 'refused':
      return html`${renderFound(stage.findings, desk.writing)}`;
    case 'fault':
      return renderFault(stage.report);
    default:
      return nothing;
  }
}

function renderTaken({ taken, desk, putBack }: Panel): TemplateResult | typeof nothing {
  if (taken === null || !canPutBack(desk.household, taken)) return nothing;
  const { size } = taken.changes;
  return html`<p class="undo" role="status">
    ${counted(size, 'reading')} ${size === 1 ? 'was' : 'were'} taken over.
    ${renderButton('Put it back', putBack, { id: 'put-back' })}
  </p>`;
}

/** The panel whole. */
export function renderPanel(panel: Panel): TemplateResult {
  return html`
    ${renderOpening(panel)}
    <p class="told" role="status">${toldText(panel.stage)}</p>
    ${renderStage(panel)} ${renderTaken(panel)}
  `;
}
