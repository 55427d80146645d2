import {
  addDays,
  upkeepCalendar,
  UPKEEP_TASKS,
  type CleaningEffect,
  type CleaningSide,
  type DayNumber,
  type DiaryDeed,
  type Plant,
  type UpkeepEntry,
  type UpkeepTask,
} from '@unitbook/engine';
import { daysText, type Writing } from '../../writing/writing.ts';
import { fixedText } from './fixed-text.ts';
import { rounded } from './plant-rows.ts';

/** What can hurt someone at a task, and whose work it is. */
const CAUTIONS: Readonly<Partial<Record<DiaryDeed, string>>> = {
  cleaning:
    'Direct current is live in daylight, and water conducts: keep off connectors, cables and cracked modules. ' +
    'A roof is work at height: from the ground or a safe place, else leave it to people equipped for it.',
  structure:
    'A roof is work at height: look from the ground. Tightening and lifting modules is for licensed people: ' +
    'direct current is live in daylight.',
  cables:
    'Direct current is live in daylight, whatever the inverter shows: look, never touch. Repairs are for ' +
    'licensed people; a roof is work at height.',
  'inverter-area':
    'Never open a cover: direct current is live in daylight. The meter is sealed: seals are for the licensee.',
  inspection:
    'For licensed people alone: direct current that is live in daylight, work at height, and a sealed meter.',
};

/** The caution of a task; local codes decide in any case. */
export function cautionOf({ id }: UpkeepTask): string {
  return `${CAUTIONS[id] ?? 'For licensed people.'} Local codes decide.`;
}

/** A task, and when it is due next; null where the page does not know the day. */
export interface DueTask {
  readonly task: UpkeepTask;
  readonly due: UpkeepEntry | null;
}

/** So far is looked ahead: every task comes within a year. */
const AHEAD = 400;

/** Every task of upkeep with the next day it is due. */
export function dueTasks(plant: Plant | null, today: DayNumber | null): readonly DueTask[] {
  const entries = plant === null || today === null ? [] : upkeepCalendar(plant, today, addDays(today, AHEAD));
  return UPKEEP_TASKS.map((task) => ({
    task,
    due: entries.find((entry) => entry.task.id === task.id && entry.state === 'due') ?? null,
  }));
}

/** "15 days", "3 months". */
function everyText({ task }: DueTask, isOnCoast: boolean): string {
  const every = isOnCoast ? task.everyOnCoast : task.every;
  if ('days' in every) return daysText(every.days);
  return every.months === 1 ? 'month' : `${String(every.months)} months`;
}

/** When a task is due: "since 1 May 2026", "on 16 May 2026, every 15 days". */
export function dueText(one: DueTask, plant: Plant | null, writing: Writing): string {
  const every = `every ${everyText(one, plant?.isOnCoast === true)}`;
  const { due } = one;
  if (due === null) return every;
  if (due.overdueSince !== null) return `due since ${writing.day(due.overdueSince)}, ${every}`;
  if (due.last === null) return `not noted yet, ${every}`;
  return `next on ${writing.day(due.day)}, ${every}`;
}

const SAYS: Readonly<Record<CleaningEffect['says'], string>> = {
  more: 'more, beyond what the weather of so few days does',
  less: 'less, beyond what the weather of so few days does',
  'within-the-weather': 'no more apart than the weather of so few days brings about',
  'cannot-be-told': 'too few of these days are known to tell',
};

const sideText = ({ mean }: CleaningSide, writing: Writing): string =>
  mean === null ? 'not known' : fixedText(rounded(mean, 1), writing);

/** What a cleaning did, in a sentence: "7 days before: 4.1, after: 4.4 units per kWp and day: …". */
export function effectText({ before, after, says }: CleaningEffect, writing: Writing): string {
  const days = daysText(before.to - before.from);
  const figures = `${days} before: ${sideText(before, writing)}, after: ${sideText(after, writing)} units per kWp and day`;
  return `${figures}: ${SAYS[says]}.`;
}
