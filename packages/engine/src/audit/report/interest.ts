import {
  addDays,
  calendarDay,
  dayNumber,
  dayText,
  decimalPlaces,
  decimalToWhole,
  exactText,
  givenFigure,
  isLeapYear,
  NumberTooLarge,
  type DayNumber,
  type Figure,
  type Finding,
  type Outcome,
  type Period,
} from '../../quantity/index.ts';
import { periodOfDated } from './dispute-days.ts';
import { disputeFinding } from './dispute-findings.ts';
import type { SimpleInterest } from './dispute-schema.ts';
import { timesPart } from './exact.ts';

/** Interest of some days at one rate, with the days of the year that they are part of. */
export interface InterestStretch {
  readonly period: Period;
  readonly days: number;
  readonly percent: string;
  /** Exact, not rounded. */
  readonly interest: Figure;
}

/** Days at one rate and in years of one length. */
interface Stretch {
  readonly period: Period;
  readonly percent: string;
  readonly clause: string;
  readonly yearDays: number;
}

type DayCount = SimpleInterest['dayCount'];

function yearDaysOf(dayCount: DayCount, { year }: { readonly year: number }): number {
  if (dayCount === 'calendar') return isLeapYear(year) ? 366 : 365;
  return dayCount === '360' ? 360 : 365;
}

/** The day on which a stretch that begins on `from` has to end: where the rate does, or the year if years differ. */
function endOf(from: DayNumber, rateEnd: DayNumber, until: DayNumber, dayCount: DayCount): DayNumber {
  const yearEnd = dayNumber({ year: calendarDay(from).year + 1, month: 1, day: 1 });
  const ends = [rateEnd, until, ...(dayCount === 'calendar' ? [yearEnd] : [])];
  return addDays(from, Math.min(...ends) - from);
}

/** The stretches of some days; null, with the day that has none, where a rate is not known. */
function stretchesOf(
  { rates, dayCount }: SimpleInterest,
  { from, to }: Period,
): readonly Stretch[] | DayNumber {
  const dated = rates.flatMap((rate) => {
    const period = periodOfDated(rate);
    return period === null ? [] : [{ ...rate, period }];
  });
  const stretches: Stretch[] = [];
  for (let day = from; day < to;) {
    const rate = dated.find(({ period }) => period.from <= day && day < period.to);
    if (rate === undefined) return day;
    const end = endOf(day, rate.period.to, to, dayCount);
    const yearDays = yearDaysOf(dayCount, calendarDay(day));
    stretches.push({ period: { from: day, to: end }, percent: rate.percent, clause: rate.clause, yearDays });
    day = end;
  }
  return stretches;
}

const days = (id: string, label: string, numerator: number): Figure =>
  givenFigure({ id, label, unit: 'day', numerator, denominator: 1, clause: '' });

const PLAIN = { parameters: [], rounding: null } as const;

/** Interest of a stretch: the interest of a year, times its days, over the days of a year. */
function interestOf(principal: Figure, { period, percent, clause, yearDays }: Stretch): InterestStretch {
  const count = period.to - period.from;
  const places = decimalPlaces(percent);
  const inYear = timesPart(principal, decimalToWhole(percent, places), 100 * 10 ** places);
  const rate = { name: 'percent a year', text: percent, unit: 'percent', clause } as const;
  const money = { unit: 'money', rounding: null, clause } as const;
  const ofYear: Figure = {
    ...money,
    ...inYear,
    id: 'interest-of-a-year',
    label: 'Interest of a year',
    operation: 'share',
    inputs: [principal],
    parameters: [rate],
  };
  const timesDays: Figure = {
    ...PLAIN,
    ...timesPart(inYear, count, 1),
    id: 'interest-times-days',
    label: 'Interest of a year times the days',
    unit: 'money',
    operation: 'product',
    inputs: [ofYear, days('days', `Days from ${dayText(period.from)} to ${dayText(period.to)}`, count)],
    clause: '',
  };
  const interest: Figure = {
    ...PLAIN,
    ...timesPart(timesDays, 1, yearDays),
    id: 'interest',
    label: 'Interest',
    unit: 'money',
    operation: 'quotient',
    inputs: [timesDays, days('year-days', 'Days of a year', yearDays)],
    clause,
  };
  return { period, days: count, percent, interest };
}

const NONE: readonly never[] = [];

/** That interest on an amount cannot be worked out exactly. */
export function interestTooFine({ numerator, denominator }: Figure): Finding {
  const values = { amount: exactText(numerator, denominator) };
  return disputeFinding('dispute/interest-too-fine', { path: NONE }, values);
}

/**
 * Simple interest on an amount, stretch by stretch: a new one begins where the rate changes, and in the calendar count
 * with each year. Interest runs from the first day up to, not including, the last: 18 June to 17 August are 60 days.
 *
 * @param principal  money, exact
 * @param period     from the payment to the day of adjustment; empty where that is not later
 * @returns          exact interest of each stretch; null with a finding where a rate is not known or a product cannot
 *                   be held
 * @source           R = d × r × days ÷ days of a year (project reference, What people expect of the form, the quote
 *                   and the finding, section 5.2, 2025)
 */
export function simpleInterest(
  principal: Figure,
  rule: SimpleInterest,
  period: Period,
): Outcome<readonly InterestStretch[] | null> {
  const stretches = stretchesOf(rule, period);
  if (typeof stretches === 'number') {
    const values = { day: dayText(stretches), from: dayText(period.from), until: dayText(period.to) };
    return { value: null, findings: [disputeFinding('dispute/no-rate', { path: NONE }, values)] };
  }
  try {
    return { value: stretches.map((stretch) => interestOf(principal, stretch)), findings: NONE };
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return { value: null, findings: [interestTooFine(principal)] };
  }
}
