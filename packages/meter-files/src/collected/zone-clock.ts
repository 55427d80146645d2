import { tzOffset } from '@date-fns/tz';
import type { DayNumber } from '@unitbook/engine';
import { DAY_MINUTES, dayOfMinute } from './texts.ts';

/** A change of the local clock. */
export interface ClockChange {
  /** The minute of UTC, since 1970-01-01 00:00, from which the clock shows another offset. */
  readonly utc: number;
  /** Minutes east of UTC before it and from it on. */
  readonly before: number;
  readonly after: number;
  /** The local day that is longer or shorter for it. */
  readonly day: DayNumber;
}

/** The local clock of a time zone over some years. */
export interface ZoneClock {
  readonly zone: string;
  /** The local minute, since 1970-01-01 00:00 on the local clock, at a minute of UTC. */
  readonly toLocal: (utcMinute: number) => number;
  /** The minute of UTC at which a local day begins: the last one at which the clock passes its midnight. */
  readonly dayStart: (day: DayNumber) => number;
  /** In order of time. */
  readonly changes: readonly ClockChange[];
  /** The local days on which the clock changes, each once. */
  readonly changeDays: readonly DayNumber[];
  /** Days that the calendar of the zone leaves out. */
  readonly lostDays: readonly DayNumber[];
}

const MILLISECONDS = 60_000;

const NAME = /^[A-Z][\w+-]*(?:\/[A-Z][\w+-]*)*$/i;
/** Whatever is no zone is read for an offset in it, such as the "-02" of "Town-02". */
const HAS_OFFSET = /[+-]\d\d/;
/** The only zones whose names have two digits behind a sign. */
const FIXED = /^Etc\/GMT(?:\+1[0-2]|-1[0-4])$/i;

/** Minutes east of UTC; the seconds that some zones had before 1972 are left out. */
function offsetAt(zone: string, utcMinute: number): number {
  return Math.trunc(tzOffset(zone, new Date(utcMinute * MILLISECONDS)));
}

/**
 * Whether a text names a time zone of the IANA list that this computer knows. Offsets such as "+05:30" are
 * none.
 *
 * @example
 * isZone('Asia/Kolkata') //=> true
 * isZone('+05:30') //=> false
 */
export function isZone(text: string): boolean {
  if (!NAME.test(text) || (HAS_OFFSET.test(text) && !FIXED.test(text))) return false;
  return Number.isFinite(tzOffset(text, new Date(0)));
}

/** The one change between two minutes whose offsets differ. */
function changeBetween(zone: string, from: number, to: number): ClockChange {
  let [low, high] = [from, to];
  const before = offsetAt(zone, from);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(zone, middle) === before) low = middle;
    else high = middle;
  }
  const after = offsetAt(zone, high);
  // Forward: the minutes left out are those after the clock before; back: those that come twice begin
  // where the clock goes back to.
  return { utc: high, before, after, day: dayOfMinute(high + Math.min(before, after)) };
}

/** Changes between two minutes: no zone changes its clock twice in one day. */
function changesBetween(zone: string, from: number, to: number): readonly ClockChange[] {
  const changes: ClockChange[] = [];
  let cursor = from;
  let offset = offsetAt(zone, cursor);
  while (cursor < to) {
    const next = Math.min(to, cursor + DAY_MINUTES);
    while (offsetAt(zone, next) !== offset) {
      const change = changeBetween(zone, cursor, next);
      changes.push(change);
      [cursor, offset] = [change.utc, change.after];
    }
    cursor = next;
  }
  return changes;
}

/** Days of which nothing is left when a clock goes forward by a day. */
function lostDays(changes: readonly ClockChange[]): readonly DayNumber[] {
  return changes.flatMap(({ utc, before, after }) => {
    const first = Math.ceil((utc + before) / DAY_MINUTES);
    const count = Math.max(0, Math.floor((utc + after) / DAY_MINUTES) - first);
    return Array.from({ length: count }, (_, index) => (first + index) as DayNumber);
  });
}

/** Which offset holds at a minute of UTC; the one found last is tried first. */
function offsetFinder(changes: readonly ClockChange[], first: number): (utc: number) => number {
  const starts = [-Infinity, ...changes.map(({ utc }) => utc), Infinity];
  const offsets = [first, ...changes.map(({ after }) => after)];
  let at = 0;
  return (utc) => {
    while (utc < (starts[at] as number)) at -= 1;
    while (utc >= (starts[at + 1] as number)) at += 1;
    return offsets[at] as number;
  };
}

/**
 * The local clock of a time zone between two minutes of UTC. Before the first of them the clock is taken to
 * have stood as it does there, and after the last as it does then.
 *
 * @param zone  a name of the IANA list
 * @param from  since 1970-01-01 00:00 UTC
 * @param to    not before it
 * @throws RangeError  for a name that is no zone, and for minutes that are none
 * @example
 * zoneClock('Asia/Kolkata', 0, 1440).toLocal(0) //=> 330
 * zoneClock('Europe/Amsterdam', 28928160, 29453760).changeDays.map(dayText) //=> ["2025-03-30","2025-10-26"]
 */
export function zoneClock(zone: string, from: number, to: number): ZoneClock {
  if (!isZone(zone)) throw new RangeError(`"${zone}" is no time zone`);
  if (!Number.isInteger(from) || !Number.isInteger(to) || to < from)
    throw new RangeError(`from ${from} to ${to} is no stretch of minutes`);
  const changes = changesBetween(zone, from, to);
  const first = offsetAt(zone, from);
  const offset = offsetFinder(changes, first);
  const dayStart = (day: DayNumber): number => {
    const midnight = day * DAY_MINUTES;
    let end = Infinity;
    for (let at = changes.length - 1; at >= 0; at -= 1) {
      const { utc, after } = changes[at] as ClockChange;
      if (utc + after < midnight) return Math.min(midnight - after, end);
      end = utc;
    }
    return Math.min(midnight - first, end);
  };
  return {
    zone,
    toLocal: (utc) => utc + offset(utc),
    dayStart,
    changes,
    changeDays: [...new Set(changes.map(({ day }) => day))],
    lostDays: lostDays(changes),
  };
}
