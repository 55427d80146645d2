import type { ZoneDay, ZoneDays } from './zone-days.ts';

const DAY = 1440;

/** Why a local time has no one place in time: the clocks leave it out, or it was there twice already. */
export type MomentProblem = 'table/time-does-not-exist' | 'table/time-once-more';

/** The order of the rows of one point and meter, as far as it is known. */
export interface RowOrder {
  /** The minute in UTC at which the interval before begins; NaN before the first. */
  previous: number;
  /** 1 where rows go forward in time, -1 where the newest stands first. */
  direction: 1 | -1;
}

/**
 * The minutes in UTC that a local minute can be: none, one or two, in order of time.
 *
 * @example
 * momentsOf({ before: 120, after: 60, change: 1000 }, 1090) //=> [970,1030]
 */
export function momentsOf({ before, after, change }: ZoneDay, local: number): readonly number[] {
  const moments: number[] = [];
  if (local - before < change) moments.push(local - before);
  if (local - after >= change && change !== Infinity) moments.push(local - after);
  return moments;
}

/** The first in the order of the rows. */
const firstOf = (moments: readonly number[], direction: 1 | -1): number | undefined =>
  moments.at(direction > 0 ? 0 : -1);

/** Moments after the row before, in the order of the rows. */
const laterOf = (moments: readonly number[], { previous, direction }: RowOrder): readonly number[] =>
  Number.isNaN(previous) ? moments : moments.filter((moment) => (moment - previous) * direction > 0);

/** What a label on the local clock can mean on a day on which clocks change. */
interface Reading {
  /** The beginnings of the interval, where the label is a moment at its end (or at its beginning). */
  readonly byLabel: readonly number[];
  /** The same where the whole interval is told by the clock at its beginning. */
  readonly byStart: readonly number[];
}

function chosen({ byLabel, byStart }: Reading, order: RowOrder, minutes: number): number | MomentProblem {
  const all = [...byLabel, ...byStart];
  const next = order.previous + order.direction * minutes;
  if (all.includes(next)) return next;
  const later =
    firstOf(laterOf(byLabel, order), order.direction) ?? firstOf(laterOf(byStart, order), order.direction);
  if (later !== undefined) return later;
  const nearest = Math.min(...all.map((moment) => Math.abs(moment - order.previous)));
  // Rows of another time than those before: a new beginning.
  if (nearest > DAY)
    return firstOf(byLabel, order.direction) ?? (firstOf(byStart, order.direction) as number);
  return byLabel.length > 1 || byStart.length > 1 ? 'table/time-once-more' : 'table/time-does-not-exist';
}

/**
 * Where an interval begins, by the label that it has on a local clock with daylight saving.
 *
 * The hour that comes twice when clocks go back comes twice in the order of the rows; where a file gives the
 * end of each interval, both ways of naming the interval before the change are understood: by the clock
 * before it and by the clock after it.
 *
 * @param label  the local minute since 1970-01-01 00:00 that the file gives
 * @param back   how far before its label an interval begins: 0, or its length
 * @param order  of the rows, with the one before
 */
export function startOnZone(
  days: ZoneDays,
  { label, back, minutes }: { readonly label: number; readonly back: number; readonly minutes: number },
  order: RowOrder,
): number | MomentProblem {
  const day = days.day(Math.floor(label / DAY));
  if (day.change === Infinity) return label - day.before - back;
  const byLabel = momentsOf(day, label).map((moment) => moment - back);
  const byStart = momentsOf(day, label - back);
  const [first] = byLabel;
  if (first === undefined && byStart.length === 0) return 'table/time-does-not-exist';
  const isPlain = byLabel.length === 1 && byStart.length === 1 && first === byStart[0];
  return isPlain ? (first as number) : chosen({ byLabel, byStart }, order, minutes);
}
