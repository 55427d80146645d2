import type { DayNumber } from '../quantity/index.ts';
import type { TimeBlockEntry, TimeBlocks } from './time-block-schema.ts';

/** What a day is to a calendar of time blocks. */
export type DayKind = NonNullable<TimeBlockEntry['days']>[number];

/** Monday to Sunday, as calendars of time blocks name them. */
export const WEEKDAYS: readonly DayKind[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Minutes of a day. */
export const DAY_MINUTES = 1440;

/** What `minuteEntries` holds where no entry applies, and where two do. */
export const NO_ENTRY = -1;
export const TWO_ENTRIES = -2;

/**
 * The minutes from midnight to a time of the clock, "24:00" included.
 *
 * @returns null when there is no such time
 * @example
 * clockMinute('06:30') //=> 390
 */
export function clockMinute(text: string): number | null {
  const [, hours = '', minutes = ''] = /^(\d{2}):(\d{2})$/.exec(text) ?? [];
  const minute = Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);
  return minute <= DAY_MINUTES && Number.parseInt(minutes, 10) < 60 ? minute : null;
}

/**
 * A minute of the day as "HH:MM".
 *
 * @example
 * clockText(1440) //=> "24:00"
 */
export function clockText(minute: number): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/**
 * The day of the week, without a clock: 1 January 1970 was a Thursday.
 *
 * @example
 * weekdayOf(dayNumber({ year: 2000, month: 1, day: 1 })) //=> "sat"
 */
export function weekdayOf(day: DayNumber): DayKind {
  return WEEKDAYS[(((day + 3) % 7) + 7) % 7] ?? 'mon';
}

/**
 * Whether any entry tells holidays from weekdays; where none does, a listed holiday is its weekday.
 *
 * @example
 * namesHolidays([{ block: 'all', from: '00:00', to: '24:00' }]) //=> false
 */
export function namesHolidays(calendar: readonly TimeBlockEntry[]): boolean {
  return calendar.some(({ days }) => days?.includes('holiday') ?? false);
}

/**
 * The seasons that a day of the year lies in, in the document's order. A season can go past the end of
 * the year.
 *
 * @param monthDay  as mm-dd
 * @example
 * seasonsOn({ winter: { from: '11-01', through: '02-29' } }, '01-15') //=> ["winter"]
 */
export function seasonsOn(seasons: TimeBlocks['seasons'], monthDay: string): readonly string[] {
  return Object.entries(seasons ?? {})
    .filter(([, { from, through }]) =>
      from <= through ? from <= monthDay && monthDay <= through : from <= monthDay || monthDay <= through,
    )
    .map(([name]) => name);
}

/**
 * The indexes of the entries that apply on a kind of day in some seasons.
 *
 * @example
 * entriesOn([{ block: 'low', from: '00:00', to: '24:00', days: ['sun'] }], 'mon', []) //=> []
 */
export function entriesOn(
  calendar: readonly TimeBlockEntry[],
  kind: DayKind,
  seasons: readonly string[],
): readonly number[] {
  return [...calendar.keys()].filter((index) => {
    const { days, season } = calendar[index] as TimeBlockEntry;
    return (days === undefined || days.includes(kind)) && (season === undefined || seasons.includes(season));
  });
}

/**
 * The entry that applies at each minute of a day. An entry that ends before it begins holds in the first
 * and in the last hours of the same day: whose day it is, the date alone says.
 *
 * @param calendar  with possible times
 * @param applying  the indexes of the entries that apply on the day
 * @returns         1440 indexes; below 0 where none or two apply
 * @example
 * minuteEntries([{ block: 'night', from: '22:00', to: '06:00' }], [0])[1380] //=> 0
 */
export function minuteEntries(calendar: readonly TimeBlockEntry[], applying: readonly number[]): Int16Array {
  const minutes = new Int16Array(DAY_MINUTES).fill(NO_ENTRY);
  const apply = (index: number, from: number, to: number): void => {
    for (let minute = from; minute < to; minute += 1) {
      minutes[minute] = minutes[minute] === NO_ENTRY ? index : TWO_ENTRIES;
    }
  };
  for (const index of applying) {
    const { from, to } = calendar[index] as TimeBlockEntry;
    const [first, end] = [clockMinute(from) ?? 0, clockMinute(to) ?? 0];
    if (first < end) apply(index, first, end);
    else {
      apply(index, 0, end);
      apply(index, first, DAY_MINUTES);
    }
  }
  return minutes;
}

/**
 * The days of a leap year as mm-dd, in order.
 *
 * @example
 * yearDays()[59] //=> "02-29"
 */
export function yearDays(): readonly string[] {
  const lengths = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const two = (value: number): string => String(value).padStart(2, '0');
  return lengths.flatMap((length, month) =>
    Array.from({ length }, (_, day) => `${two(month + 1)}-${two(day + 1)}`),
  );
}
