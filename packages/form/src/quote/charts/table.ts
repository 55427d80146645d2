import { html, nothing, type TemplateResult } from 'lit';
import { csvText } from '../../plant/csv.ts';
import type { Amount } from './chart-data.ts';

/** A cell: a text, or a value, which a sheet gets as its exact decimal. */
type Cell = string | Amount;

/** The numbers behind a chart. */
export interface ChartTable {
  readonly caption: string;
  readonly heads: readonly string[];
  /** The first cell of each line names it. */
  readonly lines: readonly (readonly Cell[])[];
  /** What the chart marks and the lines do not say. */
  readonly notes: readonly string[];
}

/** A cell that has nothing to say. */
export const NONE = '–';

/** From so many letters on a line's name takes more than one line of text. */
const LONG = 20;

const shown = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);
const plain = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.decimal);

/**
 * The numbers behind a chart as the text of a CSV file: values as exact decimals, the notes as last lines.
 *
 * @example
 * chartCsv({ caption: '', heads: ['year', 'money'], lines: [['1', { at: -2, text: '−₹2', decimal: '-2' }]], notes: [] }) //=> "year,money\n1,-2\n"
 */
export function chartCsv({ heads, lines, notes }: ChartTable): string {
  const cells = lines.map((line) => line.map((cell) => (cell === NONE ? '' : plain(cell))));
  const ends = notes.map((note) => heads.map((_, at) => (at === 0 ? note : '')));
  return csvText(heads, [...cells, ...ends]);
}

function renderLine([first = '', ...cells]: readonly Cell[]): TemplateResult {
  const name = shown(first);
  return html`<tr>
    <th scope="row" class=${name.length > LONG ? 'long' : nothing}>${name}</th>
    ${cells.map((cell) => html`<td>${shown(cell)}</td>`)}
  </tr>`;
}

/** The numbers behind a chart, folded away beneath it. */
export function renderChartTable({ caption, heads, lines, notes }: ChartTable, id: string): TemplateResult {
  return html`<details class="figures">
    <summary>The chart in figures</summary>
    <div class="figures-room" role="region" aria-label=${`${caption}: the chart in figures`} tabindex="0">
      <table class="figures-table" id=${`${id}-table`}>
        <caption class="hidden">
          ${caption}
        </caption>
        <thead>
          <tr>
            ${heads.map((head) => html`<th scope="col">${head}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${lines.map(renderLine)}
        </tbody>
      </table>
    </div>
    ${
      notes.length === 0
        ? nothing
        : html`<ul class="notes">
            ${notes.map((note) => html`<li>${note}</li>`)}
          </ul>`
    }
  </details>`;
}
