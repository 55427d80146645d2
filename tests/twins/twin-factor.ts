import { eachDayOfInterval, getDaysInMonth } from 'date-fns';
import { periodDays, type DayRule, type Period } from '@unitbook/engine';
import { dividedBy, fraction, plus, roundFraction, ZERO, type Fraction } from './fraction.ts';

/** Days of a period by calendar month, from date-fns, one day after the other. */
function daysByMonth(period: Period): Map<string, { days: number; length: number }> {
  const months = new Map<string, { days: number; length: number }>();
  const start = new Date(1970, 0, 1 + period.from);
  const end = new Date(1970, 0, period.to);
  for (const day of eachDayOfInterval({ start, end })) {
    const key = `${String(day.getFullYear())}-${String(day.getMonth())}`;
    const known = months.get(key) ?? { days: 0, length: getDaysInMonth(day) };
    months.set(key, { ...known, days: known.days + 1 });
  }
  return months;
}

/** The factor of a day rule, the plain way. */
export function twinFactor(rule: DayRule, period: Period): Fraction {
  const days = periodDays(period);
  const { unscaledFrom, unscaledThrough } = rule;
  if (unscaledFrom !== undefined && unscaledThrough !== undefined) {
    if (days >= Number(unscaledFrom) && days <= Number(unscaledThrough)) return fraction(1);
  }
  const round = (value: Fraction): Fraction =>
    rule.factor === undefined ? value : roundFraction(value, rule.factor);
  if (rule.rule === 'days-over') return round(dividedBy(fraction(days), fraction(rule.divisor)));
  const parts = [...daysByMonth(period).values()].map((part) => fraction(part.days, part.length));
  if (rule.rounded === 'each-month') return parts.map(round).reduce(plus, ZERO);
  return round(parts.reduce(plus, ZERO));
}
