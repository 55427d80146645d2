import { calendarDay, type DayNumber, type Period } from '../quantity/index.ts';

/** What the saving or a bill can differ by, in the order in which it is split. */
export const PROMISE_CAUSES = ['use', 'generation', 'self-use', 'tariff', 'scheme'] as const;

/** One of the causes. */
export type PromiseCause = (typeof PROMISE_CAUSES)[number];

/** Units of a period, in whole thousandths. */
export interface PeriodUnits {
  readonly use: number;
  readonly generation: number;
  readonly selfUse: number;
}

/** Money of a period, in whole 1/grid. */
export interface PeriodMoney {
  readonly before: number;
  readonly after: number;
  readonly surplus: number;
  /** before − after + surplus */
  readonly saving: number;
}

/** A part of a difference: what one cause changes, in whole 1/grid. */
export interface CausePart {
  readonly cause: PromiseCause;
  /** On the bill with the plant, before surplus; above 0: it is higher than promised. */
  readonly bill: number;
  /** On the saving; above 0: it is higher than promised. */
  readonly saving: number;
}

/** A period as it was promised and as it came. */
export interface PromisedPeriod {
  readonly period: Period;
  readonly promised: PeriodUnits & PeriodMoney;
  readonly actual: PeriodUnits & PeriodMoney;
  /** One for each cause; the parts sum to the differences exactly. */
  readonly parts: readonly CausePart[];
}

/** How generation lies in what weather makes of a promise. */
export type WeatherVerdict = 'within' | 'below' | 'above';

/** Generation against the promise. */
export interface GenerationBand {
  /** Actual as a part of promised. */
  readonly ratio: number;
  /** One sigma that was reckoned with, a part of one. */
  readonly sigma: number;
  /** Parts of the promise that are reached in 90 and in 10 of 100 cases. */
  readonly low: number;
  readonly high: number;
  readonly verdict: WeatherVerdict;
}

/** Years until the price has come back. */
export interface RestatedPayback {
  readonly promised: number | null;
  /** With what happened, the rest as quoted. */
  readonly restAsQuoted: number | null;
  /** With what happened, the rest with use, generation and rules as they were so far. */
  readonly ifItGoesOn: number | null;
}

/** Whether a promise was kept. */
export interface PromiseReport {
  readonly grid: number;
  readonly periods: readonly PromisedPeriod[];
  readonly promised: PeriodUnits & PeriodMoney;
  readonly actual: PeriodUnits & PeriodMoney;
  readonly parts: readonly CausePart[];
  readonly generation: GenerationBand;
  /**
   * What a battery loses of own use, and holds at the end: meters count it as used, bills without the plant do not.
   * Promised by the quote, and of what came by the rule of the quote, as no meter tells it. null: there is no battery.
   */
  readonly lost: { readonly promised: number; readonly actual: number } | null;
  readonly payback: RestatedPayback;
}

/**
 * The month in which a time after the first day of a plant falls.
 *
 * @param start  the first of a month
 * @param years  since then
 * @example
 * monthAfter(dayNumber({ year: 2025, month: 4, day: 1 }), 4.6).month //=> 11
 */
export function monthAfter(
  start: DayNumber,
  years: number,
): { readonly year: number; readonly month: number } {
  const { year, month } = calendarDay(start);
  const at = month - 1 + Math.floor(years * 12);
  return { year: year + Math.floor(at / 12), month: (at % 12) + 1 };
}

/** z of a chance of 90 %: IEC and finance usage; computed by the quantile of the normal distribution. */
const Z90 = 1.2816;
/** The least that a month differs from its mean without local data, and a year. */
const LEAST = { month: 0.1, year: 0.04 } as const;

/**
 * Judge generation by what weather does: with 90 of 100 cases above the low edge and 10 above the high one.
 *
 * @param months  how many months the sums are of; short ones differ more
 * @param sigma   of the quote, a part of one: level and year together
 * @example
 * generationBand(352, 380, { months: 1, sigma: 0.087 }).verdict //=> "within"
 */
export function generationBand(
  actual: number,
  promised: number,
  { months, sigma }: { readonly months: number; readonly sigma: number },
): GenerationBand {
  const least = LEAST.year + (LEAST.month - LEAST.year) / Math.sqrt(Math.max(1, months));
  const own = Math.max(sigma, least);
  const ratio = promised === 0 ? 1 : actual / promised;
  const [low, high] = [1 - Z90 * own, 1 + Z90 * own];
  const verdict = ratio < low ? 'below' : ratio > high ? 'above' : 'within';
  return { ratio, sigma: own, low, high, verdict };
}
