import { monthParts, periodDays, type Period } from '../../quantity/index.ts';
import type { ProfileMonth, ReadProfile } from './profile.ts';

/** When units of a period are used, made, taken and given: thousandths, as doubles. */
export interface PeriodShape {
  /** By time block of the tariff. */
  readonly used: Float64Array;
  readonly made: Float64Array;
  readonly taken: Float64Array;
  readonly given: Float64Array;
  /** What meets inside the windows of each measure. */
  readonly met: Float64Array;
}

/** What is made and used in a period. */
export interface MadeAndUsed {
  readonly made: number;
  readonly used: number;
}

/** A month of a profile under units of a whole calendar month. */
export interface ShapedMonth extends MadeAndUsed {
  readonly month: ProfileMonth;
  /** From 0 on. */
  readonly calendar: number;
  /** Of the calendar month. */
  readonly days: number;
}

/** What is taken and given by block, and what meets inside windows, in one month. */
export type MonthShape = Pick<PeriodShape, 'taken' | 'given' | 'met'>;

function addTo(into: Float64Array, values: Float64Array, part: number): void {
  for (let at = 0; at < into.length; at += 1) into[at] = (into[at] as number) + (values[at] as number) * part;
}

/**
 * The shape of a period as its months would make it: each month as if it were whole, by its days.
 *
 * @param ofMonth  the shape of a whole month; what it returns may be used again
 */
export function periodShape(
  period: Period,
  { made, used }: MadeAndUsed,
  { blocks, windows, months }: ReadProfile,
  ofMonth: (month: ShapedMonth) => MonthShape,
): PeriodShape {
  const all = periodDays(period);
  const room = (): Float64Array => new Float64Array(blocks.length);
  const shape = {
    used: room(),
    made: room(),
    taken: room(),
    given: room(),
    met: new Float64Array(windows.length),
  };
  for (const { month: number, days, length } of monthParts(period)) {
    const month = months[number - 1] as ProfileMonth;
    const { totals, blockUse, blockGeneration } = month;
    const whole = { made: (made * length) / all, used: (used * length) / all };
    const part = days / length;
    const own = ofMonth({ ...whole, month, calendar: number - 1, days: length });
    addTo(shape.used, blockUse, totals.use === 0 ? 0 : (whole.used * part) / totals.use);
    addTo(shape.made, blockGeneration, totals.generation === 0 ? 0 : (whole.made * part) / totals.generation);
    addTo(shape.taken, own.taken, part);
    addTo(shape.given, own.given, part);
    addTo(shape.met, own.met, part);
  }
  return shape;
}
