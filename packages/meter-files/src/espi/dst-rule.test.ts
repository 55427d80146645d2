import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { dstRule, ruleDay, ruleMinute, type DstRule } from './dst-rule.ts';

const rule = (parts: Partial<DstRule>): DstRule => ({
  month: 3,
  operator: 0,
  dayOfMonth: 0,
  dayOfWeek: 0,
  hour: 0,
  second: 0,
  ...parts,
});

describe('a rule of daylight saving', () => {
  it('is decoded as the schema shows it', () => {
    // The example of DstRuleType in the ESPI schema: third Friday of March at 1:45. Its bits, by hand:
    // 0011 100 00000 101 00001 101010001100 = 380A1A8C.
    const fields = { month: 3, operator: 4, dayOfMonth: 0, dayOfWeek: 5, hour: 1, second: 2700 };
    expect(dstRule('380A1A8C')).toEqual(fields);
    // In 2012 the first Friday of March was the 2nd.
    expect(dayText(ruleDay(fields, 2012))).toBe('2012-03-16');
    expect(ruleMinute(fields, 2012) - ruleDay(fields, 2012) * 1440).toBe(105);
  });

  it('can be written in small letters', () => {
    expect(dstRule('380a1a8c')).toEqual(dstRule('380A1A8C'));
  });

  it('can be turned off', () => {
    expect([dstRule('FFFFFFFF'), dstRule('ffffffff')]).toEqual(['none', 'none']);
  });

  it.each([
    ['00000000', 'no month'],
    ['D60E2000', 'month 13'],
    ['36018000', 'hour 24'],
    ['360E2E10', 'second 3600'],
    ['36002000', 'no day of the week'],
    ['30002000', 'no day of the month'],
    ['21E00000', '30 February'],
    ['320E0000', 'a weekday on or after no day'],
    ['360E200', '7 digits'],
    ['360E20000', '9 digits'],
    ['360E200G', 'no hexadecimal digit'],
    ['', 'nothing'],
  ])('%j is none: %s', (hex) => {
    expect(dstRule(hex)).toBe(null);
  });

  it.each([
    // The calendar of March 2024: the 1st was a Friday, the 31st a Sunday.
    [rule({ operator: 0, dayOfMonth: 31 }), '2024-03-31', 'a day'],
    [rule({ operator: 1, dayOfMonth: 8, dayOfWeek: 5 }), '2024-03-08', 'Friday on or after the 8th'],
    [rule({ operator: 1, dayOfMonth: 8, dayOfWeek: 7 }), '2024-03-10', 'Sunday on or after the 8th'],
    [rule({ operator: 1, dayOfMonth: 31, dayOfWeek: 1 }), '2024-04-01', 'Monday on or after the 31st'],
    [rule({ operator: 2, dayOfWeek: 5 }), '2024-03-01', 'first Friday'],
    [rule({ operator: 2, dayOfWeek: 4 }), '2024-03-07', 'first Thursday'],
    [rule({ operator: 5, dayOfWeek: 4 }), '2024-03-28', 'fourth Thursday'],
    [rule({ operator: 6, dayOfWeek: 7 }), '2024-03-31', 'fifth Sunday'],
    [rule({ operator: 6, dayOfWeek: 4 }), '2024-03-28', 'fifth Thursday, which there is not'],
    [rule({ operator: 7, dayOfWeek: 7 }), '2024-03-31', 'last Sunday'],
    [rule({ operator: 7, dayOfWeek: 1 }), '2024-03-25', 'last Monday'],
    [rule({ operator: 0, month: 2, dayOfMonth: 29 }), '2024-02-29', '29 February'],
  ])('%j is %s: %s', (parts, day) => {
    expect(dayText(ruleDay(parts, 2024))).toBe(day);
  });

  it('of 29 February is the last day of the month in other years', () => {
    expect(dayText(ruleDay(rule({ month: 2, dayOfMonth: 29 }), 2023))).toBe('2023-02-28');
  });

  it('is in force from the first whole minute', () => {
    const minute = (second: number) => {
      const parts = rule({ dayOfMonth: 1, hour: 23, second });
      return ruleMinute(parts, 2024) - ruleDay(parts, 2024) * 1440;
    };
    expect([minute(0), minute(60), minute(61), minute(3599)]).toEqual([1380, 1381, 1382, 1440]);
  });
});
