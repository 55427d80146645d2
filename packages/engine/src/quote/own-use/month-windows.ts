import { clockMinute } from '../../tariff/index.ts';
import type { NettingWindow } from '../../energy/index.ts';
import { DAY_MINUTES, dayOf } from './local-minutes.ts';

/** Intervals of a month by the window that each is netted in. */
export interface WindowGroups {
  /** The window of each interval, from 0 on, in order of time. */
  readonly group: Uint32Array;
  readonly count: number;
}

/** What tells which intervals are netted together. */
export type WindowSpan = Pick<NettingWindow, 'within' | 'from' | 'to'>;

/** A measure of a tariff: what is left of one channel less another inside each window of time. */
export interface ProfileWindow extends NettingWindow {
  /** Which of the spans of a month it nets in: measures with the same windows share one. */
  readonly span: number;
}

const sameSpan =
  ({ within, from, to }: WindowSpan) =>
  (other: WindowSpan): boolean =>
    within === other.within && from === other.from && to === other.to;

/**
 * Measures by the windows that they net in, each kind of window once.
 *
 * @example
 * const both = [{ id: 'a', of: 'import', less: 'export', within: 'day' }, { id: 'b', of: 'export', less: 'import', within: 'day' }];
 * spansOf(both).spans.length //=> 1
 */
export function spansOf(windows: readonly NettingWindow[]): {
  readonly spans: readonly WindowSpan[];
  readonly windows: readonly ProfileWindow[];
} {
  const spans = windows.filter((window, at) => windows.findIndex(sameSpan(window)) === at);
  return {
    spans,
    windows: windows.map((window) => ({ ...window, span: spans.findIndex(sameSpan(window)) })),
  };
}

const HOUR = 60;

/** Whether a minute lies in some hours of its day; those that end before they begin are its first and last ones. */
function hoursOf({ from = '', to = '' }: WindowSpan): (start: number) => boolean {
  const [first, end] = [clockMinute(from) ?? 0, clockMinute(to) ?? 0];
  return (start) => {
    const inDay = start - dayOf(start) * DAY_MINUTES;
    return first < end ? first <= inDay && inDay < end : first <= inDay || inDay < end;
  };
}

/** What intervals of one window have in common; null: the interval is a window by itself. */
function keysOf(span: WindowSpan): (start: number) => number | null {
  switch (span.within) {
    case 'interval':
      return () => null;
    case 'hour':
      return (start) => Math.floor(start / HOUR);
    case 'day':
      return dayOf;
    case 'day-hours': {
      const isInside = hoursOf(span);
      return (start) => (isInside(start) ? dayOf(start) : null);
    }
  }
}

/**
 * Sort intervals by the window that they are netted in: themselves, their local hour, their local day, or some hours
 * of it. Outside such hours nothing is netted: each interval stays by itself.
 *
 * @param starts  minutes since 1970-01-01 00:00 on the local clock, in order; an hour that comes twice is two hours
 * @example
 * [...windowGroups(Int32Array.of(0, 30, 60, 90), { within: 'hour' }).group] //=> [0,0,1,1]
 */
export function windowGroups(starts: Int32Array, span: WindowSpan): WindowGroups {
  const group = new Uint32Array(starts.length);
  const keyOf = keysOf(span);
  let [count, open, key, before] = [0, 0, NaN, -Infinity];
  starts.forEach((start, at) => {
    const own = keyOf(start);
    const isAgain = span.within === 'hour' && start <= before;
    if (own === null || own !== key || isAgain) {
      group[at] = count;
      count += 1;
      // Hours of a day go on after those that lie between them.
      if (own !== null) [key, open] = [own, count - 1];
    } else group[at] = open;
    before = start;
  });
  return { group, count };
}

/**
 * Energy by window.
 *
 * @param values  one for each interval
 * @example
 * [...windowSums(Float64Array.of(1, 2, 4), { group: Uint32Array.of(0, 0, 1), count: 2 })] //=> [3,4]
 */
export function windowSums(values: Float64Array, { group, count }: WindowGroups): Float64Array {
  const sums = new Float64Array(count);
  for (let at = 0; at < values.length; at += 1) {
    const own = group[at] as number;
    sums[own] = (sums[own] as number) + (values[at] as number);
  }
  return sums;
}

/**
 * What meets inside windows: in each of them the smaller of two channels.
 *
 * @param of    one value for each interval, and
 * @param less  what is set off against it
 * @returns     their sum, a double
 * @example
 * metInside(Float64Array.of(3, 0), Float64Array.of(0, 2), { group: Uint32Array.of(0, 0), count: 1 }) //=> 2
 */
export function metInside(of: Float64Array, less: Float64Array, groups: WindowGroups): number {
  const [taken, given] = [windowSums(of, groups), windowSums(less, groups)];
  let met = 0;
  for (let at = 0; at < groups.count; at += 1) met += Math.min(taken[at] as number, given[at] as number);
  return met;
}
