import { dayText, type DayNumber } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import type { DateOrder } from './date-text.ts';
import { MomentCell, splitMoment } from './moment-cell.ts';
import { readClockTime } from './time-text.ts';

const [YMD, DMY, MDY] = ['year-month-day', 'day-month-year', 'month-day-year'] as const;

/** A moment as "2025-05-01 15 60": the day, the minute and the offset, as far as there are any. */
function momentOf(text: string, order: DateOrder): string {
  const cell = new MomentCell(order);
  const fault = cell.readBoth(text);
  if (fault !== null) return fault;
  const rest = [cell.minute, cell.offset].filter((one) => one !== null);
  return [dayText(cell.day as DayNumber), ...rest, ...(cell.hasSeconds ? ['s'] : [])].join(' ');
}

describe('a date with its time', () => {
  it.each([
    ['2025-05-01', YMD, '2025-05-01'],
    ['2025-05-01 00:15', YMD, '2025-05-01 15'],
    ['2025-05-01T00:15:00', YMD, '2025-05-01 15'],
    ['2025-05-01T00:15:00.000Z', YMD, '2025-05-01 15 0'],
    ['2025-05-01T00:15:00+05:30', YMD, '2025-05-01 15 330'],
    ['2025-05-01T00:15-0330', YMD, '2025-05-01 15 -210'],
    ['2025-05-01 00:15 +02', YMD, '2025-05-01 15 120'],
    ['2025-05-01 00:15 UTC', YMD, '2025-05-01 15 0'],
    ['2025-05-01 00:15:07', YMD, '2025-05-01 15 s'],
    ['2025-05-01 00:15:00.5', YMD, '2025-05-01 15 s'],
    ['2025/5/1 0:15', YMD, '2025-05-01 15'],
    ['20250501', YMD, '2025-05-01'],
    ['202505010015', YMD, '2025-05-01 15'],
    ['20250501001500', YMD, '2025-05-01 15'],
    ['20250501T0015Z', YMD, '2025-05-01 15 0'],
    ['20250501 00:15', YMD, '2025-05-01 15'],
    ['1/5/2025 0:15', DMY, '2025-05-01 15'],
    ['01.05.2025 00:15', DMY, '2025-05-01 15'],
    ['1. 5. 2025 24:00', DMY, '2025-05-01 1440'],
    ['01-05-25 00:15', DMY, '2025-05-01 15'],
    ['1 May 2025 12:15 AM', DMY, '2025-05-01 15'],
    ['1st May, 2025', DMY, '2025-05-01'],
    ['01-May-2025 00:15', DMY, '2025-05-01 15'],
    ['5/1/2025, 12:15:00 AM', MDY, '2025-05-01 15'],
    ['5/1/2025 12:15 p.m.', MDY, '2025-05-01 735'],
    ['May 1, 2025 1:00 PM', MDY, '2025-05-01 780'],
    ['May 1 2025', MDY, '2025-05-01'],
    ['29/2/2024', DMY, '2024-02-29'],
    ['1/1/1980', DMY, '1980-01-01'],
    ['31/12/2199', DMY, '2199-12-31'],
  ] as const)('%j (%s) is %s', (text, order, moment) => {
    expect(momentOf(text, order)).toBe(moment);
  });

  it.each([
    ['', YMD],
    ['2025-05-01', DMY],
    ['1/5/2025', YMD],
    ['13/5/2025', MDY],
    ['5/13/2025', DMY],
    ['29/2/2025', DMY],
    ['31/12/1979', DMY],
    ['1/1/2200', DMY],
    ['1/5/025', DMY],
    ['1746057600', YMD],
    ['45778', YMD],
    ['Total', YMD],
    ['0/5/2025', DMY],
    ['20250501', DMY],
    ['1 Mai 2025', DMY],
    ['2025-05', YMD],
  ] as const)('%j (%s) is no date', (text, order) => {
    expect(momentOf(text, order)).toBe('table/bad-date');
  });

  it.each([
    '2025-05-01 24:15',
    '2025-05-01 25:00',
    '2025-05-01 00:60',
    '2025-05-01 0:15 XM',
    '2025-05-01 13:00 PM',
  ])('%j has a bad time', (text) => {
    expect(momentOf(text, YMD)).toBe('table/bad-time');
  });

  it('is not mixed up with the date of the cell before', () => {
    const cell = new MomentCell('day-month-year');
    const read = (text: string): readonly unknown[] => [
      cell.readBoth(text),
      dayText(cell.day as DayNumber),
      cell.minute,
    ];
    expect(read('1/5/2025 0:15')).toEqual([null, '2025-05-01', 15]);
    expect(read('1/5/2025')).toEqual([null, '2025-05-01', null]);
    expect(read('1/5/2025 0:30')).toEqual([null, '2025-05-01', 30]);
    expect(read('11/5/2025 0:30')).toEqual([null, '2025-05-11', 30]);
    expect(read('1/5/20')).toEqual([null, '2020-05-01', null]);
    expect(read('1/5/2025 0:45')).toEqual([null, '2025-05-01', 45]);
    expect(read('1/5/2025 later')[0]).toBe('table/bad-date');
  });

  it('forgets texts of times that do not come again', () => {
    const cell = new MomentCell('year-month-day');
    for (let second = 0; second < 20_000; second += 1)
      expect(
        cell.readBoth(
          `2025-05-01 00:15:${String(second % 60).padStart(2, '0')}.${String(second).padStart(5, '0')}`,
        ),
      ).toBeNull();
    expect(cell.minute).toBe(15);
  });
});

describe('a date alone', () => {
  it.each([
    ['2025-05-01', null],
    ['2025-05-01 00:00:00', null],
    ['2025-05-01T00:00', null],
    ['2025-05-01 00:15', 'table/bad-date'],
    ['2025-05-01T00:00Z', 'table/bad-date'],
    ['', 'table/bad-date'],
  ])('%j', (text, fault) => {
    const cell = new MomentCell('year-month-day');
    expect([cell.readDay(text), cell.minute]).toEqual([fault, null]);
  });
});

describe('a time alone', () => {
  it.each([
    ['00:00', 0],
    ['0:15', 15],
    ['0015', 15],
    ['001500', 15],
    ['23:59', 1439],
    ['24:00', 1440],
    ['2400', 1440],
    ['12:00 AM', 0],
    ['12:00 pm', 720],
    ['12 AM', null],
    ['0:00 AM', null],
    ['24:01', null],
    ['015', null],
    ['15', null],
    ['00:15+15:00', null],
    ['00:15+14:00', 15],
    ['00:15+01:75', null],
  ])('%j is minute %j', (text, minute) => {
    expect(readClockTime(text)?.minute ?? null).toBe(minute);
  });
});

describe('splitMoment', () => {
  it.each([
    ['May 1 2025', ['May 1 2025', '']],
    ['1 5 2025', ['1 5 2025', '']],
    ['2025-05-01T0015', ['2025-05-01', '0015']],
    ['20250501 0015', ['20250501', '0015']],
  ])('%j', (text, parts) => {
    expect(splitMoment(text)).toEqual(parts);
  });
});
