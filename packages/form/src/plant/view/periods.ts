import {
  addDays,
  calendarDay,
  dayNumber,
  daysInMonth,
  measureEnergy,
  parseDay,
  readReadings,
  type Account,
  type DayNumber,
  type Figure,
  type GenerationDay,
  type GenerationPeriod,
  type Period,
  type UnitsRule,
} from '@unitbook/engine';
import type { BookView } from '../../view/view-book.ts';

/** What the plant made in a period, and how that was counted. */
export interface MadePeriod extends GenerationPeriod {
  /** From readings, unfolding to them; null where single days were added up. */
  readonly generation: Figure | null;
}

/** Energy as it was metered: no rule of a tariff rounds what a plant made. */
const EXACT: UnitsRule = { clause: '', decimals: '3', rounding: 'half-up', roundedAt: 'difference' };

/**
 * What the plant made from reading to reading, up to the first that cannot be used.
 *
 * @param view   of the household
 * @param today  ISO date; '' leaves dates in the future unquestioned
 */
export function readPeriods({ account, typed }: BookView, today: string): readonly MadePeriod[] {
  const own = account.account;
  if (own === null) return [];
  const day = parseDay(today);
  const pairs = readReadings(typed.rows, own, day === null ? {} : { today: day }).value;
  return pairs.flatMap((pair) => {
    const { period, generation } = measureEnergy(pair, own, EXACT).value;
    if (generation === null || generation.numerator < 0) return [];
    const ends = [pair.from, pair.to];
    return [
      {
        period,
        wattHours: generation.numerator as number,
        isEstimated: ends.some(({ estimated }) => estimated.includes('generation')),
        generation,
      },
    ];
  });
}

/** Whether the account has a meter that counts what the plant makes. */
export const hasGenerationMeter = (account: Account | null): boolean =>
  account?.document.meters.generation !== undefined;

/** The calendar months that a span touches, whole. */
export function calendarMonths(from: DayNumber, to: DayNumber): readonly Period[] {
  const months: Period[] = [];
  let { year, month } = calendarDay(from);
  for (let first = dayNumber({ year, month, day: 1 }); first < to;) {
    const next = addDays(first, daysInMonth(year, month));
    months.push({ from: first, to: next });
    first = next;
    ({ year, month } = calendarDay(first));
  }
  return months;
}

/** The calendar months of which every day is known, as periods. */
export function dayPeriods(days: readonly GenerationDay[]): readonly MadePeriod[] {
  const known = new Map(days.map(({ day, wattHours }) => [day, wattHours]));
  const [first, last] = [days[0]?.day, days.at(-1)?.day];
  if (first === undefined || last === undefined) return [];
  return calendarMonths(first, addDays(last, 1)).flatMap((period) => {
    let wattHours = 0;
    for (let day = period.from; day < period.to; day = addDays(day, 1)) {
      const own = known.get(day);
      if (own == null) return [];
      wattHours += own;
    }
    return [{ period, wattHours, isEstimated: false, generation: null }];
  });
}
