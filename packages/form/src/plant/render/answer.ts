import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../../render/button.ts';
import { daysText } from '../../writing/writing.ts';
import { kindOf } from '../document/edit-plant.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { answerOf } from '../view/answer-words.ts';
import { JUDGEMENT_SIGNS } from '../view/judgement-words.ts';
import type { MonthView } from '../view/month-views.ts';

/** "1 March to 1 April 2026, 31 days"; a date stays on one line. */
export function monthSpan({ period }: MonthView, { view: { writing } }: PlantDesk): string {
  const [from, to] = [period.from, period.to].map((day) => writing.day(day).replaceAll(' ', '\u00a0'));
  return `${from ?? ''} to ${to ?? ''}, ${daysText(period.to - period.from)}`;
}

/** Where to go on from, while something is missing that an answer needs. */
function renderFirstStep(desk: PlantDesk): TemplateResult | typeof nothing {
  const { view } = desk;
  const isWaiting = view.plant === null || view.plant.expected === null;
  if (!isWaiting) return nothing;
  const what =
    view.plant === null
      ? 'Type the size of the plant first.'
      : kindOf(view.document) === ''
        ? 'Type first what the plant should make: the monthly table of the quote, irradiation by month, or earlier years.'
        : 'What the plant should make is not whole yet.';
  const field = view.plant === null ? 'plant-capacity-0-kWp' : 'plant-expected';
  return html`<p class="provided">
    ${what}
    ${renderButton('Go to it', () => {
      desk.setOpen('expected', true);
      desk.focusField(field);
    })}
  </p>`;
}

/** What is said where no month can be shown at all. */
function emptyText({ view: { hasMeter, months, isBlocked } }: PlantDesk): string {
  if (months.length > 0) return '';
  if (isBlocked)
    return 'A reading above has to be set right, or the account filled in, before a month can be judged.';
  return hasMeter
    ? 'Type two readings of the generation meter above: they make the first month.'
    : 'This account has no generation meter. Open a file of daily generation below, such as the inverter’s.';
}

function renderMonth(month: MonthView, desk: PlantDesk): TemplateResult {
  const { judgement, lead, text } = answerOf(month, desk.view.writing);
  const { basis, judged, finding } = month;
  const remedy = judgement === 'watch' || judgement === 'look-at-it' ? (finding?.remedy ?? '') : '';
  return html`
    <p class="period">${monthSpan(month, desk)}</p>
    <p class="verdict ${judgement}" id="plant-answer">
      <span class="verdict-sign" aria-hidden="true">${JUDGEMENT_SIGNS[judgement]}</span>
      <span><strong>${lead}:</strong> ${text}</span>
    </p>
    ${remedy === '' ? nothing : html`<p class="why">${remedy}</p>`}
    <p class="hint">
      ${
        basis === '' || judged === null
          ? nothing
          : `Expected by ${basis}; one sigma is ${desk.view.writing.number(judged.sigmaPercent)} %. `
      }
      A low month is a finding, not a diagnosis.
    </p>
  `;
}

/** The answer for the latest month, first of all. */
export function renderPlantAnswer(desk: PlantDesk): TemplateResult {
  const latest = desk.view.months.at(-1);
  return html`
    <section class="part" aria-labelledby="plant-answer-head">
      <h3 class="sub" id="plant-answer-head">The latest month</h3>
      <div aria-live="polite" class="live">
        ${latest === undefined ? html`<p>${emptyText(desk)}</p>` : renderMonth(latest, desk)}
        ${
          latest !== undefined && desk.view.isBlocked && desk.view.hasMeter
            ? html`<p class="hint">Later months wait for a reading that has to be set right.</p>`
            : nothing
        }
      </div>
      ${renderFirstStep(desk)}
    </section>
  `;
}
