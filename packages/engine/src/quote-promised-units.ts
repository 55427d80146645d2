import { calendarDay, monthParts, shareOut, type Period } from './quantity/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import { batteryOf, ownUseOf, type PeriodUnits } from './quote/index.ts';

/** What meters show of a month of the quote: with a battery, its losses count as used. */
function meteredMonth({ units }: PreparedQuote, at: number): PeriodUnits {
  const { generation, withPlant, width } = units;
  const made = generation[at] ?? 0;
  const selfUse = made - (withPlant[at * width + 1] ?? 0);
  return { use: (withPlant[at * width] ?? 0) + selfUse, generation: made, selfUse };
}

/** Units of the quote over a period that need not be a calendar month, shared by days. */
function byDays(prepared: PreparedQuote, period: Period): PeriodUnits {
  const { year, month: startMonth } = calendarDay(prepared.input.start);
  const step = prepared.input.unitStep;
  const sums = { use: 0, generation: 0, selfUse: 0 };
  for (const part of monthParts(period)) {
    const month = meteredMonth(prepared, (part.year - year) * 12 + part.month - startMonth);
    for (const key of ['use', 'generation', 'selfUse'] as const) {
      const [own = 0] =
        part.days === part.length
          ? [month[key]]
          : shareOut(month[key] / step, [part.days, part.length - part.days]).map((one) => one * step);
      sums[key] += own;
    }
  }
  return { ...sums, selfUse: Math.min(sums.selfUse, sums.use, sums.generation) };
}

/** Units that a quote promises over some periods, and its own use where they come otherwise. */
export interface PromisedUnits {
  readonly units: readonly PeriodUnits[];
  /** Own use by the rule of the quote in one of the periods, for what is made and used in it. */
  readonly own: (at: number, made: number, used: number) => number;
}

/**
 * The quote's units over billing periods, in the terms of meters: own use is what was made and not given.
 *
 * By a share, it is the share of what is made. By a profile or with a battery, months are shared by days, and other
 * units change own use by as much as they change it under the rule.
 */
export function promisedUnits(prepared: PreparedQuote, periods: readonly Period[]): PromisedUnits {
  const rule = ownUseOf(prepared);
  const plain = periods.map((period) => byDays(prepared, period));
  const isShare =
    prepared.profile === null && (!prepared.hasBattery || batteryOf(prepared.input.document) === null);
  const kept = (at: number, made: number, used: number): number =>
    rule.kept(periods[at] as Period, made, used);
  if (isShare) {
    const units = plain.map((one, at) => ({ ...one, selfUse: kept(at, one.generation, one.use) }));
    return { units, own: kept };
  }
  const base = plain.map(({ use, generation }, at) => kept(at, generation, use));
  const own = (at: number, made: number, used: number): number => {
    const moved = (plain[at]?.selfUse ?? 0) + kept(at, made, used) - (base[at] ?? 0);
    return Math.max(0, Math.min(moved, made, used));
  };
  return { units: plain, own };
}
