import { readDateText, type DateOrder } from './date-text.ts';
import { readClockTime, type ClockTime } from './time-text.ts';

/** What can be wrong with a cell that should hold a date or a time. */
export type MomentFault = 'table/bad-date' | 'table/bad-time';

const SPLIT = /^(.*?\d)(?:T|,?\s+)(\d{1,2}:\d{2}.*)$/s;
/** Runs of digits; a blank in them could also stand within a date, so that only eight digits can be one. */
const COMPACT = /^(\d{8}|\d{4}-\d{2}-\d{2}(?=T))[T ]?(\d{4}(?:\d{2})?(?:Z|[+-]\d[\d:]*)?)$/;
/** Times of a day are few; where a column has more texts than these, they are forgotten and read again. */
const MOST_TIMES = 5_000;

/**
 * The date part and the time part of a cell; the time is '' where there is none.
 *
 * @example
 * splitMoment('1 May 2025 12:30') //=> ["1 May 2025","12:30"]
 */
export function splitMoment(text: string): readonly [date: string, time: string] {
  const [, date, time] = COMPACT.exec(text) ?? SPLIT.exec(text) ?? [];
  return date === undefined || time === undefined ? [text, ''] : [date, time];
}

/**
 * Reads dates and times. It holds what was read last: most cells have the date of the one before, and one of
 * the few times of a day, so that reading millions makes no objects.
 */
export class MomentCell {
  /** Days since 1970-01-01. */
  day = 0;
  /** Minutes after 00:00 of that day, 1440 for 24:00; null where the cell has no time. */
  minute: number | null = null;
  /** Minutes east of UTC, where the cell says so. */
  offset: number | null = null;
  hasSeconds = false;
  private readonly order: DateOrder;
  private lastDate = '';
  private readonly times = new Map<string, ClockTime | null>();

  constructor(order: DateOrder) {
    this.order = order;
  }

  /** Read a cell with the date and, mostly, the time. */
  readBoth(cell: string): MomentFault | null {
    const { lastDate } = this;
    const { length } = lastDate;
    const separator = cell.charCodeAt(length);
    // A blank or a T after the date read last: the rest is the time.
    if (length > 0 && (separator === 32 || separator === 84) && cell.startsWith(lastDate)) {
      const fault = this.readTime(cell.slice(length + 1));
      if (fault === null) return null;
    }
    const [date, time] = splitMoment(cell.trim());
    const fault = this.readDate(date);
    if (fault !== null) return fault;
    if (time !== '') return this.readTime(time);
    this.noTime();
    return null;
  }

  /** Read a cell with the date alone; midnight behind it, as databases write days, is no harm. */
  readDay(cell: string): MomentFault | null {
    this.noTime();
    if (cell === this.lastDate && cell !== '') return null;
    const [date, time] = splitMoment(cell.trim());
    const fault = this.readDate(date);
    if (fault !== null || time === '') return fault;
    const late = this.readTime(time) !== null || this.minute !== 0 || this.hasSeconds || this.offset !== null;
    this.noTime();
    return late ? 'table/bad-date' : null;
  }

  /** Read a cell with the time alone, after one with the date. */
  readTime(cell: string): MomentFault | null {
    let time = this.times.get(cell);
    if (time === undefined) {
      time = readClockTime(cell.trim());
      if (this.times.size >= MOST_TIMES) this.times.clear();
      this.times.set(cell, time);
    }
    if (time === null) return 'table/bad-time';
    this.minute = time.minute;
    this.offset = time.offset;
    this.hasSeconds = time.hasSeconds;
    return null;
  }

  private readDate(text: string): MomentFault | null {
    if (text !== this.lastDate || text === '') {
      const day = readDateText(text, this.order);
      if (day === null) return 'table/bad-date';
      this.day = day;
      this.lastDate = text;
    }
    return null;
  }

  private noTime(): void {
    this.minute = null;
    this.offset = null;
    this.hasSeconds = false;
  }
}
