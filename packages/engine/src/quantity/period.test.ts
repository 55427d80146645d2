import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysInMonth, parseDay, type DayNumber } from './day.ts';
import { monthParts, periodDays, type Period } from './period.ts';

function periodOf(from: string, to: string): Period {
  return { from: parseDay(from) as DayNumber, to: parseDay(to) as DayNumber };
}

describe('billing periods', () => {
  it.each([
    ['2025-01-15', '2025-02-14', 30],
    ['2024-02-15', '2024-03-15', 29],
    ['2025-02-15', '2025-03-15', 28],
    ['2025-01-15', '2025-01-15', 0],
    ['2025-03-15', '2025-03-01', -14],
  ])('count the days from %s to %s as %i', (from, to, days) => {
    expect(periodDays(periodOf(from, to))).toBe(days);
  });

  it('give the settlement years from 1 April 365 or 366 days', () => {
    const years = [2022, 2023, 2024, 2025, 2026, 2027];
    expect(
      years.map((year) => periodDays(periodOf(`${String(year)}-04-01`, `${String(year + 1)}-04-01`))),
    ).toEqual([365, 366, 365, 365, 365, 366]);
  });
});

describe('the months of a period', () => {
  it('are cut at the first of each month', () => {
    expect(monthParts(periodOf('2025-01-21', '2025-03-02'))).toEqual([
      { year: 2025, month: 1, days: 11, length: 31 },
      { year: 2025, month: 2, days: 28, length: 28 },
      { year: 2025, month: 3, days: 1, length: 31 },
    ]);
  });

  it('do not hold the month that begins on the last day, which belongs to the next period', () => {
    expect(monthParts(periodOf('2024-02-01', '2024-03-01'))).toEqual([
      { year: 2024, month: 2, days: 29, length: 29 },
    ]);
  });

  it('go on from December to January', () => {
    expect(monthParts(periodOf('2024-12-31', '2025-01-02'))).toEqual([
      { year: 2024, month: 12, days: 1, length: 31 },
      { year: 2025, month: 1, days: 1, length: 31 },
    ]);
  });

  it('are none in a period without days', () => {
    expect(monthParts(periodOf('2025-01-21', '2025-01-21'))).toEqual([]);
  });

  it('have days that sum to those of the period, each within its month', () => {
    const start = parseDay('1999-01-01') as DayNumber;
    fc.assert(
      fc.property(fc.nat(20_000), fc.nat(800), (offset, days) => {
        const from = addDays(start, offset);
        const parts = monthParts({ from, to: addDays(from, days) });
        expect(parts.reduce((sum, part) => sum + part.days, 0)).toBe(days);
        for (const { year, month, length, days: own } of parts) {
          expect(length).toBe(daysInMonth(year, month));
          expect(own > 0 && own <= length).toBe(true);
        }
        for (const part of parts.slice(1, -1)) expect(part.days).toBe(part.length);
      }),
    );
  });
});
