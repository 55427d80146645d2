import { tzOffset } from '@date-fns/tz';

const DAY = 1440;
/** How far a local day can lie from the same day in UTC, with an hour to spare on either side. */
const [EAST, WEST] = [15 * 60, 13 * 60];
/** Days of a zone that are kept; more than a file in order of time asks for again. */
const MOST_DAYS = 1_000;

/**
 * Minutes east of UTC of a zone at a minute.
 *
 * @param minute  since 1970-01-01 00:00 UTC
 * @example
 * zoneOffset('Asia/Kathmandu', 29_000_000) //=> 345
 */
export function zoneOffset(zone: string, minute: number): number {
  return tzOffset(zone, new Date(minute * 60_000));
}

/** The offsets of a zone around one local day: one, or one up to a minute in UTC and another from it on. */
export interface ZoneDay {
  readonly before: number;
  readonly after: number;
  /** The minute in UTC from which `after` holds; Infinity where the offset does not change. */
  readonly change: number;
}

function changeBetween(zone: string, from: number, to: number): number {
  const before = zoneOffset(zone, from);
  let [last, first] = [from, to];
  while (first - last > 1) {
    const middle = Math.floor((last + first) / 2);
    if (zoneOffset(zone, middle) === before) last = middle;
    else first = middle;
  }
  return first;
}

function zoneDay(zone: string, day: number): ZoneDay {
  const [from, to] = [day * DAY - EAST, (day + 1) * DAY + WEST];
  const [before, after] = [zoneOffset(zone, from), zoneOffset(zone, to)];
  if (before === after) return { before, after, change: Infinity };
  return { before, after, change: changeBetween(zone, from, to) };
}

/** The clock of a time zone, day by day. No zone changes its clock twice within two days. */
export class ZoneDays {
  readonly zone: string;
  private readonly days = new Map<number, ZoneDay>();
  private lastDay = NaN;
  private last: ZoneDay = { before: 0, after: 0, change: Infinity };

  constructor(zone: string) {
    this.zone = zone;
  }

  /** The offsets around a local day. */
  day(day: number): ZoneDay {
    if (day === this.lastDay) return this.last;
    let known = this.days.get(day);
    if (known === undefined) {
      known = zoneDay(this.zone, day);
      if (this.days.size >= MOST_DAYS) this.days.clear();
      this.days.set(day, known);
    }
    this.lastDay = day;
    this.last = known;
    return known;
  }
}
