import { safeParse } from 'zod/mini';
import { describe, expect, it } from 'vitest';
import { checkTimeBlocks } from './check-time-blocks.ts';
import { timeBlocksSchema, type TimeBlockEntry, type TimeBlocks } from './time-block-schema.ts';

const NIGHT: TimeBlockEntry = { block: 'night', from: '22:00', to: '06:00' };
const DAY: TimeBlockEntry = { block: 'day', from: '06:00', to: '22:00' };
const WORKDAYS: NonNullable<TimeBlockEntry['days']> = ['mon', 'tue', 'wed', 'thu', 'fri'];

function blocksOf(calendar: TimeBlockEntry[], parts: Partial<TimeBlocks> = {}): TimeBlocks {
  const blocks = [...new Set(calendar.map(({ block }) => block))].map((id) => ({ id, label: id }));
  return { clause: 'T 1', blocks, calendar, ...parts };
}

const found = (calendar: TimeBlockEntry[], parts: Partial<TimeBlocks> = {}): string[] =>
  checkTimeBlocks(blocksOf(calendar, parts)).map((finding) => finding.found);

describe('the schema of time blocks', () => {
  it('takes what the check takes, and refuses other keys, days and forms of time', () => {
    const good = blocksOf([{ ...NIGHT, days: ['holiday'], season: 'warm', clause: 'T 2' }], {
      holidays: { clause: 'T 3', days: ['2025-01-01'] },
    });
    expect(safeParse(timeBlocksSchema, good).success).toBe(true);
    const bad: unknown[] = [
      { ...good, calendar: [{ ...NIGHT, days: [] }] },
      { ...good, calendar: [{ ...NIGHT, days: ['monday'] }] },
      { ...good, calendar: [{ ...NIGHT, from: '6:00' }] },
      { ...good, calendar: [{ ...NIGHT, until: '06:00' }] },
      { ...good, calendar: [] },
      { ...good, blocks: [{ id: 'Night', label: 'Night' }] },
      { ...good, seasons: { warm: { from: '04-01', through: '09-30' } } },
      { ...good, holidays: { days: [] } },
    ];
    expect(bad.map((one) => safeParse(timeBlocksSchema, one).success)).toEqual(bad.map(() => false));
  });
});

describe('time blocks that cover every minute once', () => {
  it.each<[string, TimeBlockEntry[], Partial<TimeBlocks>]>([
    ['one block all day', [{ block: 'all', from: '00:00', to: '24:00' }], {}],
    ['a night past midnight', [NIGHT, DAY], {}],
    [
      'a night that ends at midnight, and early hours',
      [{ ...NIGHT, to: '00:00' }, { block: 'early', from: '00:00', to: '06:00' }, DAY],
      {},
    ],
    [
      'other days of the week, with holidays as Sundays',
      [
        { ...NIGHT, days: WORKDAYS },
        { ...DAY, days: WORKDAYS },
        { block: 'low', from: '00:00', to: '24:00', days: ['sat', 'sun', 'holiday'] },
      ],
      { holidays: { clause: 'T 3', days: ['2025-01-01'] } },
    ],
    [
      'two seasons, one past the end of the year, the other with 29 February between them left out',
      [NIGHT, { ...DAY, season: 'warm' }, { ...DAY, block: 'peak', season: 'cool' }],
      { seasons: { warm: { from: '03-01', through: '09-30' }, cool: { from: '10-01', through: '02-29' } } },
    ],
    [
      'seasons that overlap where no two entries apply',
      [
        { ...NIGHT, season: 'year' },
        { ...DAY, season: 'warm' },
        { ...DAY, season: 'cool' },
      ],
      {
        seasons: {
          year: { from: '01-01', through: '12-31' },
          warm: { from: '03-01', through: '09-30' },
          cool: { from: '10-01', through: '02-29' },
        },
      },
    ],
    [
      'holidays that are listed and never named: they are their weekdays',
      [NIGHT, DAY],
      { holidays: { clause: 'T 3', days: ['2025-01-01'] } },
    ],
  ])('have no findings: %s', (_, calendar, parts) => {
    expect(found(calendar, parts)).toEqual([]);
  });
});

describe('gaps and overlaps', () => {
  it('are told to the minute', () => {
    expect(found([{ ...NIGHT, from: '22:01' }, DAY])).toEqual([
      'no block applies from 22:00 to 22:01 on every day',
    ]);
    expect(found([{ ...NIGHT, to: '06:01' }, DAY])).toEqual([
      'two blocks apply from 06:00 to 06:01 on every day: "night" and "day"',
    ]);
  });

  it('are told by the days they stand on', () => {
    expect(found([{ ...NIGHT, days: WORKDAYS }, DAY])).toEqual([
      'no block applies from 22:00 to 06:00 on sat, sun',
    ]);
    // An entry without days applies on holidays, too.
    expect(
      found([NIGHT, DAY, { block: 'low', from: '00:00', to: '24:00', days: ['holiday'] }], {
        holidays: { clause: 'T 3', days: ['2025-01-01'] },
      }),
    ).toEqual([
      'two blocks apply from 06:00 to 22:00 on holiday: "day" and "low"',
      'two blocks apply from 22:00 to 06:00 on holiday: "night" and "low"',
    ]);
    // Once any entry names holidays, entries for weekdays do not apply on them.
    expect(
      found(
        [NIGHT, { ...DAY, days: [...WORKDAYS, 'sat', 'sun'] }, { ...DAY, to: '12:00', days: ['holiday'] }],
        {
          holidays: { clause: 'T 3', days: ['2025-01-01'] },
        },
      ),
    ).toEqual(['no block applies from 12:00 to 22:00 on holiday']);
  });

  it('are told by the part of the year, a part in two runs as two', () => {
    const seasons = { warm: { from: '04-01', through: '06-30' }, dry: { from: '10-01', through: '12-31' } };
    expect(
      found([NIGHT, { ...DAY, season: 'warm' }, { ...DAY, block: 'peak', season: 'dry' }], { seasons }),
    ).toEqual([
      'no block applies from 06:00 to 22:00 on every day, 01-01 through 03-31 and 07-01 through 09-30',
    ]);
  });

  it('of three entries name all of them', () => {
    expect(
      found([
        NIGHT,
        DAY,
        { ...DAY, block: 'noon', from: '12:00', to: '13:00' },
        { ...DAY, block: 'peak', from: '12:30', to: '14:00' },
      ]),
    ).toEqual([
      'two blocks apply from 12:00 to 12:30 on every day: "day" and "noon"',
      'two blocks apply from 12:30 to 13:00 on every day: "day" and "noon" and "peak"',
      'two blocks apply from 13:00 to 14:00 on every day: "day" and "peak"',
    ]);
  });

  it('of a day on which a block is missing outright are told once', () => {
    expect(found([{ block: 'all', from: '00:00', to: '24:00', days: WORKDAYS }])).toEqual([
      'no block applies from 00:00 to 24:00 on sat, sun',
    ]);
  });

  it('are looked for only where times, days and seasons are right', () => {
    const codes = checkTimeBlocks(
      blocksOf([
        { ...NIGHT, from: '25:00' },
        { ...DAY, season: 'warm' },
      ]),
    ).map(({ code }) => code);
    expect(codes).toEqual(['tariff/block-no-such-time', 'tariff/block-unknown-season']);
  });
});
