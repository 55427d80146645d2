import { calendarDay, monthParts, shareOut, type Period } from './quantity/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { batteryOf, ownUseOf, type PeriodUnits } from './quote/index.ts';

/** What meters show of a month of the quote, and what of it reached the house. */
interface MeteredUnits extends PeriodUnits {
  /** Own use without what a battery loses and holds. */
  readonly delivered: number;
}

/** What meters show of a month of the quote: with a battery, its losses count as used. */
function meteredMonth({ units }: PreparedQuote, at: number): MeteredUnits {
  const { generation, withPlant, width } = units;
  const made = generation[at] ?? 0;
  const selfUse = made - (withPlant[at * width + 1] ?? 0);
  const delivered = units.selfUse[at] ?? 0;
  return { use: (withPlant[at * width] ?? 0) + selfUse, generation: made, selfUse, delivered };
}

/**
 * Sum of something over the months of a period, each of them by its days: whole steps of the quote.
 *
 * @param ofMonth  by the place of the month in the life
 */
export function sumByDays({ input }: PreparedQuote, period: Period, ofMonth: (at: number) => number): number {
  const { year, month: startMonth } = calendarDay(input.start);
  const { unitStep: step } = input;
  let sum = 0;
  for (const part of monthParts(period)) {
    const whole = ofMonth((part.year - year) * 12 + part.month - startMonth);
    const rest = part.length - part.days;
    const [own = 0] = rest === 0 ? [whole / step] : shareOut(whole / step, [part.days, rest]);
    sum += own * step;
  }
  return sum;
}

/** Units of the quote over a period that need not be a calendar month, shared by days. */
function byDays(prepared: PreparedQuote, period: Period): MeteredUnits {
  const sum = (key: keyof MeteredUnits): number =>
    sumByDays(prepared, period, (at) => meteredMonth(prepared, at)[key]);
  const [use, generation, selfUse] = [sum('use'), sum('generation'), sum('selfUse')];
  return { use, generation, selfUse: Math.min(selfUse, use, generation), delivered: sum('delivered') };
}

/** Units that a quote promises over some periods, and its own use where they come otherwise. */
export interface PromisedUnits {
  readonly units: readonly PeriodUnits[];
  /** Own use by the rule of the quote in one of the periods, for what is made and used in it. */
  readonly own: (at: number, made: number, used: number) => number;
  /**
   * What a battery loses of it, and holds at the end: meters count it as used. Below 0 where more comes out of the
   * battery than goes in. Without a battery 0.
   */
  readonly lost: (at: number, made: number, used: number) => number;
}

/**
 * The quote's units over billing periods, in the terms of meters: own use is what was made and not given.
 *
 * By a share, it is the share of what is made. By a profile or with a battery, months are shared by days, and other
 * units change own use by as much as they change it under the rule; what a battery loses likewise.
 */
export function promisedUnits(prepared: PreparedQuote, periods: readonly Period[]): PromisedUnits {
  const rule = ownUseOf(prepared);
  const plain = periods.map((period) => byDays(prepared, period));
  const hasBattery = prepared.hasBattery && batteryOf(prepared.input.document) !== null;
  const of = (what: 'kept' | 'delivered') => (at: number, made: number, used: number) =>
    rule[what](periods[at] as Period, made, used);
  const [kept, delivered] = [of('kept'), of('delivered')];
  if (prepared.profile === null && !hasBattery) {
    const units = plain.map((one, at) => ({ ...one, selfUse: kept(at, one.generation, one.use) }));
    return { units, own: kept, lost: () => 0 };
  }
  const bases = plain.map(({ use, generation }, at) => ({
    kept: kept(at, generation, use),
    delivered: delivered(at, generation, use),
  }));
  const own = (at: number, made: number, used: number): number => {
    const moved = (plain[at]?.selfUse ?? 0) + kept(at, made, used) - (bases[at]?.kept ?? 0);
    return Math.max(0, Math.min(moved, made, used));
  };
  const lost = (at: number, made: number, used: number): number => {
    const { selfUse = 0, delivered: reached = 0 } = plain[at] ?? {};
    const base = bases[at] ?? { kept: 0, delivered: 0 };
    return selfUse - reached + kept(at, made, used) - base.kept - delivered(at, made, used) + base.delivered;
  };
  return { units: plain, own, lost: hasBattery ? lost : () => 0 };
}
