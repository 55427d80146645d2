import { html, nothing, type TemplateResult } from 'lit';
import { parseDay, UPKEEP_CAUTIONS } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { cautionOf, dueTasks, dueText, type DueTask } from '../view/upkeep-words.ts';
import { noteDeed, renderDiary } from './diary.ts';

function renderTask(one: DueTask, desk: PlantDesk): TemplateResult {
  const { task, due } = one;
  const { plant, writing } = desk.view;
  const isDue =
    due !== null && (due.overdueSince !== null || due.last === null || due.day === parseDay(desk.today));
  return html`<li data-task=${task.id}>
    <div class="task-head">
      <p>
        <strong>${task.label}</strong>
        ${task.isForLicensed ? html`<em>(licensed people)</em>` : nothing}
        <span class="due-text ${isDue ? 'now' : ''}">${dueText(one, plant, writing)}</span>
      </p>
      ${renderButton('Note it as done', () => {
        noteDeed(task.id, desk);
      })}
    </div>
    <p>${task.how}</p>
    <p class="caution"><strong class="mark">Caution:</strong> ${cautionOf(task)}</p>
    <p class="hint">${task.source}</p>
  </li>`;
}

/** What is due next, what was done, and what can hurt someone at it. */
export function renderUpkeep(desk: PlantDesk): TemplateResult {
  return html`
    <section class="part upkeep" aria-labelledby="plant-upkeep-head">
      <h3 class="sub" id="plant-upkeep-head">Upkeep</h3>
      <ul class="tasks">
        ${dueTasks(desk.view.plant, parseDay(desk.today)).map((one) => renderTask(one, desk))}
      </ul>
      ${renderDiary(desk)}
      <h4 class="sub">Before anyone goes near the plant</h4>
      <ul class="cautions">
        ${UPKEEP_CAUTIONS.map(({ text, source }) => html`<li>${text} <span class="hint">(${source})</span></li>`)}
      </ul>
      <p class="hint">Local codes decide; where they are stricter, they hold.</p>
    </section>
  `;
}
