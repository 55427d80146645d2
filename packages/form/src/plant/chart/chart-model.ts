import type { DayNumber, Judgement, Period } from '@unitbook/engine';
import type { YieldBand } from '../view/yields.ts';

/** What was made in a month or on a day, in ten-thousandths of a unit per kWp and day. */
export interface Bar extends Period {
  readonly value: number;
  readonly judgement: Judgement | null;
}

/** A day that a letter or a number stands for. */
export interface Mark {
  readonly day: DayNumber;
  readonly sign: string;
}

/** Everything the chart shows. */
export interface ChartModel {
  readonly by: 'months' | 'days';
  readonly bars: readonly Bar[];
  readonly bands: readonly YieldBand[];
  /** Days on which the plant stood still by the diary. */
  readonly outages: readonly Period[];
  readonly marks: readonly Mark[];
  /** Days that a finding is about. */
  readonly pointed: Period | null;
  /** The upper end of the scale, in whole units per kWp and day. */
  readonly top: number;
}

/** One strip of the chart: the days that it shows. */
export interface Strip extends Period {
  readonly model: ChartModel;
}

const UNIT = 10_000;

/** The upper end of a scale that holds some values: the next whole unit, at least 1. */
export function topOf(values: readonly number[]): number {
  return Math.max(1, Math.ceil(values.reduce((most, value) => Math.max(most, value), 0) / UNIT));
}

/** The letter of a diary entry: A to Z, then AA, AB … */
export function letterOf(place: number): string {
  const last = String.fromCharCode(65 + (place % 26));
  return place < 26 ? last : letterOf(Math.floor(place / 26) - 1) + last;
}

/** Whether two spans have a day in common. */
export const overlap = (one: Period, other: Period): boolean => one.from < other.to && other.from < one.to;

/** The part of a span that lies in another. */
export function within<Span extends Period>(span: Span, { from, to }: Period): Span {
  const start = span.from < from ? from : span.from;
  const end = span.to > to ? to : span.to;
  return { ...span, from: start, to: end };
}
