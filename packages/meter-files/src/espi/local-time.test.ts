import { tzOffset } from '@date-fns/tz';
import { calendarDay, dayNumber, dayText, type DayNumber } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { dstRule } from './dst-rule.ts';
import { clockChangeDays, localMinute, type LocalTimeParameters } from './local-time.ts';

function parameters(offset: number, dstOffset: number, start: string, end: string): LocalTimeParameters {
  const rules = [dstRule(start), dstRule(end)].map((rule) => (rule === 'none' ? null : rule));
  return { offset, dstOffset, dstStart: rules[0] ?? null, dstEnd: rules[1] ?? null };
}

/**
 * Zones of the IANA time zone database, as Node has it, and the rules that they have had in these years,
 * written as bits by hand: month, operator, day of the month, day of the week, hour, second.
 */
const ZONES: readonly (readonly [zone: string, LocalTimeParameters])[] = [
  // Second Sunday of March, 2:00, to first Sunday of November, 2:00.
  ['America/Los_Angeles', parameters(-480, 60, '360E2000', 'B40E2000')],
  // The same, half an hour off.
  ['America/St_Johns', parameters(-210, 60, '360E2000', 'B40E2000')],
  // Last Sunday of March, 2:00, to last Sunday of October, 3:00.
  ['Europe/Berlin', parameters(60, 60, '3E0E2000', 'AE0E3000')],
  // South of the equator: first Sunday of October, 2:00, to first Sunday of April, 3:00.
  ['Australia/Adelaide', parameters(570, 60, 'A40E2000', '440E3000')],
  // The same, and the clock is changed by half an hour: to 2:00 of the clock put forward.
  ['Australia/Lord_Howe', parameters(630, 30, 'A40E2000', '440E2000')],
  // Last Sunday of September, 2:45, to first Sunday of April, 3:45; a quarter of an hour off.
  ['Pacific/Chatham', parameters(765, 60, '9E0E2A8C', '440E3A8C')],
  ['Asia/Kolkata', parameters(330, 0, 'FFFFFFFF', 'FFFFFFFF')],
];

/** From 2012 to 2030: the rules above have not changed in these years. */
const FIRST = dayNumber({ year: 2012, month: 1, day: 1 });
const LAST = dayNumber({ year: 2031, month: 1, day: 1 });

describe.each(ZONES)('local time of %s', (zone, local) => {
  const byZone = (minute: number): number => minute + tzOffset(zone, new Date(minute * 60_000));

  it('is that of the zone every 6 hours and a quarter', () => {
    const differing: number[] = [];
    for (let minute = FIRST * 1440; minute < LAST * 1440; minute += 6 * 60 + 15)
      if (localMinute(local, minute) !== byZone(minute)) differing.push(minute);
    expect(differing).toEqual([]);
  });

  it('changes in the same minute as in the zone', () => {
    const changes: number[] = [];
    const offset = (minute: number): number => localMinute(local, minute) - minute;
    for (let day: number = FIRST; day < LAST; day += 1) {
      if (offset(day * 1440) === offset(day * 1440 + 1440)) continue;
      for (let minute = day * 1440; minute < day * 1440 + 1440; minute += 1)
        if (offset(minute) !== offset(minute + 1)) changes.push(minute);
    }
    expect(changes.length).toBe(local.dstStart === null ? 0 : 2 * 19);
    const steps = changes.flatMap((minute) => [minute, minute + 1]);
    expect(steps.map((minute) => localMinute(local, minute))).toEqual(steps.map(byZone));
  });

  it('is changed on the days on which the zone has no 24 hours', () => {
    const odd: string[] = [];
    const [from, to] = [
      dayNumber({ year: 2023, month: 1, day: 1 }),
      dayNumber({ year: 2025, month: 1, day: 1 }),
    ];
    for (let day: number = from; day < to; day += 1) {
      // Quarters of an hour of UTC from before this day to after it, and how many of them fall on it.
      const start = day * 1440 - local.offset - local.dstOffset - 60;
      const minutes = Array.from({ length: 1440 / 15 + 16 }, (_, at) => byZone(start + at * 15));
      const onDay = minutes.filter((minute) => Math.floor(minute / 1440) === day).length;
      if (onDay !== 96) odd.push(dayText(day as DayNumber));
    }
    expect(clockChangeDays(local, 2023, 2024).map(dayText)).toEqual(odd);
  });
});

describe('the days of clock changes', () => {
  const [, california] = ZONES[0] ?? [];

  it('are those of the years asked for, first and last counted', () => {
    if (california === undefined) throw new Error('no zone');
    expect(clockChangeDays(california, 2012, 2012).map((day) => calendarDay(day).year)).toEqual([2012, 2012]);
    expect(clockChangeDays(california, 2013, 2012)).toEqual([]);
  });
});
