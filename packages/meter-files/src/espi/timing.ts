import type { Tell } from './log.ts';
import type { Plan } from './plan.ts';
import type { RawReading } from './reading.ts';

/** Where an IntervalBlock is in time. */
export interface BlockClock {
  /** Where the next reading begins if it does not say so: seconds since 1970 UTC; NaN: not known. */
  next: number;
}

/** When a reading is, in minutes of UTC since 1970. */
export interface TimedReading {
  readonly start: number;
  /** 0 for a register that was read at a moment. */
  readonly minutes: number;
}

interface Timing {
  readonly reading: RawReading;
  readonly plan: Plan;
  readonly clock: BlockClock;
  readonly tell: Tell;
  /** Say something once of the MeterReading. */
  readonly tellOnce: Tell;
}

interface Seconds {
  readonly start: number;
  readonly duration: number;
}

/** Of a register: a moment, but where readings follow each other without times, what lies between them. */
function defaultDuration({ hasPeriod }: RawReading, { accumulation, intervalLength }: Plan): number {
  if (accumulation === 'intervals') return intervalLength;
  return hasPeriod || Number.isNaN(intervalLength) ? 0 : intervalLength;
}

/**
 * When a reading begins and how long it lasts. A reading without a timePeriod follows the one before and
 * lasts for the intervalLength of its type, as the schema says of IntervalReading.
 */
function secondsOf({ reading, plan, clock, tellOnce }: Timing): Seconds {
  const start = reading.hasPeriod ? reading.start : clock.next;
  const duration = Number.isNaN(reading.duration) ? defaultDuration(reading, plan) : reading.duration;
  if (!reading.hasPeriod) tellOnce('espi/implied-times', reading.at);
  const end = start + duration;
  clock.next = Number.isNaN(end) ? clock.next : end;
  return { start, duration };
}

/** Tell what is wrong with the time of an interval; whether it can be used. */
function isIntervalTime({ reading, tell }: Timing, { start, duration }: Seconds): boolean {
  const { at } = reading;
  if (Number.isNaN(duration)) tell('espi/no-duration', at);
  else if (duration === 0)
    tell('espi/time-range', at, {
      field: 'duration',
      value: String(duration),
      expected: 'more than 0 seconds',
    });
  for (const [field, seconds] of [
    ['start', start],
    ['duration', duration],
  ] as const)
    if (seconds % 60 !== 0 && !Number.isNaN(seconds))
      tell('espi/not-a-minute', at, { field, value: String(seconds) });
  return duration > 0 && start % 60 === 0 && duration % 60 === 0;
}

/** Tell everything that is wrong with a reading; whether none of it is. */
function isUsable(timing: Timing, seconds: Seconds): boolean {
  const { reading, plan, tell } = timing;
  for (const { code, at, values } of reading.problems ?? []) tell(code, at, values);
  if (!reading.hasPeriod && Number.isNaN(seconds.start)) tell('espi/no-start', reading.at);
  const isTimed = plan.accumulation === 'register' || isIntervalTime(timing, seconds);
  return isTimed && reading.problems === null && !Number.isNaN(seconds.start);
}

/**
 * Work out when a reading is.
 *
 * A register that was read within a minute was read in that minute; where it is given over a period, it is
 * taken as read at its end, which is asked.
 *
 * @returns null where the reading cannot be used, which is told
 */
export function timedReading(timing: Timing): TimedReading | null {
  const { reading, plan, tellOnce } = timing;
  const seconds = secondsOf(timing);
  if (!isUsable(timing, seconds)) return null;
  const { start, duration } = seconds;
  if (plan.accumulation === 'register') {
    if (duration > 0) tellOnce('espi/register-period', reading.at, { duration: String(duration) });
    return { start: Math.floor((start + duration) / 60), minutes: 0 };
  }
  const { intervalLength } = plan;
  if (!Number.isNaN(intervalLength) && duration !== intervalLength)
    tellOnce('espi/interval-length', reading.at, {
      duration: String(duration),
      length: String(intervalLength),
    });
  return { start: start / 60, minutes: duration / 60 };
}
