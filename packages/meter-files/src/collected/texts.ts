import { dayText, type DayNumber } from '@unitbook/engine';
import type { Stream } from '../stream.ts';

const HOUR = 60;

/** The minutes of a day without a change of the clock. */
export const DAY_MINUTES = 1440;

/** The day on which a minute since 1970 falls, on the same clock. */
export function dayOfMinute(minute: number): DayNumber {
  return Math.floor(minute / DAY_MINUTES) as DayNumber;
}

/**
 * A minute since 1970 as people read it.
 *
 * @example
 * minuteText(1455) //=> "1970-01-02 00:15"
 */
export function minuteText(minute: number): string {
  const day = dayOfMinute(minute);
  const inDay = minute - day * DAY_MINUTES;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${dayText(day)} ${two(Math.floor(inDay / HOUR))}:${two(inDay % HOUR)}`;
}

/**
 * A number of minutes as people read it.
 *
 * @param minutes  whole, 0 or more
 * @example
 * durationText(1515) //=> "1 day 1 h 15 min"
 */
export function durationText(minutes: number): string {
  const days = Math.floor(minutes / DAY_MINUTES);
  const hours = Math.floor((minutes % DAY_MINUTES) / HOUR);
  const rest = minutes % HOUR;
  const parts = [
    days > 0 ? `${days} ${days === 1 ? 'day' : 'days'}` : '',
    hours > 0 ? `${hours} h` : '',
    rest > 0 || minutes === 0 ? `${rest} min` : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/**
 * A register or channel as people name it: by its own name, and by meter and point where the file has them.
 *
 * @example
 * streamText({ point: '', meter: 'M1', register: 'E1', quantity: 'import', rate: null, unit: 'kWh' }) //=> "E1 of meter M1"
 */
export function streamText({ point, meter, register }: Stream): string {
  const where = [meter === '' ? '' : `meter ${meter}`, point === '' ? '' : `point ${point}`];
  const of = where.filter((part) => part !== '').join(', ');
  return of === '' ? register : `${register} of ${of}`;
}
