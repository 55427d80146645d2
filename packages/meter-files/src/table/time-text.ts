/** A time of day as a cell gives it. */
export interface ClockTime {
  /** Minutes after 00:00; 1440 for 24:00. */
  readonly minute: number;
  /** Minutes east of UTC, where the text says so. */
  readonly offset: number | null;
  /** Whether there are seconds besides, or parts of one. */
  readonly hasSeconds: boolean;
}

const COLONS =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*([AaPp])\.?[Mm]\.?)?\s*(Z|UTC|[+-]\d{2}(?::?\d{2})?)?$/i;
const COMPACT = /^(\d{2})(\d{2})(?:(\d{2})(?:[.,](\d{1,9}))?)?()(Z|[+-]\d{2}(?::?\d{2})?)?$/i;

const whole = (digits: string | undefined): number => Number.parseInt(digits ?? '0', 10);

/** Minutes east of UTC; null for an offset that no place has. */
function offsetMinutes(text: string): number | null {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})?$/.exec(text) ?? [];
  if (sign === undefined) return 0;
  const size = whole(hours) * 60 + whole(minutes);
  if (size > 14 * 60 || whole(minutes) > 59) return null;
  return sign === '-' ? 0 - size : size;
}

/** The hour of the day on a clock of 24 hours; null for one that there is not. */
function hourOfDay(hour: number, half: string): number | null {
  if (half === '') return hour <= 24 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

/**
 * Read a time of day: 00:15, 0:15:30, 00:15:30.000, 0015, 12:15 AM, 24:00, each with an offset behind it or
 * without.
 *
 * @returns null when it is no time
 * @example
 * readClockTime('12:15 AM') //=> {"minute":15,"offset":null,"hasSeconds":false}
 * readClockTime('24:00+05:30') //=> {"minute":1440,"offset":330,"hasSeconds":false}
 */
export function readClockTime(text: string): ClockTime | null {
  const match = COLONS.exec(text) ?? COMPACT.exec(text);
  if (match === null) return null;
  const [, hours, minutes, seconds, fraction = '', half = '', zone] = match;
  const hour = hourOfDay(whole(hours), half);
  const offset = zone === undefined ? null : offsetMinutes(zone);
  if (hour === null || (offset === null && zone !== undefined)) return null;
  const hasSeconds = whole(seconds) > 0 || /[1-9]/.test(fraction);
  if (whole(minutes) > 59 || whole(seconds) > 59) return null;
  if (hour === 24 && (whole(minutes) > 0 || hasSeconds)) return null;
  return { minute: hour * 60 + whole(minutes), offset, hasSeconds };
}
