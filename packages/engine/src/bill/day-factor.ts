import {
  commonDivisor,
  decimalPlaces,
  decimalToWhole,
  monthParts,
  periodDays,
  roundQuotient,
  type Period,
  type Rounding,
} from '../quantity/index.ts';
import type { DayRule } from '../tariff/index.ts';

/** A factor as an exact quotient of whole numbers in lowest terms. */
export interface DayFactor {
  readonly numerator: number;
  readonly denominator: number;
}

/** Nothing is scaled. */
export const UNSCALED: DayFactor = { numerator: 1, denominator: 1 };

/** A quotient in lowest terms. */
export function lowestTerms(numerator: number, denominator: number): DayFactor {
  const divisor = commonDivisor(numerator, denominator);
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}

/** Round a quotient to a step, exactly. */
export function roundFactor(factor: DayFactor, rounding: Rounding): DayFactor {
  const places = decimalPlaces(rounding.step);
  const step = decimalToWhole(rounding.step, places);
  const steps = roundQuotient(factor.numerator * 10 ** places, factor.denominator * step, rounding.mode);
  return lowestTerms(steps * step, 10 ** places);
}

/** Add two quotients. */
function add(a: DayFactor, b: DayFactor): DayFactor {
  return lowestTerms(
    a.numerator * b.denominator + b.numerator * a.denominator,
    a.denominator * b.denominator,
  );
}

function monthsFactor(rule: DayRule & { rule: 'calendar-months' }, period: Period): DayFactor {
  const parts = monthParts(period).map((part) => lowestTerms(part.days, part.length));
  const { factor } = rule;
  if (factor === undefined) return parts.reduce(add);
  if (rule.rounded === 'each-month') return parts.map((part) => roundFactor(part, factor)).reduce(add);
  return roundFactor(parts.reduce(add), factor);
}

/** Whether a rule leaves a period of so many days unscaled. */
function isInsideSpan(rule: DayRule, days: number): boolean {
  if (rule.unscaledFrom === undefined || rule.unscaledThrough === undefined) return false;
  return days >= decimalToWhole(rule.unscaledFrom, 0) && days <= decimalToWhole(rule.unscaledThrough, 0);
}

/**
 * The factor that a day rule gives a period: days ÷ divisor, or the sum of the parts of calendar months,
 * rounded as the rule says; 1 inside the span that the rule leaves alone.
 *
 * @example
 * dayFactor({ rule: 'days-over', clause: 'x', divisor: '30' }, { from: parseDay('2025-01-01'), to: parseDay('2025-02-08') }) //=> {"numerator":19,"denominator":15}
 */
export function dayFactor(rule: DayRule, period: Period): DayFactor {
  const days = periodDays(period);
  if (isInsideSpan(rule, days)) return UNSCALED;
  if (rule.rule === 'calendar-months') return monthsFactor(rule, period);
  const exact = lowestTerms(days, decimalToWhole(rule.divisor, 0));
  return rule.factor === undefined ? exact : roundFactor(exact, rule.factor);
}
