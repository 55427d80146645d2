import { addDays, parseDay, readPlant, UPKEEP_TASKS, type DayNumber, type Plant } from '@unitbook/engine';
import { cleaningEffects } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { cautionOf, dueTasks, dueText, effectText } from './upkeep-words.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const writing = writingFor('en-IN', 'INR');

function plantOf(parts: object = {}): Plant {
  const { value } = readPlant(
    JSON.stringify({ format: 'unitbook-plant-1', capacity: [{ kWp: '4' }], ...parts }),
  );
  if (value === null) throw new Error('no plant');
  return value;
}

function told(id: string, parts: object, today: string): string {
  const plant = plantOf(parts);
  const one = dueTasks(plant, parseDay(today)).find(({ task }) => task.id === id);
  return one === undefined ? '' : dueText(one, plant, writing);
}

it('says what is due next by the diary and by common practice', () => {
  const diary = [{ date: '2026-04-20', did: 'cleaning' }];
  expect(told('cleaning', { diary }, '2026-05-01')).toBe('next on 5 May 2026, every 15 days');
  expect(told('cleaning', { diary }, '2026-05-05')).toBe('next on 5 May 2026, every 15 days');
  expect(told('cleaning', { diary }, '2026-05-06')).toBe('due since 5 May 2026, every 15 days');
  expect(told('cleaning', {}, '2026-05-01')).toBe('not noted yet, every 15 days');
  expect(told('structure', {}, '2026-05-01')).toBe('not noted yet, every 3 months');
  expect(told('structure', { coast: true }, '2026-05-01')).toBe('not noted yet, every month');
});

it('names no day where it does not know today, or no plant', () => {
  expect(told('cleaning', {}, '')).toBe('every 15 days');
  expect(dueTasks(null, day('2026-05-01')).map(({ due }) => due)).toEqual(UPKEEP_TASKS.map(() => null));
});

it('has a caution for every task, and local codes decide', () => {
  for (const task of UPKEEP_TASKS) {
    const text = cautionOf(task);
    expect(text).toMatch(/direct current/i);
    expect(text).toMatch(/Local codes decide\.$/);
  }
  const of = (id: string): string =>
    UPKEEP_TASKS.filter((task) => task.id === id)
      .map(cautionOf)
      .join('');
  expect(of('cleaning')).toContain('work at height');
  expect(of('inverter-area')).toContain('sealed');
  expect(of('inspection')).toContain('licensed people');
});

it('sets the seven days before a cleaning beside the seven after it', () => {
  const plant = plantOf({ diary: [{ date: '2026-04-10', did: 'cleaning' }] });
  const first = day('2026-04-03');
  // 4 kWp: 16.4 units a day are 4.1, 17.6 are 4.4; all alike, so that any difference is beyond their scatter.
  const days = Array.from({ length: 15 }, (_, at) => ({
    day: addDays(first, at),
    wattHours: at < 7 ? 16_400 : 17_600,
  }));
  expect(cleaningEffects(days, plant).map((effect) => effectText(effect, writing))).toEqual([
    '7 days before: 4.1, after: 4.4 units per kWp and day: more, beyond what the weather of so few days does.',
  ]);
  expect(cleaningEffects(days.slice(0, 9), plant).map((effect) => effectText(effect, writing))).toEqual([
    '7 days before: 4.1, after: 4.4 units per kWp and day: too few of these days are known to tell.',
  ]);
});
