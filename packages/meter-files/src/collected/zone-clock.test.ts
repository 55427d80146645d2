import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { dayOf, minuteOf } from '../../../../tests/support/meter-chunks.ts';
import { minuteText } from './texts.ts';
import { isZone, zoneClock } from './zone-clock.ts';

const yearOf = (zone: string, year: string) =>
  zoneClock(zone, minuteOf(`${year}-01-01`), minuteOf(`${year}-12-31 23:59`));

describe('isZone', () => {
  it.each([
    'Europe/Amsterdam',
    'America/Argentina/Buenos_Aires',
    'UTC',
    'EST5EDT',
    'Etc/GMT-14',
    'Etc/GMT+12',
  ])('knows %s', (name) => {
    expect(isZone(name)).toBe(true);
  });

  it.each([
    '',
    '+05:30',
    'UTC+1',
    'Etc/GMT+13',
    'Etc/GMT-15',
    'Europe/Nowhere',
    'Town-02',
    'constructor',
    'a b',
  ])('knows no %j', (name) => {
    expect(isZone(name)).toBe(false);
    expect(() => zoneClock(name, 0, 0)).toThrow(RangeError);
  });
});

describe('the changes of a clock', () => {
  // As the IANA time zone database has them (2025), from memory; those of the Union by Directive 2000/84/EC:
  // at 01:00 UTC on the last Sundays of March and October.
  it.each([
    ['Europe/Amsterdam', '2025-03-30', '2025-03-30 01:00', 60, '2025-10-26', '2025-10-26 01:00'],
    // At 02:00 standard time, UTC-3:30, and at 02:00 daylight time, UTC-2:30.
    ['America/St_Johns', '2025-03-09', '2025-03-09 05:30', 60, '2025-11-02', '2025-11-02 04:30'],
  ])('%s: forward on %s, back later', (zone, spring, springUtc, by, autumn, autumnUtc) => {
    const { changes, changeDays, lostDays } = yearOf(zone, '2025');
    expect(changes.map(({ utc, before, after }) => [minuteText(utc), after - before])).toEqual([
      [springUtc, by],
      [autumnUtc, -by],
    ]);
    expect(changeDays.map(dayText)).toEqual([spring, autumn]);
    expect(lostDays).toEqual([]);
  });

  it.each([
    // At 03:00 daylight time, UTC+10:30, and at 02:00 standard time, UTC+9:30.
    ['Australia/Adelaide', '2025-04-06', '2025-04-05 16:30', 60, '2025-10-05', '2025-10-04 16:30'],
    // At 02:00 daylight time, UTC+11, and at 02:00 standard time, UTC+10:30.
    ['Australia/Lord_Howe', '2025-04-06', '2025-04-05 15:00', 30, '2025-10-05', '2025-10-04 15:30'],
  ])('%s: back on %s, forward later', (zone, autumn, autumnUtc, by, spring, springUtc) => {
    const { changes, changeDays } = yearOf(zone, '2025');
    expect(changes.map(({ utc, before, after }) => [minuteText(utc), after - before])).toEqual([
      [autumnUtc, -by],
      [springUtc, by],
    ]);
    expect(changeDays.map(dayText)).toEqual([autumn, spring]);
  });

  it('are none where there is no daylight saving', () => {
    expect(yearOf('Asia/Kolkata', '2025').changes).toEqual([]);
  });

  it('lie on the day that is longer or shorter where clocks change at midnight', () => {
    // Brazil: forward on 4 November 2018 at 00:00, back on 17 February 2019 at 00:00 to 23:00 of the 16th.
    const { changeDays } = zoneClock('America/Sao_Paulo', minuteOf('2018-10-01'), minuteOf('2019-04-01'));
    expect(changeDays.map(dayText)).toEqual(['2018-11-04', '2019-02-16']);
  });

  it('can leave out a day', () => {
    // Samoa went over the date line at the end of 29 December 2011: from UTC-10 to UTC+14.
    const clock = zoneClock('Pacific/Apia', minuteOf('2011-12-01'), minuteOf('2012-01-31'));
    expect(clock.changes.map(({ utc, before, after }) => [minuteText(utc), before, after])).toEqual([
      ['2011-12-30 10:00', -600, 840],
    ]);
    expect(clock.lostDays.map(dayText)).toEqual(['2011-12-30']);
    expect(clock.changeDays.map(dayText)).toEqual(['2011-12-30']);
    const starts = ['2011-12-29', '2011-12-30', '2011-12-31'].map((day) =>
      minuteText(clock.dayStart(dayOf(day))),
    );
    expect(starts).toEqual(['2011-12-29 10:00', '2011-12-30 10:00', '2011-12-30 10:00']);
  });

  it('are found where the stretch begins and ends beside one', () => {
    const change = minuteOf('2025-03-30 01:00');
    expect(zoneClock('Europe/Amsterdam', change - 1, change).changes).toHaveLength(1);
    expect(zoneClock('Europe/Amsterdam', change, change).changes).toEqual([]);
    expect(zoneClock('Europe/Amsterdam', change - 9, change - 1).changes).toEqual([]);
  });
});

describe('the local clock', () => {
  it('goes on at a change, in whatever order it is asked', () => {
    const { toLocal } = yearOf('Europe/Amsterdam', '2025');
    const asked = [
      '2025-10-26 00:59',
      '2025-10-26 01:00',
      '2025-03-30 00:59',
      '2025-03-30 01:00',
      '2025-07-01',
    ];
    expect(asked.map((time) => minuteText(toLocal(minuteOf(time))))).toEqual([
      '2025-10-26 02:59',
      '2025-10-26 02:00',
      '2025-03-30 01:59',
      '2025-03-30 03:00',
      '2025-07-01 02:00',
    ]);
  });

  it('begins days that have 23, 24 and 25 hours', () => {
    const { dayStart } = yearOf('Europe/Amsterdam', '2025');
    const hours = (text: string): number => {
      const day = dayOf(text);
      return (dayStart((day + 1) as typeof day) - dayStart(day)) / 60;
    };
    expect(['2025-03-29', '2025-03-30', '2025-03-31', '2025-10-26'].map(hours)).toEqual([24, 23, 24, 25]);
  });

  it('begins a day after its midnight has come for the last time', () => {
    const { dayStart } = zoneClock('America/Sao_Paulo', minuteOf('2018-10-01'), minuteOf('2019-04-01'));
    // UTC-2 in summer: 16 February begins at 02:00 UTC, has 25 hours, and 17 February begins at 03:00 UTC.
    expect(['2019-02-16', '2019-02-17'].map((day) => minuteText(dayStart(dayOf(day))))).toEqual([
      '2019-02-16 02:00',
      '2019-02-17 03:00',
    ]);
    // Forward at midnight: the day begins at 01:00 by its own clock, 03:00 UTC.
    expect(minuteText(dayStart(dayOf('2018-11-04')))).toBe('2018-11-04 03:00');
  });

  it.each([
    [0.5, 1],
    [2, 1],
    [0, NaN],
  ])('has no stretch from %d to %d', (from, to) => {
    expect(() => zoneClock('UTC', from, to)).toThrow(RangeError);
  });
});
