import { isValid, millisecondsToHours, parseISO } from 'date-fns';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  daysInMonth,
  isLeapYear,
  parseDay,
  type DayNumber,
} from './day.ts';

const two = (value: number): string => value.toString().padStart(2, '0');

/** Every text yyyy-mm-dd with days 1 to 31, whether there is such a day or not. */
function* textsOf(year: number): Generator<string> {
  for (let month = 1; month <= 12; month += 1) {
    for (let day = 1; day <= 31; day += 1) yield `${String(year)}-${two(month)}-${two(day)}`;
  }
}

/** The day by date-fns, counted at midnight in Greenwich, whatever zone the test runs in. */
function twin(text: string): number | null {
  const date = parseISO(`${text}T00:00:00Z`);
  return isValid(date) ? millisecondsToHours(date.getTime()) / 24 : null;
}

describe('day numbers', () => {
  it('agree with date-fns on every day from 1900 to 2100, and on the days that do not exist', () => {
    const different: string[] = [];
    for (let year = 1900; year <= 2100; year += 1) {
      for (const text of textsOf(year)) if (parseDay(text) !== twin(text)) different.push(text);
    }
    expect(different).toEqual([]);
  });

  it('print every day from 1900 to 2100 as it was read', () => {
    const different: string[] = [];
    for (let year = 1900; year <= 2100; year += 1) {
      for (const text of textsOf(year)) {
        const day = parseDay(text);
        if (day !== null && dayText(day) !== text) different.push(text);
      }
    }
    expect(different).toEqual([]);
  });

  it('count from 1 January 1970', () => {
    expect(parseDay('1970-01-01')).toBe(0);
    expect(parseDay('1969-12-31')).toBe(-1);
    // Spreadsheet serials count from 1899-12-30: 39448 is 1 January 2008, 43101 is 1 January 2018.
    const serial = (text: string): number => (parseDay(text) ?? 0) - (parseDay('1899-12-30') ?? 0);
    expect([serial('2008-01-01'), serial('2018-01-01')]).toEqual([39448, 43101]);
  });

  it('follow one another over 400 years, month by month', () => {
    let expected: DayNumber = dayNumber({ year: 2000, month: 1, day: 1 });
    for (let year = 2000; year < 2400; year += 1) {
      for (let month = 1; month <= 12; month += 1) {
        expect(dayNumber({ year, month, day: 1 })).toBe(expected);
        expect(calendarDay(expected)).toEqual({ year, month, day: 1 });
        expected = addDays(expected, daysInMonth(year, month));
      }
    }
  });

  it('go forward and back over 29 February', () => {
    const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
    expect(dayText(addDays(day('2024-02-28'), 1))).toBe('2024-02-29');
    expect(dayText(addDays(day('2025-02-28'), 1))).toBe('2025-03-01');
    expect(dayText(addDays(day('2024-03-01'), -1))).toBe('2024-02-29');
    expect(dayText(addDays(day('2000-01-01'), -1))).toBe('1999-12-31');
  });

  it.each([
    '',
    '2025-2-01',
    '2025-02-1',
    '25-02-01',
    '2025/02/01',
    '2025-02-01 ',
    '2025-00-10',
    '2025-13-10',
    '2025-04-00',
    '2025-04-31',
    '2025-02-29',
    '1900-02-29',
    '२०२५-०२-०१',
    '202x-02-01',
    '2025-0a-01',
  ])('refuse "%s"', (text) => {
    expect(parseDay(text)).toBeNull();
  });

  it('take the first and the last day of four digits', () => {
    expect(dayText(parseDay('0001-01-01') ?? (1 as DayNumber))).toBe('0001-01-01');
    expect(dayText(parseDay('9999-12-31') ?? (1 as DayNumber))).toBe('9999-12-31');
  });
});

describe('the Gregorian calendar', () => {
  it('has leap years as ISO 8601 counts them', () => {
    const years = [1900, 2000, 2004, 2023, 2024, 2100, 2400];
    expect(years.map(isLeapYear)).toEqual([false, true, true, false, true, false, true]);
  });

  it('has months of 28 to 31 days', () => {
    const months = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
    expect(months.map((month) => daysInMonth(2025, month))).toEqual([
      31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31,
    ]);
    expect([1900, 2000, 2100, 2400].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 28, 29]);
  });
});
