import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import type { DayFile, RefusedFile } from '../days/day-file.ts';
import type { PlantDesk } from '../plant-desk.ts';
import type { DayFinding } from '../view/day-views.ts';
import { plantFindingText } from '../view/finding-words.ts';
import { renderPlantFinding } from './plant-findings.ts';

function renderFileInput(desk: PlantDesk): TemplateResult {
  return html`<div class="field screen">
    <label for="plant-day-files">Open files of daily or interval generation</label>
    <span class="hint" id="plant-day-files-hint">
      from the inverter’s or the meter’s page; several months at once if need be. Nothing is sent anywhere.
    </span>
    <input
      id="plant-day-files"
      type="file"
      multiple
      aria-describedby="plant-day-files-hint"
      @change=${(event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const files = [...(input.files ?? [])];
        input.value = '';
        if (files.length > 0) void desk.openFiles(files);
      }}
    />
  </div>`;
}

function renderRefused({ name, reason, findings }: RefusedFile, desk: PlantDesk): TemplateResult {
  return html`<div class="finding error" data-code="refused">
    <p><strong class="mark">“${name}” was not taken:</strong> ${reason}</p>
    ${findings.map((finding) => renderPlantFinding(finding, desk))}
  </div>`;
}

function renderFile({ name, days, zone, findings }: DayFile, desk: PlantDesk): TemplateResult {
  const { writing } = desk.view;
  const [first, last] = [days[0], days.at(-1)];
  const known = days.filter(({ wattHours }) => wattHours !== null).length;
  const span =
    first === undefined || last === undefined
      ? ''
      : `, ${writing.day(first.day)} to ${writing.day(last.day)}`;
  return html`<li>
    “${name}”: ${writing.number(String(known))} days with a value${span}.
    ${zone === null ? nothing : `Its times were moved to the clock of ${zone}, as this device has it.`}
    ${findings.map((finding) => renderPlantFinding(finding, desk))}
  </li>`;
}

/** The table that is asked about, of several the first. */
function renderAsked(desk: PlantDesk): TemplateResult | typeof nothing {
  const [asked] = desk.asked;
  if (asked === undefined) return nothing;
  return html`<div class="asked">
    <p><strong>“${asked.name}”</strong></p>
    <unitbook-table-question
      .asked=${asked}
      .writing=${desk.view.writing}
      .layouts=${desk.layouts}
      .answer=${desk.answerTable}
    ></unitbook-table-question>
    ${renderButton('Leave this file out', () => void desk.answerTable(null), { id: 'plant-leave-out' })}
  </div>`;
}

const MARKS = { error: 'To set right', question: 'A question', note: 'Note' } as const;

function renderDayFinding({ number, finding, days }: DayFinding, desk: PlantDesk): TemplateResult {
  const { severity, code } = finding;
  return html`<li class="finding ${severity}" data-code=${code}>
    <p>
      <b class="letter">${number}</b> <strong class="mark">${MARKS[severity]}:</strong>
      ${plantFindingText(finding, desk.view.writing)}
    </p>
    ${renderButton('Show on the chart', () => {
      desk.point(days);
    })}
  </li>`;
}

function renderFindings(desk: PlantDesk): TemplateResult {
  const findings = desk.view.days?.findings ?? [];
  if (findings.length === 0)
    return html`<p>
      The days show nothing to look at: none is missing, none is out of place, and no level changed.
    </p>`;
  return html`<ol class="day-findings">
    ${findings.map((one) => renderDayFinding(one, desk))}
  </ol>`;
}

/** Single days from a file, and what they show. */
export function renderDays(desk: PlantDesk): TemplateResult {
  const { files, refused, view } = desk;
  return html`
    <section class="part ${files.length === 0 ? 'screen' : ''}" aria-labelledby="plant-days-head">
      <h3 class="sub" id="plant-days-head">Single days</h3>
      ${renderFileInput(desk)}
      <div aria-live="polite">
        ${refused.map((one) => renderRefused(one, desk))}
        ${
          files.length === 0
            ? html`<p class="hint">
                Single days show what months hide: days without a unit, a part that fell out, slow soiling.
              </p>`
            : html`
                <ul class="files">
                  ${files.map((file) => renderFile(file, desk))}
                </ul>
                <p class="hint screen">
                  The chart above shows them. They are not kept with the book: open them again next time.
                </p>
                ${renderButton('Close these files', desk.closeFiles, { className: 'quiet', id: 'plant-close-files' })}
              `
        }
        ${
          files.length > 0 && view.plant === null
            ? html`<p class="provided">Type the size of the plant: days are told per kWp.</p>`
            : nothing
        }
      </div>
      ${renderAsked(desk)} ${view.days === null ? nothing : renderFindings(desk)}
    </section>
  `;
}
