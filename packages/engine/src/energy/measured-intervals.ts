import { dayText, type Period } from '../quantity/index.ts';
import { clockText } from '../tariff/index.ts';
import { DAY_MINUTES } from './block-clock.ts';
import type { IntervalColumns, ValueFault } from './interval-columns.ts';
import { dayOfMinute, type IntervalOrder } from './interval-runs.ts';
import type { DayRows, WindowMeter } from './interval-windows.ts';

/** What the intervals of some periods come to, and what it was measured with. */
export interface Measured {
  /** With 0 in place of what is no whole watt-hours. */
  readonly columns: IntervalColumns;
  /** As they were given. */
  readonly given: IntervalColumns;
  readonly wrong: readonly ValueFault[];
  readonly periods: readonly Period[];
  readonly order: IntervalOrder;
  readonly changes: ReadonlySet<number>;
  /** Blocks, and one more for what lies in two. */
  readonly stride: number;
  /** By period, channel and block. */
  readonly sums: Float64Array;
  /** Intervals by period. */
  readonly counts: Float64Array;
  /** null where a channel is not there. */
  readonly meters: readonly (WindowMeter | null)[];
  /** The first rows of a day on which two blocks share an interval, by period. */
  readonly splits: Map<number, DayRows>;
  /** The period that was measured last. */
  period: number;
}

/** A local minute as "2025-04-01 06:15". */
export function minuteText(minute: number): string {
  const day = dayOfMinute(minute);
  return `${dayText(day)} ${clockText(minute - day * DAY_MINUTES)}`;
}
