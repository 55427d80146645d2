import { addDays, calendarDay, dayNumber, daysInMonth, type DayNumber, type Period } from '@unitbook/engine';
import type { Mark } from './chart-model.ts';

/** The size of a drawing and its margins, in its own units. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where days and yields stand in a drawing. */
export interface Scales {
  readonly frame: Frame;
  readonly x: (day: DayNumber) => number;
  /** Of ten-thousandths of a unit per kWp and day. */
  readonly y: (value: number) => number;
}

/** A place in a drawing with one decimal: more makes no difference to the eye. */
const place = (value: number): number => Math.round(value * 10) / 10;

/**
 * Straight scales over the plot of a frame.
 *
 * @param span  the days from the left to the right
 * @param most  the value at the top
 * @example
 * scalesOf({ width: 100, height: 50, left: 0, right: 0, top: 0, bottom: 0 }, { from: 0, to: 10 }, 20000).y(5000) //=> 37.5
 */
export function scalesOf(frame: Frame, { from, to }: Period, most: number): Scales {
  const { width, height, left, right, top, bottom } = frame;
  const across = width - left - right;
  const up = height - top - bottom;
  return {
    frame,
    x: (day) => place(left + (across * (day - from)) / (to - from)),
    y: (value) => place(height - bottom - (up * value) / most),
  };
}

/** How many whole units lie between the lines of a scale: about five lines. */
export function tickStep(top: number): number {
  return top <= 6 ? 1 : Math.ceil(top / 5);
}

/** Slanted lines over a box, as a path: hatching that prints and needs no colour. */
export function hatchPath(
  { x, y, width, height }: Readonly<Record<'x' | 'y' | 'width' | 'height', number>>,
  gap: number,
): string {
  const lines: string[] = [];
  for (let start = gap / 2; start < width + height; start += gap) {
    const low = { x: x + Math.min(start, width), y: y + Math.max(0, start - width) };
    const high = { x: x + Math.max(0, start - height), y: y + Math.min(start, height) };
    lines.push(`M${place(low.x)} ${place(low.y)}L${place(high.x)} ${place(high.y)}`);
  }
  return lines.join('');
}

/** A mark and the row in which it stands, 0 next to the plot. */
export interface PlacedMark extends Mark {
  readonly row: number;
}

/**
 * Put marks in rows so that none lies on another.
 *
 * @param marks  in order of days
 * @param x      where a day stands
 * @param width  of one sign
 */
export function placeMarks(
  marks: readonly Mark[],
  x: (day: DayNumber) => number,
  width: number,
): readonly PlacedMark[] {
  const ends: number[] = [];
  return marks.map((mark) => {
    const half = (width * mark.sign.length) / 2;
    const at = x(mark.day);
    const free = ends.findIndex((end) => end <= at - half);
    const row = free < 0 ? ends.length : free;
    ends[row] = at + half;
    return { ...mark, row };
  });
}

/** The first days of the calendar months in a span. */
export function monthStarts({ from, to }: Period): readonly DayNumber[] {
  const starts: DayNumber[] = [];
  const { year, month, day } = calendarDay(from);
  let next = dayNumber({ year, month, day: 1 });
  if (day > 1) next = addDays(next, daysInMonth(year, month));
  while (next < to) {
    starts.push(next);
    const own = calendarDay(next);
    next = addDays(next, daysInMonth(own.year, own.month));
  }
  return starts;
}
