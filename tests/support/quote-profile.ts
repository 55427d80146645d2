import { calendarDay, parseDay, type DayNumber, type QuoteProfile } from '@unitbook/engine';

/** What a house uses and its plant makes in an interval, in whole Wh. */
export interface Shape {
  readonly use: number;
  readonly generation: number;
}

/** When an interval begins. */
export interface Moment {
  /** From 1 on. */
  readonly month: number;
  readonly day: number;
  /** Minutes of the day. */
  readonly minute: number;
  /** Of the profile, from 0 on. */
  readonly row: number;
}

/** A profile of whole days from one to the day before another, by a shape. */
export function profileOf(
  from: string,
  to: string,
  { minutes = 60, shape }: { readonly minutes?: number; readonly shape: (moment: Moment) => Shape },
): QuoteProfile {
  const [first, last] = [parseDay(from), parseDay(to)];
  if (first === null || last === null) throw new RangeError(`${from} or ${to} is no day`);
  const count = ((last - first) * 1440) / minutes;
  const starts = Int32Array.from({ length: count }, (_, row) => first * 1440 + row * minutes);
  const shapes = Array.from(starts, (start, row) => {
    const number = Math.floor(start / 1440);
    const { month, day } = calendarDay(number as DayNumber);
    return shape({ month, day, minute: start - number * 1440, row });
  });
  return {
    minutes,
    starts,
    use: Float64Array.from(shapes, ({ use }) => use),
    generation: Float64Array.from(shapes, ({ generation }) => generation),
  };
}

/** The year 2025 by a shape. */
export const yearOf = (shape: (moment: Moment) => Shape, minutes = 60): QuoteProfile =>
  profileOf('2025-01-01', '2026-01-01', { minutes, shape });

/** An invented house: 200 Wh each hour, 1,000 from 18 to 22; sun from 8 to 16, 1,500 Wh an hour. */
export const EVENING_HOUSE = ({ minute }: Moment): Shape => {
  const hour = minute / 60;
  return {
    use: hour >= 18 && hour < 22 ? 1000 : 200,
    generation: hour >= 8 && hour < 16 ? 1500 : 0,
  };
};
