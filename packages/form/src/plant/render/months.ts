import { html, nothing, type TemplateResult } from 'lit';
import { figureValue, type Figure } from '@unitbook/engine';
import { offerFile } from '../../offer-file.ts';
import { renderButton } from '../../render/button.ts';
import { renderDerivation } from '../../render/derivation.ts';
import { renderFold } from '../../render/fold.ts';
import { daysText } from '../../writing/writing.ts';
import { csvText } from '../csv.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { plantFindingText } from '../view/finding-words.ts';
import { fixedText } from '../view/fixed-text.ts';
import { JUDGEMENT_SIGNS, judgementWords } from '../view/judgement-words.ts';
import type { MonthView } from '../view/month-views.ts';
import { monthRows, percentOf, rounded } from '../view/plant-rows.ts';
import { monthSpan } from './answer.ts';

const HEADS = ['Units made', 'Days', 'Per kWp and day', 'Used of its size', 'Expected', 'Share'] as const;
const RATIO_HEAD = 'Performance ratio';

function renderLine(month: MonthView, at: number, hasRatio: boolean, desk: PlantDesk): TemplateResult {
  const { writing } = desk.view;
  const number = (text: string, after = ''): string =>
    text === '' ? '–' : `${fixedText(text, writing)}${after}`;
  return html`
    <tr aria-current=${at === desk.selected ? 'true' : nothing}>
      <th scope="row">
        ${renderButton(
          writing.day(month.period.to),
          () => {
            desk.select(at);
          },
          { className: 'quiet' },
        )}
      </th>
      <td class="judged ${month.judgement}">
        <span class="sign" aria-hidden="true">${JUDGEMENT_SIGNS[month.judgement]}</span>
        ${judgementWords(month)}
      </td>
      <td>${number(rounded(month.made, 1))}</td>
      <td>${month.period.to - month.period.from}</td>
      <td>${number(rounded(month.specificYield, 2))}</td>
      <td>${number(percentOf(month.capacityUtilisation), ' %')}</td>
      ${hasRatio ? html`<td>${number(rounded(month.performanceRatio, 2))}</td>` : nothing}
      <td>${number(rounded(month.expected, 1))}</td>
      <td>${number(percentOf(month.share), ' %')}</td>
    </tr>
  `;
}

/** The figures of a month that unfold. */
function figuresOf(month: MonthView): readonly Figure[] {
  const { made, specificYield, specificYieldInService, capacityUtilisation } = month;
  const all = [
    made,
    specificYield,
    specificYieldInService,
    capacityUtilisation,
    month.performanceRatio,
    month.expected,
    month.share,
  ];
  return all.filter((figure) => figure !== null);
}

/** A quotient that does not end is told short in a line; its derivation has it whole. */
function lineValue(figure: Figure, { view: { writing } }: PlantDesk): string {
  if (figure.unit === 'kWh') return `${fixedText(rounded(figure, 1), writing)} units`;
  if (figure.unit === 'ratio') return `${fixedText(percentOf(figure), writing)} %`;
  if (figure.unit === 'kWh/kWp/day') return fixedText(rounded(figure, 2), writing);
  return figureValue(figure, writing);
}

function renderFigure(figure: Figure, desk: PlantDesk): TemplateResult {
  const key = `plant-figure/${figure.id}`;
  const summary = html`<span class="label">${figure.label}</span>
    <span class="amount">${lineValue(figure, desk)}</span>`;
  const content = (isOpen: boolean): unknown =>
    isOpen
      ? html`<div class="how">
          <p class="which">${figureValue(figure, desk.view.writing)}</p>
          ${renderDerivation(figure, key, desk)}
        </div>`
      : nothing;
  return html`<li>${renderFold({ key, summary, content }, desk)}</li>`;
}

/** What one sigma is made of, in a sentence. */
function sigmaText({ judged, daysInService }: MonthView, desk: PlantDesk): string {
  const { plant, writing } = desk.view;
  if (judged === null || plant === null) return '';
  const { yearToYear, meterClass } = plant;
  const { yearToYear: typed } = desk.view.document.uncertainty ?? {};
  const parts = [
    yearToYear === null
      ? 'months differ from year to year by 10 % where nothing better is known (our own rule)'
      : `months differ from year to year by ${writing.number(typed ?? '')} %`,
    ...(meterClass === null ? [] : [`the limit of the meter’s class ${meterClass}`]),
    ...(daysInService < 28 ? [`only ${daysText(daysInService)} in service, of 28 or more`] : []),
  ];
  return `One sigma is ${writing.number(judged.sigmaPercent)} % of the expectation: ${parts.join('; ')}. This month lies ${writing.number(judged.sigmas)} sigma from it.`;
}

/** The figures of the month that was chosen, each opening to where it comes from. */
function renderFigures(desk: PlantDesk): TemplateResult | typeof nothing {
  const month = desk.view.months[desk.selected];
  if (month === undefined) return nothing;
  const { finding } = month;
  const sigma = sigmaText(month, desk);
  return html`
    <h4 class="sub" id="plant-figures">Worked out: ${monthSpan(month, desk)}</h4>
    ${finding === null ? nothing : html`<p class="why">${plantFindingText(finding, desk.view.writing)}</p>`}
    <ul class="lines split">
      ${figuresOf(month).map((figure) => renderFigure(figure, desk))}
    </ul>
    ${sigma === '' ? nothing : html`<p class="hint">${sigma}</p>`}
  `;
}

/** What the plant made month by month, and what that is worth. */
export function renderMonthTable(desk: PlantDesk): TemplateResult | typeof nothing {
  const { months, hasMeter } = desk.view;
  if (months.length === 0) return nothing;
  const hasRatio = months.some(({ performanceRatio }) => performanceRatio !== null);
  const heads = hasRatio ? [...HEADS.slice(0, 4), RATIO_HEAD, ...HEADS.slice(4)] : HEADS;
  return html`
    <section class="part" aria-labelledby="plant-months-head">
      <h3 class="sub" id="plant-months-head">Month by month</h3>
      <div class="wide" role="region" aria-label="Table of the plant’s months" tabindex="0">
        <table aria-describedby="plant-months-note">
          <thead>
            <tr>
              <th scope="col">${hasMeter ? 'Reading of' : 'Up to'}</th>
              <th scope="col">Judgement</th>
              ${heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${months.map((month, at) => renderLine(month, at, hasRatio, desk))}
          </tbody>
        </table>
      </div>
      <p class="hint balance" id="plant-months-note">
        ✓ fine, ~ watch: below by more than one sigma, ! look at it: off by more than two, ? cannot be told.
        Used of its size: units over what the plant would make at full size day and night.
        ${hasRatio ? 'Performance ratio: by the irradiation of a usual year, not by a measured one.' : nothing}
      </p>
      ${renderButton(
        'Save the months as CSV',
        () => {
          const { heads: own, lines } = monthRows(desk.view);
          offerFile('unitbook-plant-months.csv', csvText(own, lines), 'text/csv');
        },
        { className: 'quiet', id: 'plant-months-csv' },
      )}
      ${renderFigures(desk)}
    </section>
  `;
}
