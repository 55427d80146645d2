import {
  blockClock,
  checkTimeBlocks,
  intervalRowsToColumns,
  measureIntervals,
  type Finding,
  type IntervalRow,
  type IntervalRules,
  type NettingWindow,
  type TimeBlockEntry,
  type TimeBlocks,
} from '@unitbook/engine';
import { dayOf, periodOf } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

const NIGHT: TimeBlockEntry = { block: 'night', from: '22:00', to: '06:00' };
const DAY: TimeBlockEntry = { block: 'day', from: '06:00', to: '22:00' };
const BLOCKS = [
  { id: 'day', label: 'Day' },
  { id: 'night', label: 'Night' },
];

/** Time blocks of a day and a night, with what a case changes. */
const blocksOf = (calendar: TimeBlockEntry[], parts: Partial<TimeBlocks> = {}): TimeBlocks => ({
  clause: 'TO-2024 cl. 7',
  blocks: BLOCKS,
  calendar,
  ...parts,
});
const checked =
  (calendar: TimeBlockEntry[], parts: Partial<TimeBlocks> = {}) =>
  (): readonly Finding[] =>
    checkTimeBlocks(blocksOf(calendar, parts));

const ONE_ENTRY = { expected: 'exactly one entry for every minute of every day' } as const;
const GAP = {
  ...ONE_ENTRY,
  remedy: 'Add an entry for that time, or correct the times, days or seasons of the others.',
} as const;
const OVERLAP = {
  ...ONE_ENTRY,
  remedy: 'Correct the times, days or seasons of these entries, so that one of them applies.',
} as const;

/** Everything that can be wrong with the time blocks of a tariff. */
const CALENDAR_CASES: readonly MessageCase[] = [
  {
    code: 'tariff/block-unknown',
    when: 'an entry names a block that is not declared',
    make: checked([NIGHT, { ...DAY, block: 'dya' }, { ...DAY, days: ['sun'] }, { ...DAY, days: ['mon'] }]),
    isAmongOthers: true,
    at: 'timeBlocks.calendar.1.block',
    found: 'the time block "dya"',
    expected: 'one of the time blocks: "day", "night"',
    remedy: 'Add it under "blocks" or correct the name.',
  },
  {
    code: 'tariff/block-unused',
    when: 'no entry names a block',
    make: checked([{ block: 'day', from: '00:00', to: '24:00' }]),
    at: 'timeBlocks.blocks.1.id',
    found: 'the time block "night", which no entry of the calendar names',
    expected: 'every block somewhere in the calendar',
    remedy: 'Add when it applies, or take it out.',
  },
  {
    code: 'tariff/block-same-id-twice',
    when: 'two blocks have one id',
    make: checked([NIGHT, DAY], { blocks: [...BLOCKS, { id: 'day', label: 'Noon' }] }),
    at: 'timeBlocks.blocks.2.id',
    found: 'a second time block with the id "day"',
    expected: 'each id once',
    remedy: 'Give this block another id, or take it out.',
  },
  {
    code: 'tariff/block-gap',
    when: 'the nights of two days have no entry',
    make: checked([{ ...NIGHT, days: ['mon', 'tue', 'wed', 'thu', 'fri'] }, DAY]),
    at: 'timeBlocks.calendar',
    found: 'no block applies from 22:00 to 06:00 on sat, sun',
    ...GAP,
  },
  {
    code: 'tariff/block-gap',
    when: 'a season ends a day before the next begins',
    make: checked([{ ...NIGHT, season: 'cool' }, { ...NIGHT, season: 'warm' }, DAY], {
      seasons: { warm: { from: '03-01', through: '09-30' }, cool: { from: '10-01', through: '02-28' } },
    }),
    at: 'timeBlocks.calendar',
    found: 'no block applies from 22:00 to 06:00 on every day, 02-29 through 02-29',
    ...GAP,
  },
  {
    code: 'tariff/block-overlap',
    when: 'a day begins before the night ends, on holidays',
    make: checked([NIGHT, DAY, { block: 'day', from: '05:30', to: '06:00', days: ['holiday'] }], {
      holidays: { clause: 'TO-2024 cl. 8', days: ['2025-01-01'] },
    }),
    at: 'timeBlocks.calendar.2',
    found: 'two blocks apply from 05:30 to 06:00 on holiday: "night" and "day"',
    ...OVERLAP,
  },
  {
    code: 'tariff/block-overlap',
    when: 'two seasons share days over the end of the year',
    make: checked([NIGHT, { ...DAY, season: 'cool' }, { ...DAY, season: 'warm' }], {
      seasons: { warm: { from: '03-01', through: '01-15' }, cool: { from: '12-16', through: '02-29' } },
    }),
    at: 'timeBlocks.calendar.2',
    found: 'two blocks apply from 06:00 to 22:00 on every day, 12-16 through 01-15: "day" and "day"',
    ...OVERLAP,
  },
  {
    code: 'tariff/block-unknown-season',
    when: 'an entry names a season that there is not',
    make: checked([NIGHT, { ...DAY, season: 'wram' }], {
      seasons: { warm: { from: '01-01', through: '12-31' } },
    }),
    at: 'timeBlocks.calendar.1.season',
    found: 'the season "wram"',
    expected: 'one of the seasons of the time blocks: "warm"',
    remedy: 'Add it under "seasons" or correct the name.',
  },
  {
    code: 'tariff/block-no-such-time',
    when: 'an entry begins at the end of the day',
    make: checked([{ ...NIGHT, from: '24:00' }, DAY]),
    at: 'timeBlocks.calendar.0.from',
    found: '"24:00"',
    expected: 'a time of the clock, "00:00" to "23:59"',
    remedy: 'Correct the time.',
  },
  {
    code: 'tariff/block-no-such-time',
    when: 'an entry ends at a minute that there is not',
    make: checked([NIGHT, { ...DAY, to: '21:60' }]),
    at: 'timeBlocks.calendar.1.to',
    found: '"21:60"',
    expected: 'a time of the clock, "00:00" to "24:00"',
    remedy: 'Correct the time.',
  },
  {
    code: 'tariff/block-no-time',
    when: 'an entry ends as it begins',
    make: checked([NIGHT, { ...DAY, to: '06:00' }]),
    at: 'timeBlocks.calendar.1.to',
    found: 'from 06:00 to 06:00, which is no time at all, or all day',
    expected: 'an end that differs from the beginning',
    remedy: 'Correct one of the two. All day is written "00:00" to "24:00".',
  },
  {
    code: 'tariff/block-no-such-day',
    when: 'a season ends on a day that there is not',
    make: checked([NIGHT, DAY], { seasons: { warm: { from: '03-01', through: '09-31' } } }),
    at: 'timeBlocks.seasons.warm.through',
    found: '"09-31"',
    expected: 'a day of the calendar',
    remedy: 'Correct the date.',
  },
  {
    code: 'tariff/block-no-such-day',
    when: 'a holiday is a day that there is not',
    make: checked([NIGHT, DAY], {
      holidays: { clause: 'TO-2024 cl. 8', days: ['2024-02-29', '2025-02-29'] },
    }),
    at: 'timeBlocks.holidays.days.1',
    found: '"2025-02-29"',
    expected: 'a day of the calendar',
    remedy: 'Correct the date.',
  },
  {
    code: 'tariff/block-no-holidays',
    when: 'an entry names holidays, and none are listed',
    make: checked([NIGHT, { ...DAY, days: ['mon', 'holiday'] }]),
    at: 'timeBlocks.calendar.1.days',
    found: 'an entry for holidays, where no holiday is listed',
    expected: '"holidays" with their clause and their dates',
    remedy: 'List the holidays, or take "holiday" out of the entry.',
  },
];

const FIRST = dayOf('2025-10-26') * 1440;
const ONE_DAY = periodOf('2025-10-26', '2025-10-27');

/** The 48 half hours of 26 October 2025, 100 Wh taken and 50 Wh given in each. */
const halfHours: readonly IntervalRow[] = Array.from({ length: 48 }, (_, at) => ({
  start: FIRST + at * 30,
  import: 100,
  export: 50,
}));

/** Measure a day of half hours by day and night, with what a case changes. */
const day =
  (change: (rows: IntervalRow[]) => unknown, rules: Partial<IntervalRules> = {}) =>
  (): readonly Finding[] => {
    const rows = [...halfHours];
    change(rows);
    const clock = blockClock(blocksOf([NIGHT, DAY]), 30);
    return measureIntervals(intervalRowsToColumns(rows, 30), ONE_DAY, { clock, windows: [], ...rules })
      .findings;
  };
const asIs = (): void => undefined;

const netted = (window: Pick<NettingWindow, 'within' | 'from' | 'to'>): Partial<IntervalRules> => ({
  windows: [{ id: 'net', of: 'import', less: 'export', ...window }],
});
const withCalendar = (
  calendar: TimeBlockEntry[],
  parts: Partial<TimeBlocks> = {},
): Partial<IntervalRules> => ({
  clock: blockClock(blocksOf(calendar, parts), 30),
});

const EACH_ONCE = { expected: 'each interval once' } as const;
const IN_ONE_BLOCK = {
  expected: 'energy that is netted inside one time block',
  remedy: 'Net by shorter windows, or correct the times of the blocks: what is left belongs to no one block.',
} as const;
const WHOLE = {
  expected: 'whole numbers of watt-hours, 0 or more',
  remedy: 'Correct the value; units of kWh have to be given as watt-hours.',
} as const;

/** Everything that can be said of interval data. */
const INTERVAL_CASES: readonly MessageCase[] = [
  {
    code: 'energy/interval-missing',
    when: 'three half hours are missing',
    make: day((rows) => [rows.splice(10, 2), rows.pop()]),
    severity: 'question',
    at: 'intervals',
    found: '3 intervals missing, the first at 2025-10-26 05:00, the last at 2025-10-26 23:30',
    expected: 'an interval of 30 minutes for all of the period from 2025-10-26 to 2025-10-27',
    remedy:
      'Ask for the missing data. What they held is in none of the sums. If an hour is missing because the ' +
      'clocks went forward, name the day as a clock change.',
  },
  {
    code: 'energy/interval-missing',
    when: 'one half hour is missing',
    make: day((rows) => rows.shift()),
    severity: 'question',
    at: 'intervals',
    found: '1 interval missing: 2025-10-26 00:00',
    expected: 'an interval of 30 minutes for all of the period from 2025-10-26 to 2025-10-27',
    remedy:
      'Ask for the missing data. What they held is in none of the sums. If an hour is missing because the ' +
      'clocks went forward, name the day as a clock change.',
  },
  {
    code: 'energy/interval-repeated',
    when: 'a half hour stands twice',
    make: day((rows) => rows.splice(5, 0, ...halfHours.slice(4, 5))),
    severity: 'question',
    at: 'intervals.5',
    found: '1 interval twice, with the same values: 2025-10-26 02:00',
    ...EACH_ONCE,
    remedy:
      'Take the second out. It is counted once. If the clocks went back, name the day as a clock change.',
  },
  {
    code: 'energy/interval-conflict',
    when: 'two half hours stand twice, with other values',
    make: day((rows) => [
      rows.splice(5, 0, { start: FIRST + 120, import: 101, export: 50 }),
      rows.splice(7, 0, { start: FIRST + 150, import: 100, export: 49 }),
    ]),
    at: 'intervals.5',
    found:
      '2 intervals twice, with different values, the first at 2025-10-26 02:00, the last at 2025-10-26 02:30',
    ...EACH_ONCE,
    remedy:
      'Keep the one that is right. If the clocks went back, name the day as a clock change: a whole hour ' +
      'then follows the hour that it repeats.',
  },
  {
    code: 'energy/interval-hour-twice',
    when: 'an hour stands twice on a day that is not named as a clock change',
    make: day((rows) => rows.splice(6, 0, ...halfHours.slice(4, 6))),
    severity: 'question',
    at: 'intervals.6',
    found: 'the hour from 2025-10-26 02:00 twice, one after the other',
    expected: 'an hour twice only on the day the clocks go back',
    remedy: 'Both are counted. Name the day as a clock change if it is one; else take the second out.',
  },
  {
    code: 'energy/interval-out-of-order',
    when: 'a half hour stands after a later one',
    make: day((rows) => rows.splice(9, 0, ...rows.splice(4, 1))),
    isAmongOthers: true,
    at: 'intervals.9',
    found: '1 interval after a later one: 2025-10-26 02:00',
    expected: 'intervals in order of time',
    remedy: 'Put them in order.',
  },
  {
    code: 'energy/interval-off-grid',
    when: 'every start is five minutes late',
    make: day((rows) => {
      rows.forEach((row, at) => (rows[at] = { ...row, start: row.start + 5 }));
      rows.pop();
    }),
    isAmongOthers: true,
    at: 'intervals.0',
    found: '47 intervals off the grid, the first at 2025-10-26 00:05, the last at 2025-10-26 23:05',
    expected: 'starts on multiples of 30 minutes from the full hour',
    remedy: 'Correct the starts, or the length of the intervals.',
  },
  {
    code: 'energy/interval-straddles',
    when: 'an interval goes past the end of the period',
    make: day((rows) => rows.splice(47, 1, { start: FIRST + 1415, import: 100, export: 50 })),
    isAmongOthers: true,
    at: 'intervals.47',
    found:
      'the interval of 30 minutes at 2025-10-26 23:35, across the edge of the period at 2025-10-27 00:00',
    expected: 'intervals that lie in one period',
    remedy: 'Correct the start: nothing says which part of the interval lies in which period.',
  },
  {
    code: 'energy/interval-not-whole',
    when: 'two values have decimals',
    make: day((rows) => {
      rows[3] = { start: FIRST + 90, import: 0.25, export: 50 };
      rows[6] = { start: FIRST + 180, import: 0.5, export: 50 };
    }),
    at: 'intervals.3.import',
    found:
      '2 intervals with no whole watt-hours of import, the first at 2025-10-26 01:30, ' +
      'the last at 2025-10-26 03:00 (0.25)',
    ...WHOLE,
  },
  {
    code: 'energy/interval-not-whole',
    when: 'a value is not there',
    make: day((rows) => (rows[3] = { start: FIRST + 90, import: 100 })),
    at: 'intervals.3.export',
    found: '1 interval with no whole watt-hours of export: 2025-10-26 01:30 (no number)',
    ...WHOLE,
  },
  {
    code: 'energy/interval-too-large',
    when: 'a sum is past what a double holds',
    make: day((rows) => (rows[3] = { start: FIRST + 90, import: 9_007_199_254_740_991, export: 50 })),
    at: 'intervals',
    found: 'a sum of import that is too large to be exact',
    expected: 'at most 9,007,199,254,740,991 Wh in a period',
    remedy: 'Check the unit of the values.',
  },
  {
    code: 'energy/interval-splits-block',
    when: 'a block begins inside an interval',
    make: day(
      asIs,
      withCalendar([
        { ...NIGHT, to: '06:15' },
        { ...DAY, from: '06:15' },
      ]),
    ),
    at: 'intervals',
    found: 'the interval of 30 minutes at 2025-10-26 06:00, which lies in "night" and "day"',
    expected: 'intervals that lie in one time block',
    remedy: 'Use intervals as short as the tariff changes its block, or correct the times of the blocks.',
  },
  {
    code: 'energy/interval-window-in-two-blocks',
    when: 'a block begins inside an hour that is netted',
    make: day(asIs, {
      ...netted({ within: 'hour' }),
      ...withCalendar([
        { ...NIGHT, to: '06:30' },
        { ...DAY, from: '06:30' },
      ]),
    }),
    at: 'intervals',
    found: '"net" nets the hour from 2025-10-26 06:00, which lies in "night" and "day"',
    ...IN_ONE_BLOCK,
  },
  {
    code: 'energy/interval-window-in-two-blocks',
    when: 'days are netted that have a night',
    make: day(asIs, netted({ within: 'day' })),
    at: 'intervals',
    found: '"net" nets the day 2025-10-26, which lies in "night" and "day"',
    ...IN_ONE_BLOCK,
  },
  {
    code: 'energy/interval-window-in-two-blocks',
    when: 'hours of the day are netted that reach into the night',
    make: day(asIs, netted({ within: 'day-hours', from: '10:00', to: '22:30' })),
    at: 'intervals',
    found: '"net" nets 10:00 to 22:30 on 2025-10-26, which lies in "day" and "night"',
    ...IN_ONE_BLOCK,
  },
  {
    code: 'energy/interval-splits-window',
    when: 'hours that are netted cut an interval',
    make: day(asIs, netted({ within: 'day-hours', from: '10:00', to: '15:45' })),
    at: 'intervals',
    found: '"net" nets from 10:00 to 15:45, in intervals of 30 minutes',
    expected: 'hours that begin and end with an interval',
    remedy: 'Use shorter intervals, or correct the hours.',
  },
  {
    code: 'energy/interval-no-channel',
    when: 'export is netted and not metered',
    make: day(
      (rows) => {
        rows.forEach(({ start }, at) => (rows[at] = { start, import: 100 }));
      },
      netted({ within: 'interval' }),
    ),
    at: 'intervals',
    found: '"net" nets export, which the intervals do not have',
    expected: 'intervals with export',
    remedy: 'Add the values, or use a tariff that does not need them.',
  },
  {
    code: 'energy/interval-holidays-unknown',
    when: 'the holidays of the year are not listed',
    make: day(
      asIs,
      withCalendar(
        [
          { ...NIGHT, days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] },
          { ...NIGHT, days: ['holiday'] },
          DAY,
        ],
        { holidays: { clause: 'TO-2024 cl. 8', days: ['2024-01-01'] } },
      ),
    ),
    severity: 'question',
    at: 'intervals',
    found: 'no holiday of 2025 in the tariff, which has blocks of its own for holidays',
    expected: 'the holidays of every year that is billed',
    remedy: 'Add them to the tariff. Without them every day is its weekday.',
  },
];

/** Everything that can be said of time blocks and of interval data. */
export const TIME_BLOCK_CASES: readonly MessageCase[] = [...CALENDAR_CASES, ...INTERVAL_CASES];
