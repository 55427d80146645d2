import { dayText, type DayNumber, type Finding } from '../../quantity/index.ts';
import type { SeriesDay } from './day-series.ts';
import { plantFinding } from './findings.ts';
import { yearsBefore } from './last-years.ts';

/** A day whose first and last minute are known. */
interface RunningDay {
  readonly day: DayNumber;
  readonly first: number;
  readonly last: number;
}

/** Minutes a day that the plant may run less. Our own rule. */
const MOST_MINUTES = 60;
/** Days with known minutes that are compared with as many before. */
const SIDE = 10;
/** Days either side of the same day last year. */
const REACH = 10;

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

const spanOf = ({ first, last }: RunningDay): number => last - first;
const spanIn = (days: readonly RunningDay[]): number => middle(days.map(spanOf));

/** How much shorter days run than some others, and at which end of the day more of it lies. */
interface Shorter {
  readonly minutes: number;
  /** How long the others run. */
  readonly usual: number;
  readonly end: 'morning' | 'evening';
  readonly than: string;
}

function shorter(now: readonly RunningDay[], usual: readonly RunningDay[], than: string): Shorter {
  const morning = middle(now.map(({ first }) => first)) - middle(usual.map(({ first }) => first));
  const evening = middle(usual.map(({ last }) => last)) - middle(now.map(({ last }) => last));
  const span = spanIn(usual);
  return { minutes: span - spanIn(now), usual: span, end: morning >= evening ? 'morning' : 'evening', than };
}

/** The days around the same days of the year before; few of them tell nothing. */
function lastYear(now: readonly RunningDay[], all: readonly RunningDay[]): readonly RunningDay[] {
  const [from, to] = [now[0]?.day, now.at(-1)?.day];
  if (from === undefined || to === undefined) return [];
  const [first, last] = [yearsBefore(from, 1) - REACH, yearsBefore(to, 1) + REACH];
  const found = all.filter(({ day }) => first <= day && day <= last);
  return found.length < 2 * SIDE ? [] : found;
}

/**
 * How much shorter ten days run: than the year before where that is known, else than the ten days before,
 * less what the season takes, which is what it took from the ten days before those.
 */
function shorterAt(place: number, all: readonly RunningDay[]): Shorter | null {
  const now = all.slice(place, place + SIDE);
  const before = all.slice(Math.max(0, place - SIDE), place);
  const earlier = all.slice(Math.max(0, place - 2 * SIDE), Math.max(0, place - SIDE));
  if (now.length < SIDE) return null;
  const then = lastYear(now, all);
  if (then.length > 0) return shorter(now, then, 'a year before');
  if (earlier.length < SIDE || (now.at(-1)?.day ?? 0) - (earlier[0]?.day ?? 0) > 4 * SIDE) return null;
  const plain = shorter(now, before, 'just before, the season apart');
  const season = Math.max(0, spanIn(earlier) - spanIn(before));
  return { ...plain, minutes: plain.minutes - season, usual: plain.usual - season };
}

/** Ten days that run too short, and where they begin. */
interface ShortStretch extends Shorter {
  readonly place: number;
}

/** Stretches that overlap or follow each other are one. */
function joined(found: readonly ShortStretch[]): readonly (readonly ShortStretch[])[] {
  const runs: ShortStretch[][] = [];
  for (const one of found) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run !== undefined && before !== undefined && one.place <= before.place + SIDE) run.push(one);
    else runs.push([one]);
  }
  return runs;
}

/** The days of a run of stretches that are more than an hour shorter than what the run is compared with. */
function shortOnes(run: readonly ShortStretch[], all: readonly RunningDay[]): readonly RunningDay[] {
  const [from, to] = [run[0]?.place ?? 0, (run.at(-1)?.place ?? 0) + SIDE];
  const usual = Math.max(...run.map(({ usual: span }) => span));
  return all.slice(from, to).filter((one) => usual - spanOf(one) > MOST_MINUTES);
}

/**
 * Days on which the plant runs more than an hour less than before: of each run of such days one finding, at
 * its first day. By the year before where it is known, else by the days before.
 */
export function shortDays(series: readonly SeriesDay[]): readonly Finding[] {
  const all = series.flatMap(({ day, minutes, isOutage }) =>
    minutes === null || isOutage ? [] : [{ day, ...minutes }],
  );
  const found = all.flatMap((_, place) => {
    const one = shorterAt(place, all);
    return one === null || one.minutes <= MOST_MINUTES ? [] : [{ ...one, place }];
  });
  return joined(found).flatMap((run) => spanFinding(run, shortOnes(run, all)));
}

function spanFinding(run: readonly ShortStretch[], days: readonly RunningDay[]): Finding[] {
  const [one] = days;
  const [most] = [...run].sort((a, b) => b.minutes - a.minutes);
  if (one === undefined || most === undefined) return [];
  const first = dayText(one.day);
  const { minutes, end, than } = most;
  const values = { first, minutes: String(minutes), end, than, count: String(days.length) };
  return [plantFinding('plant/short-days', { path: ['days', first] }, values)];
}
