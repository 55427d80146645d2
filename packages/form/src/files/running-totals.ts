import {
  dayText,
  INTERVAL_CHANNELS,
  type DayNumber,
  type IntervalChannel,
  type Period,
} from '@unitbook/engine';
import type { PeriodEnergy } from '@unitbook/meter-files';
import { exactOf, minus, plus, roundedText, type Exact } from './exact.ts';
import type { Offer } from './fit-book.ts';

/** Decimals of a running total: a register can have three. */
const PLACES = 3;
const NOTHING: Exact = { whole: 0n, places: 0 };

/** A reading of the book from which running totals go on: what its registers show. */
export interface Anchor {
  readonly day: DayNumber;
  readonly texts: Readonly<Partial<Record<IntervalChannel, string>>>;
}

/** Running totals at the closing days. */
export interface RunningTotals {
  readonly offers: readonly Offer[];
  /** The first period in which something cannot be told: from its end on there are no totals. */
  readonly unknown: Period | null;
}

/** What is counted in any of the periods. */
export function countedChannels(periods: readonly PeriodEnergy[]): readonly IntervalChannel[] {
  return INTERVAL_CHANNELS.filter((channel) => periods.some((period) => period[channel] !== null));
}

/** The periods up to the first in which something that is counted elsewhere cannot be told. */
function knownPeriods(periods: readonly PeriodEnergy[]): readonly PeriodEnergy[] {
  const channels = countedChannels(periods);
  const end = periods.findIndex((period) => channels.some((channel) => period[channel] === null));
  return end < 0 ? periods : periods.slice(0, end);
}

/** The days on which periods begin and end, in order. */
export function closingDays(periods: readonly { readonly period: Period }[]): readonly DayNumber[] {
  const [first] = periods;
  return first === undefined ? [] : [first.period.from, ...periods.map(({ period }) => period.to)];
}

/** The sums of a channel from the first day to each closing day. */
function sums(periods: readonly PeriodEnergy[], channel: IntervalChannel): readonly Exact[] {
  return periods.reduce<readonly Exact[]>(
    (all, period) => [...all, plus(all.at(-1) ?? NOTHING, exactOf(period[channel] ?? '0'))],
    [NOTHING],
  );
}

/**
 * Running totals of what was counted in periods, as register readings at their ends. They are sums of a
 * download, not what the meter shows: they begin at 0, or go on from a reading that the book has.
 *
 * @param periods  one after another without a gap
 * @param anchor   a reading on one of their ends, with numbers of all that is counted; null: begin at 0
 * @returns        a reading for each closing day, rounded half-up to three decimals; none where a total
 *   would be below 0
 */
export function runningTotals(periods: readonly PeriodEnergy[], anchor: Anchor | null): RunningTotals {
  const known = knownPeriods(periods);
  const days = closingDays(known);
  const at = anchor === null ? 0 : days.indexOf(anchor.day);
  const channels = countedChannels(known).map((channel) => {
    const own = sums(known, channel);
    const start = minus(exactOf(anchor?.texts[channel] ?? '0'), own[at] ?? NOTHING);
    return { channel, totals: own.map((sum) => plus(start, sum)) };
  });
  const offers = days.flatMap((day, index): Offer[] => {
    const texts = channels.map(({ channel, totals }) => [channel, totals[index] ?? NOTHING] as const);
    if (texts.length === 0 || texts.some(([, { whole }]) => whole < 0n)) return [];
    const numbers = texts.map(([channel, total]) => [channel, roundedText(total, PLACES)] as const);
    return [{ day, row: { date: dayText(day), ...Object.fromEntries(numbers) } }];
  });
  return { offers, unknown: periods[known.length]?.period ?? null };
}
