import { html, nothing, svg, type TemplateResult } from 'lit';
import { addDays, calendarDay, type Period } from '@unitbook/engine';
import { offerFile } from '../../offer-file.ts';
import { renderButton } from '../../render/button.ts';
import { renderFold } from '../../render/fold.ts';
import { renderStrip } from '../chart/render-strip.ts';
import { stripsOf } from '../chart/strips.ts';
import type { ChartModel, Strip } from '../chart/chart-model.ts';
import { csvText } from '../csv.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { deedWords } from '../view/deed-words.ts';
import { dayRows, monthRows, type Rows } from '../view/plant-rows.ts';
import { chartOf, type LetteredEntry } from '../view/view-plant.ts';
import { chartRows } from '../chart/chart-rows.ts';

/** The name of the strip that shows a day, for the link to it. */
export const stripIdOf = ({ from }: Period): string => `plant-strip-${String(from)}`;

function stripName({ from, to, model }: Strip, desk: PlantDesk): string {
  const { writing } = desk.view;
  const what = model.by === 'days' ? 'of every day' : 'of every month';
  return `Units per kWp and day ${what}, ${writing.day(from)} to ${writing.day(addDays(to, -1))}`;
}

function renderFigure(strip: Strip, desk: PlantDesk): TemplateResult {
  const name = stripName(strip, desk);
  const size = strip.model.by === 'months' && desk.isWide ? 'wide' : 'narrow';
  return html`<figure id=${stripIdOf(strip)} tabindex="-1" aria-label=${name}>
    ${renderStrip(strip, { size, name: `${name}. The same in figures stands in the table beneath.` })}
    ${
      strip.model.by === 'days'
        ? html`<figcaption>
            ${desk.view.writing.day(strip.from)} to ${desk.view.writing.day(addDays(strip.to, -1))}
          </figcaption>`
        : nothing
    }
  </figure>`;
}

/** Strips of one year, which fold away but for the last. */
function renderStrips(model: ChartModel, desk: PlantDesk): TemplateResult {
  const strips = stripsOf(model);
  if (model.by === 'months') return html`${strips.map((strip) => renderFigure(strip, desk))}`;
  const years = [...new Set(strips.map(({ from }) => calendarDay(from).year))].reverse();
  return html`${years.map((year, at) => {
    const own = strips.filter(({ from }) => calendarDay(from).year === year);
    return renderFold(
      {
        key: `plant-year-${String(year)}`,
        className: 'help',
        isOpen: at === 0,
        summary: `The days of ${String(year)}`,
        content: (isOpen) =>
          isOpen ? html`<div class="strips">${own.map((strip) => renderFigure(strip, desk))}</div>` : nothing,
      },
      desk,
    );
  })}`;
}

/** What the lines and areas of the chart are, each beside a piece of it. */
function renderLegend({ by, bands, outages }: ChartModel): TemplateResult {
  const made =
    by === 'days'
      ? 'made on a day; a ring stands for 0, no bar for a day that is not known'
      : 'made, from reading to reading; ~ watch, ! look at it';
  return html`<ul class="legend">
    <li>
      <svg class="key" viewBox="0 0 24 14" aria-hidden="true">
        ${
          by === 'days'
            ? svg`<rect class="day" x="8" y="2" width="6" height="12" />`
            : svg`<path class="made" d="M2 7H22" />`
        }
      </svg>
      ${made}
    </li>
    ${
      bands.length === 0
        ? nothing
        : html`<li>
            <svg class="key" viewBox="0 0 24 14" aria-hidden="true">
              <rect class="band" x="1" y="2" width="22" height="10" />
              <path class="band-edge" d="M1 2H23M1 12H23" />
              <path class="expected" d="M1 7H23" />
            </svg>
            expected of the month, and one sigma to either
            side${by === 'days' ? '; single days scatter far more' : nothing}
          </li>`
    }
    ${
      outages.length === 0
        ? nothing
        : html`<li>
            <svg class="key" viewBox="0 0 24 14" aria-hidden="true">
              <path class="outage" d="M2 13L13 2M8 13L19 2M14 13L22 5" />
            </svg>
            outage, by the diary
          </li>`
    }
  </ul>`;
}

function entryText({ date, through, did, note }: LetteredEntry, desk: PlantDesk): string {
  const { writing } = desk.view;
  const days = through > date ? `${writing.day(date)} to ${writing.day(through)}` : writing.day(date);
  return `${days}: ${deedWords(did).toLowerCase()}${note === '' ? '' : ` – ${note}`}`;
}

function renderEntries(model: ChartModel, desk: PlantDesk): TemplateResult | typeof nothing {
  const days = model.bars.map(({ from }) => from);
  const [first = 0, last = 0] = [days[0], days.at(-1)];
  const shown = desk.view.diary.filter(({ date, through }) => through >= first && date <= last + 31);
  if (shown.length === 0) return nothing;
  return html`<ul class="entries">
    ${shown.map((entry) => html`<li><b class="letter">${entry.letter}</b> ${entryText(entry, desk)}</li>`)}
  </ul>`;
}

function renderTable({ heads, lines }: Rows, by: ChartModel['by']): TemplateResult {
  return html`<div class="wide" role="region" aria-label="The chart in figures" tabindex="0">
    <table class="data" id="plant-chart-table">
      <caption class="hidden">
        Units per kWp and day, ${by === 'days' ? 'day by day' : 'month by month'}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${lines.map(
          ([first = '', ...cells]) =>
            html`<tr>
              <th scope="row">${first}</th>
              ${cells.map((text) => html`<td>${text}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** The chart of what the plant made, what it should make and what was done to it, and its figures. */
export function renderChart(desk: PlantDesk): TemplateResult | typeof nothing {
  const model = chartOf(desk.view, desk.pointed);
  if (model === null) return nothing;
  const rows = model.by === 'days' ? dayRows(desk.view) : monthRows(desk.view);
  return html`
    <section class="part" aria-labelledby="plant-chart-head">
      <h3 class="sub" id="plant-chart-head">Units per kWp and day</h3>
      ${renderStrips(model, desk)} ${renderLegend(model)} ${renderEntries(model, desk)}
      ${renderFold(
        {
          key: 'plant-chart-table',
          className: 'help',
          summary: 'The chart in figures',
          content: (isOpen) => (isOpen ? renderTable(chartRows(desk.view, model.by), model.by) : nothing),
        },
        desk,
      )}
      ${renderButton(
        'Save as CSV',
        () => {
          offerFile(`unitbook-plant-${model.by}.csv`, csvText(rows.heads, rows.lines), 'text/csv');
        },
        { className: 'quiet', id: 'plant-chart-csv' },
      )}
    </section>
  `;
}
