import { parseDay, readTypedDay } from '@unitbook/engine';
import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import { typed } from '../render/desk.ts';
import type { Panel } from './panel.ts';
import { renderTextField } from './parts.ts';

function renderDrop(panel: Panel): TemplateResult {
  const open = (files: FileList | null | undefined): void => {
    const file = files?.[0];
    if (file !== undefined) panel.openFile(file);
  };
  return html`<div
    class="drop ${panel.isDropping ? 'over' : ''}"
    @dragover=${(event: DragEvent) => {
      // Else the browser would leave the page and show the file.
      event.preventDefault();
      panel.setDropping(true);
    }}
    @dragleave=${() => {
      panel.setDropping(false);
    }}
    @drop=${(event: DragEvent) => {
      event.preventDefault();
      panel.setDropping(false);
      open(event.dataTransfer?.files);
    }}
  >
    <label for="meter-file">Choose a file, or drop it here</label>
    <input
      id="meter-file"
      type="file"
      @change=${(event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        open(input.files);
        // The same file can be chosen again.
        input.value = '';
      }}
    />
  </div>`;
}

/** The day of a list that has none, as typed, with the day it is to be had by a press. */
function renderDay(label: string, panel: Panel): TemplateResult {
  const { day, desk } = panel;
  const read = readTypedDay(day);
  const today = parseDay(desk.today);
  return html`
    ${renderTextField({
      id: 'meter-day',
      label,
      hint: 'such as 1 May 2025, 1/5/2025',
      value: day,
      echo: read === null ? '' : desk.writing.day(read.day),
      isWrong: day.trim() !== '' && read === null,
      input: panel.setDay,
    })}
    ${
      today === null
        ? nothing
        : renderButton(`Today, ${desk.writing.day(today)}`, () => {
            panel.setDay(desk.today);
          })
    }
  `;
}

function renderTyping(panel: Panel): TemplateResult {
  return html`
    <div class="field">
      <label for="meter-text">Or type or paste what the display shows</label>
      <span class="hint" id="meter-text-hint"
        >one register on a line, such as 1.8.0 4342.1 or IMP 4342.1</span
      >
      <textarea
        id="meter-text"
        rows="4"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-describedby="meter-text-hint"
        .value=${panel.text}
        @input=${(event: Event) => {
          panel.setText(typed(event));
        }}
      ></textarea>
    </div>
    <div class="row">${renderDay('The day it was read, where the text does not say', panel)}</div>
    ${renderButton('Read what is typed', panel.readText, { id: 'read-text' })}
  `;
}

/** Where a file is chosen, or typed. */
export function renderOpening(panel: Panel): TemplateResult {
  return html`
    <p>
      The digits of a photo, a register list, a supplier’s download of intervals, a meter’s own telegram. It
      is read in this page; nothing leaves it.
    </p>
    ${renderDrop(panel)} ${renderTyping(panel)}
    <p class="caution">
      Reading a meter needs no tool: look, and copy what the display shows. Meters are sealed: leave them
      closed. The optical port on the front is for those who are allowed to use it.
    </p>
  `;
}
