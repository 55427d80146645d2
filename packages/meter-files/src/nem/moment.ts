import { dayText, parseDay, type DayNumber } from '@unitbook/engine';

/**
 * Read a day as the format writes it, yyyymmdd.
 *
 * @returns null where there is no such day
 * @example
 * readDay('19700102') //=> 1
 */
export function readDay(text: string): DayNumber | null {
  return text.length === 8 ? parseDay(`${text.slice(0, 4)}-${text.slice(4, 6)}-${text.slice(6)}`) : null;
}

/** A time of a file, in market time. */
export interface Moment {
  readonly day: DayNumber;
  /** The minute of the day, begun; null where the file gives the day alone. */
  readonly minute: number | null;
  /** yyyymmddhhmmss: texts in order of time. */
  readonly order: string;
}

/**
 * Read a time: yyyymmddhhmmss, as the format has it for reads, yyyymmddhhmm, as for its header, or a day.
 *
 * @returns null where there is no such time
 * @example
 * readMoment('19700102093055') //=> {"day":1,"minute":570,"order":"19700102093055"}
 */
export function readMoment(text: string): Moment | null {
  const match = /^(\d{8})(?:([01]\d|2[0-3])([0-5]\d)(?:[0-5]\d)?)?$/.exec(text);
  const day = readDay(match?.[1] ?? '');
  if (match === null || day === null) return null;
  const [, , hour, minute] = match;
  const order = text.padEnd(14, '0');
  if (hour === undefined || minute === undefined) return { day, minute: null, order };
  return { day, minute: Number.parseInt(hour, 10) * 60 + Number.parseInt(minute, 10), order };
}

/**
 * A time as a finding shows it.
 *
 * @example
 * momentText(readMoment('20040409')) //=> "2004-04-09"
 */
export function momentText({ day, minute, order }: Moment): string {
  const clock = minute === null ? '' : ` ${order.slice(8).replace(/(\d\d)(\d\d)(\d\d)/, '$1:$2:$3')}`;
  return `${dayText(day)}${clock}`;
}
