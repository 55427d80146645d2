import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { clockDay, clockMinute, telegramTime, writtenDay } from './moment.ts';

function timeText(text: string): string | null {
  const time = telegramTime(text);
  return time === null ? null : `${dayText(time.day)} ${String(time.minute)}`;
}

const days = (typed: ReturnType<typeof clockDay>): readonly (string | null)[] | null =>
  typed === null ? null : [typed.day, typed.other].map((day) => (day === null ? null : dayText(day)));

describe('the time of a telegram', () => {
  it.each([
    ['161113205757W', '2016-11-13 1257'],
    ['230724150730S', '2023-07-24 907'],
    ['240229000000W', '2024-02-29 0'],
    ['251231235959W', '2025-12-31 1439'],
  ])('%s is %s', (text, expected) => {
    expect(timeText(text)).toBe(expected);
  });

  it.each([
    ['161313205757W'],
    ['161100205757W'],
    ['230229000000W'],
    ['161131205757W'],
    ['161113240000W'],
    ['161113236000W'],
    ['161113235960W'],
    ['161113205757'],
    ['161113205757X'],
    ['161113205757w'],
    ['16111320575W'],
    ['1611132057577W'],
    [''],
  ])('%j is none', (text) => {
    expect(telegramTime(text)).toBeNull();
  });

  it('goes on through the hour that comes twice', () => {
    const summer = telegramTime('241027025959S')?.second ?? 0;
    const winter = telegramTime('241027020000W')?.second ?? 0;
    expect(winter - summer).toBe(1);
  });
});

describe('the clock of a meter', () => {
  it.each([
    ['183059', 1110],
    ['0183059', 1110],
    ['1183059', 1110],
    ['1830', 1110],
    ['18:30', 1110],
    ['18:30:59', 1110],
    ['7:05', 425],
    ['000000', 0],
    ['235959', 1439],
    ['240000', null],
    ['236000', null],
    ['235960', null],
    ['2183059', null],
    ['18', null],
    ['', null],
  ])('%j is the minute %j', (text, minute) => {
    expect(clockMinute(text)).toBe(minute);
  });

  it.each([
    ['250501', ['2025-05-01', null]],
    ['0250501', ['2025-05-01', null]],
    ['1250501', ['2025-05-01', null]],
    ['20250501', ['2025-05-01', null]],
    ['2025-05-01', ['2025-05-01', null]],
    ['240229', ['2024-02-29', null]],
    // 25 May 2001 is older than such meters.
    ['25-05-01', ['2025-05-01', null]],
    ['01-05-25', ['2025-05-01', null]],
    ['10-05-25', ['2010-05-25', '2025-05-10']],
    ['09-05-25', ['2025-05-09', null]],
    ['25.05.13', ['2025-05-13', '2013-05-25']],
    ['13-05-25', ['2013-05-25', '2025-05-13']],
    ['31-05-40', ['2040-05-31', null]],
    ['05-05-05', ['2005-05-05', null]],
    ['1 May 2025', ['2025-05-01', null]],
    ['250229', null],
    ['251301', null],
    ['250500', null],
    ['32-05-40', null],
    ['', null],
  ])('%j is the day %j', (text, expected) => {
    expect(days(clockDay(text))).toEqual(expected);
  });
});

describe('a day that a person writes', () => {
  it.each([
    ['2025-05-01', ['2025-05-01', null]],
    ['2025/05/01', ['2025-05-01', null]],
    ['2025.05.01', ['2025-05-01', null]],
    ['1 May 2025', ['2025-05-01', null]],
    ['13.5.2025', ['2025-05-13', null]],
    ['13/05/25', ['2025-05-13', null]],
    ['1/5/2025', ['2025-05-01', '2025-01-05']],
    ['1/1/1990', ['1990-01-01', null]],
    ['31/12/2099', ['2099-12-31', null]],
    ['31/12/1989', null],
    ['1/1/2100', null],
    // A code and a number are no day.
    ['1.8 4342', null],
    ['1.8 2025', null],
    ['1 8 2025', null],
    ['1.8-2025', null],
    ['4342.1', null],
    ['May 2025', null],
    ['', null],
  ])('%j is %j', (text, expected) => {
    expect(days(writtenDay(text))).toEqual(expected);
  });
});
