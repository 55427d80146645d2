import { describe, expect, it } from 'vitest';
import { dayOf, plantOf } from '../../../../../tests/support/plant-days.ts';
import { dayText } from '../../quantity/index.ts';
import type { DiaryDeed, PlantDocument } from './plant-document.ts';
import { upkeepCalendar } from './upkeep.ts';
import { UPKEEP_CAUTIONS, UPKEEP_TASKS } from './upkeep-tasks.ts';

type Diary = NonNullable<PlantDocument['diary']>;

const calendar = (id: DiaryDeed, diary: Diary, from: string, to: string, coast = false): readonly string[] =>
  upkeepCalendar(plantOf({ diary, coast }), dayOf(from), dayOf(to))
    .filter(({ task }) => task.id === id)
    .map(({ day, state, overdueSince }) =>
      [state, dayText(day), overdueSince === null ? '' : `since ${dayText(overdueSince)}`].join(' ').trim(),
    );

describe('the calendar of upkeep', () => {
  it('begins at once where the diary has nothing: cleaning every 15 days', () => {
    expect(calendar('cleaning', [], '2025-01-01', '2025-02-01')).toEqual([
      'due 2025-01-01',
      'due 2025-01-16',
      'due 2025-01-31',
    ]);
  });

  it('goes by what was done: 15 days after the last cleaning', () => {
    const diary: Diary = [
      { date: '2024-12-28', did: 'cleaning' },
      { date: '2025-01-10', did: 'cleaning', note: 'all of it' },
      { date: '2025-01-30', did: 'cleaning' },
    ];
    // Due 12 January, done on the 10th; due on the 25th, done on the 30th; due on 14 February.
    expect(calendar('cleaning', diary, '2025-01-01', '2025-02-15')).toEqual([
      'done 2025-01-10',
      'due 2025-01-25',
      'done 2025-01-30',
      'due 2025-02-14',
    ]);
  });

  it('tells since when a task is due that fell due before', () => {
    const diary: Diary = [{ date: '2024-11-30', did: 'structure' }];
    expect(calendar('structure', diary, '2025-03-05', '2025-06-05')).toEqual([
      'due 2025-03-05 since 2025-02-28',
    ]);
    expect(calendar('structure', diary, '2025-02-28', '2025-03-01')).toEqual(['due 2025-02-28']);
    expect(calendar('structure', diary, '2025-02-01', '2025-02-28')).toEqual([]);
  });

  it('is closer on the coast for structure and fasteners: monthly', () => {
    const diary: Diary = [{ date: '2025-01-10', did: 'structure' }];
    expect(calendar('structure', diary, '2025-01-11', '2025-05-01')).toEqual(['due 2025-04-10']);
    expect(calendar('structure', diary, '2025-01-11', '2025-05-01', true)).toEqual([
      'due 2025-02-10',
      'due 2025-03-10',
      'due 2025-04-10',
    ]);
    expect(calendar('cables', [], '2025-01-31', '2025-05-01', true)).toEqual([
      'due 2025-01-31',
      'due 2025-04-30',
    ]);
  });

  it('has an inspection a year, for licensed people', () => {
    const diary: Diary = [{ date: '2024-02-29', did: 'inspection' }];
    expect(calendar('inspection', diary, '2024-03-01', '2025-12-31')).toEqual(['due 2025-02-28']);
    expect(UPKEEP_TASKS.filter(({ isForLicensed }) => isForLicensed).map(({ id }) => id)).toEqual([
      'inspection',
    ]);
  });

  it('is in order of days, and takes a task as done on the last of several days', () => {
    const diary: Diary = [
      { date: '2025-01-01', through: '2025-01-03', did: 'cleaning' },
      { date: '2024-12-20', did: 'cleaning' },
    ];
    expect(calendar('cleaning', diary, '2025-01-02', '2025-01-19')).toEqual([
      'done 2025-01-03',
      'due 2025-01-18',
    ]);
    const all = upkeepCalendar(plantOf(), dayOf('2025-01-01'), dayOf('2026-01-01')).map(({ day }) => day);
    expect(all).toEqual([...all].sort((a, b) => a - b));
    expect(upkeepCalendar(plantOf(), dayOf('2025-01-01'), dayOf('2025-01-01'))).toEqual([]);
    expect(() => upkeepCalendar(plantOf(), dayOf('2025-01-02'), dayOf('2025-01-01'))).toThrow(RangeError);
  });
});

describe('tasks and cautions', () => {
  it('say where they come from', () => {
    expect([...UPKEEP_TASKS, ...UPKEEP_CAUTIONS].filter(({ source }) => source === '')).toEqual([]);
    expect(UPKEEP_TASKS.every(({ source }) => source.includes('common practice'))).toBe(true);
  });

  it('warn of direct current, of height, of the sealed meter and of cracked modules', () => {
    const text = UPKEEP_CAUTIONS.map((caution) => caution.text).join(' ');
    for (const word of [
      'direct current',
      'height',
      'sealed',
      'cracked',
      'licensed',
      '200 W per m²',
      'Never step',
    ])
      expect(text).toContain(word);
  });
});
