import { html, nothing, type TemplateResult } from 'lit';
import { DIARY_DEEDS, parseDay, type DiaryDeed, type PlantDocument } from '@unitbook/engine';
import { renderButton } from '../../render/button.ts';
import { renderFold } from '../../render/fold.ts';
import { addEntry, fieldIdOf, takeEntry } from '../document/edit-plant.ts';
import { putAt } from '../document/plant-texts.ts';
import type { PlantDesk } from '../plant-desk.ts';
import { deedWords } from '../view/deed-words.ts';
import { effectText } from '../view/upkeep-words.ts';
import { renderPlantField } from './plant-field.ts';
import { renderPlainSelect } from '../../render/select.ts';

type Entry = NonNullable<PlantDocument['diary']>[number];

const entryKey = (at: number): string => `plant-entry-${String(at)}`;

/** Note something that was done: today, or on a day still to be typed. */
export function noteDeed(did: DiaryDeed, desk: PlantDesk): void {
  const at = desk.view.document.diary?.length ?? 0;
  desk.change(addEntry(desk.view.document, desk.today, did));
  desk.setOpen(entryKey(at), true);
  desk.focusField(fieldIdOf(['diary', at, 'date']));
}

function dayWords(date: string, desk: PlantDesk): string {
  const day = parseDay(date);
  if (day !== null) return desk.view.writing.day(day);
  return date === '' ? 'not dated yet' : `“${date}”`;
}

function entryWords({ date, through, did, note = '' }: Entry, desk: PlantDesk): string {
  const last = through === undefined || through === '' ? '' : ` to ${dayWords(through, desk)}`;
  return `${dayWords(date, desk)}${last}: ${deedWords(did).toLowerCase()}${note === '' ? '' : ` – ${note}`}`;
}

function renderFields(entry: Entry, at: number, desk: PlantDesk): TemplateResult {
  const path = ['diary', at];
  return html`
    <div class="pair">
      ${renderPlantField(
        { path: [...path, 'date'], label: 'Day', hint: 'such as 1 May 2026', kept: entry.date, is: 'day' },
        desk,
      )}
      ${renderPlainSelect({
        id: fieldIdOf([...path, 'did']),
        label: 'What was done',
        value: entry.did,
        options: DIARY_DEEDS.map((did) => [did, deedWords(did)] as const),
        choose: (did) => {
          desk.change(putAt(desk.view.document, [...path, 'did'], did));
        },
      })}
      ${renderPlantField(
        {
          path: [...path, 'through'],
          label: 'Last day',
          hint: 'only where it took several',
          kept: entry.through ?? '',
          is: 'day',
          set: (plant, kept) => putAt(plant, [...path, 'through'], kept === '' ? undefined : kept),
        },
        desk,
      )}
      ${renderPlantField(
        {
          path: [...path, 'note'],
          label: 'Note',
          kept: entry.note ?? '',
          is: 'text',
          set: (plant, kept) => putAt(plant, [...path, 'note'], kept === '' ? undefined : kept),
        },
        desk,
      )}
    </div>
    ${renderButton('Take this entry out', () => {
      desk.take(
        takeEntry(desk.view.document, at),
        `The entry of ${dayWords(entry.date, desk)} was taken out.`,
      );
    })}
  `;
}

/** What the days around a cleaning made; nothing for other entries, and without single days. */
function renderEffect({ date, did }: Entry, desk: PlantDesk): TemplateResult | typeof nothing {
  const { effects, writing } = desk.view;
  const effect = did === 'cleaning' ? effects.find((one) => one.date === parseDay(date)) : undefined;
  return effect === undefined ? nothing : html`<p class="effect">${effectText(effect, writing)}</p>`;
}

function renderEntry(entry: Entry, at: number, desk: PlantDesk): TemplateResult {
  const letter = desk.view.diary.find(({ place }) => place === at)?.letter ?? '';
  return html`<li>
    ${renderFold(
      {
        key: entryKey(at),
        className: 'help',
        summary: html`${letter === '' ? nothing : html`<b class="letter">${letter}</b> `}${entryWords(entry, desk)}`,
        content: (isOpen) => (isOpen ? renderFields(entry, at, desk) : nothing),
      },
      desk,
    )}
    ${renderEffect(entry, desk)}
  </li>`;
}

/** What was done to the plant, the entry added last on top. */
export function renderDiary(desk: PlantDesk): TemplateResult {
  const { diary = [] } = desk.view.document;
  const isDaysMissing = desk.view.days === null && diary.some(({ did }) => did === 'cleaning');
  return html`
    <h4 class="sub">Diary</h4>
    ${
      desk.removed === ''
        ? nothing
        : html`<p class="undo" role="status">
            ${desk.removed} ${renderButton('Put it back', desk.undo, { id: 'plant-undo' })}
          </p>`
    }
    ${renderButton(
      'New entry',
      () => {
        noteDeed('other', desk);
      },
      { id: 'plant-new-entry' },
    )}
    ${
      diary.length === 0
        ? html`<p class="hint">Nothing noted yet. Outages that are noted do not count against the plant.</p>`
        : html`<ol class="diary">
            ${diary.map((entry, at) => renderEntry(entry, at, desk)).reverse()}
          </ol>`
    }
    ${
      isDaysMissing
        ? html`<p class="hint screen">
            What a cleaning did is told from single days: open a file of them above.
          </p>`
        : nothing
    }
  `;
}
