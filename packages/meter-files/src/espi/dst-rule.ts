import { addDays, dayNumber, daysInMonth, type DayNumber } from '@unitbook/engine';

/**
 * The moment of a year at which daylight saving begins or ends, on the clock as it runs until then.
 *
 * Bit fields of the type DstRuleType of the ESPI schema (NAESB REQ.21), by the text of the schema as
 * several public repositories reproduce it. That the clock is the one that runs until the change is from
 * memory: it is what makes the rules of the published samples those of their own zones.
 */
export interface DstRule {
  /** 1 to 12. */
  readonly month: number;
  /** 0: the day of the month; 1: the weekday on or after it; 2 to 6: the first to fifth weekday; 7: the last. */
  readonly operator: number;
  /** 1 to 31; 0 where the operator has no use for it. */
  readonly dayOfMonth: number;
  /** 1 (Monday) to 7 (Sunday); 0 where the operator has no use for it. */
  readonly dayOfWeek: number;
  /** 0 to 23. */
  readonly hour: number;
  /** Seconds of the hour, 0 to 3599. */
  readonly second: number;
}

/** The weekday, 1 (Monday) to 7 (Sunday); 1 January 1970 was a Thursday. */
const weekday = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;

const bits = (number: number, from: number, count: number): number => (number >>> from) & ((1 << count) - 1);

function isRule({ month, operator, dayOfMonth, dayOfWeek, hour, second }: DstRule): boolean {
  if (month < 1 || month > 12 || hour > 23 || second > 3599) return false;
  // A leap year: 29 February is a day of the month.
  const isDay = dayOfMonth >= 1 && dayOfMonth <= daysInMonth(2024, month);
  if (operator === 0) return isDay;
  return dayOfWeek >= 1 && (operator > 1 || isDay);
}

/**
 * Decode a rule of `LocalTimeParameters`: 8 hexadecimal digits.
 *
 * @returns the rule; 'none' for FFFFFFFF, which turns daylight saving off; null when it is no rule
 * @example
 * dstRule('360E2000') //=> {"month":3,"operator":3,"dayOfMonth":0,"dayOfWeek":7,"hour":2,"second":0}
 * dstRule('FFFFFFFF') //=> "none"
 */
export function dstRule(hex: string): DstRule | 'none' | null {
  if (!/^[0-9a-f]{8}$/i.test(hex)) return null;
  if (/^f+$/i.test(hex)) return 'none';
  const number = parseInt(hex, 16);
  const rule: DstRule = {
    month: bits(number, 28, 4),
    operator: bits(number, 25, 3),
    dayOfMonth: bits(number, 20, 5),
    dayOfWeek: bits(number, 17, 3),
    hour: bits(number, 12, 5),
    second: bits(number, 0, 12),
  };
  return isRule(rule) ? rule : null;
}

/** The first day on or after `day` that is such a weekday. */
const onOrAfter = (day: DayNumber, dayOfWeek: number): DayNumber =>
  addDays(day, (dayOfWeek - weekday(day) + 7) % 7);

/**
 * The day of a year on which a rule changes the clock.
 *
 * A fifth weekday that a month does not have is its last one, and 29 February is 28 February outside a
 * leap year: the schema does not say, and a year without a change would be worse.
 *
 * @example
 * dayText(ruleDay({ month: 3, operator: 3, dayOfMonth: 0, dayOfWeek: 7, hour: 2, second: 0 }, 2012)) //=> "2012-03-11"
 */
export function ruleDay(rule: DstRule, year: number): DayNumber {
  const { month, operator, dayOfMonth, dayOfWeek } = rule;
  const length = daysInMonth(year, month);
  const day = (number: number): DayNumber => dayNumber({ year, month, day: number });
  if (operator === 0) return day(Math.min(dayOfMonth, length));
  if (operator === 1) return onOrAfter(day(Math.min(dayOfMonth, length)), dayOfWeek);
  const last = onOrAfter(day(length - 6), dayOfWeek);
  if (operator === 7) return last;
  const counted = addDays(onOrAfter(day(1), dayOfWeek), 7 * (operator - 2));
  return counted <= last ? counted : last;
}

/** The first whole minute since 1970 at which a rule of a year is in force, on the clock until then. */
export function ruleMinute(rule: DstRule, year: number): number {
  return ruleDay(rule, year) * 1440 + rule.hour * 60 + Math.ceil(rule.second / 60);
}
