import { monthParts, periodDays, type Period } from '../../quantity/index.ts';
import type { LifeUnits } from '../life-columns.ts';
import { BlockUnits } from './block-units.ts';
import { roundedUnits, type OwnUse } from './own-use.ts';
import { periodShape, type MonthShape, type PeriodShape } from './period-shape.ts';
import type { MonthSpan, ProfileMonth, ReadProfile } from './profile.ts';
import type { ProfileWindow } from './month-windows.ts';
import { isOfGrid, metTheLongWay, writeWindows } from './window-units.ts';

/** How a profile is laid over a life. */
export interface ProfileTerms {
  readonly profile: ReadProfile;
  /** The calendar month, from 0 on, that the life begins with. */
  readonly offset: number;
  /** Thousandths that units are rounded to. */
  readonly step: number;
}

/** The month of a profile that a month of a life is shaped like. */
export const monthOf = ({ profile, offset }: ProfileTerms, at: number): ProfileMonth =>
  profile.months[(offset + at) % 12] as ProfileMonth;

/**
 * Units of a period as its months would make them: each month as if it were whole, by its days.
 *
 * @param ofMonth  of a calendar month from 0 on and of so many days, for units made and used in all of it
 * @returns        a double, not rounded
 */
export function byMonths(
  period: Period,
  { made, used }: { readonly made: number; readonly used: number },
  ofMonth: (
    month: { readonly calendar: number; readonly days: number },
    made: number,
    used: number,
  ) => number,
): number {
  const all = periodDays(period);
  let sum = 0;
  for (const { month, days, length } of monthParts(period)) {
    const whole = length / all;
    const own = ofMonth({ calendar: month - 1, days: length }, made * whole, used * whole);
    sum += (own * days) / length;
  }
  return sum;
}

/**
 * Own use by intervals: in each of them the smaller of use and generation. Exact, however often it is asked.
 *
 * What is taken and given inside one window meets as far as use and generation of the window do beyond those of its
 * intervals: own use again, in longer steps. Only measures that net generation are worked out interval by interval.
 */
export class ProfileUse implements OwnUse {
  readonly blocks: readonly string[];
  readonly measures: readonly string[];
  private readonly terms: ProfileTerms;
  private readonly units: BlockUnits;
  private readonly met: Float64Array;

  constructor(terms: ProfileTerms) {
    const { blocks, windows } = terms.profile;
    this.blocks = blocks;
    this.measures = windows.map(({ id }) => id);
    this.terms = terms;
    this.units = new BlockUnits(blocks.length, terms.step);
    this.met = new Float64Array(windows.length);
  }

  take(into: LifeUnits): void {
    const { use, generation, selfUse, withPlant, withoutPlant, width } = into;
    const { terms } = this;
    for (let at = 0; at < use.length; at += 1) {
      const made = generation[at] as number;
      const used = use[at] as number;
      const month = monthOf(terms, at);
      const own = month.overlap.own(made, used, terms.step);
      selfUse[at] = own;
      withPlant[at * width] = used - own;
      withPlant[at * width + 1] = made - own;
      withPlant[at * width + 2] = made;
      withoutPlant[at * width] = used;
      if (this.blocks.length > 0) this.takeBlocks(into, at, month);
      if (this.measures.length > 0) this.takeWindows(into, at, month);
    }
  }

  kept(period: Period, made: number, used: number): number {
    const { months } = this.terms.profile;
    const own = byMonths(period, { made, used }, ({ calendar }, ofMade, ofUsed) =>
      (months[calendar] as ProfileMonth).overlap.value(ofMade, ofUsed),
    );
    return Math.min(roundedUnits(own, this.terms.step), made, used);
  }

  delivered(period: Period, made: number, used: number): number {
    return this.kept(period, made, used);
  }

  shape(period: Period, made: number, used: number): PeriodShape {
    return periodShape(period, { made, used }, this.terms.profile, (one) => this.monthShape(one));
  }

  forDraws(): OwnUse {
    return this;
  }

  private takeBlocks(into: LifeUnits, at: number, month: ProfileMonth): void {
    this.shapeBlocks(month, into.generation[at] as number, into.use[at] as number);
    this.units.write(into, at, month);
  }

  private takeWindows(into: LifeUnits, at: number, month: ProfileMonth): void {
    const { met, terms } = this;
    const { profile, step } = terms;
    const made = into.generation[at] as number;
    const used = into.use[at] as number;
    for (let index = 0; index < met.length; index += 1) {
      const window = profile.windows[index] as ProfileWindow;
      const { overlap } = month.spans[window.span] as MonthSpan;
      met[index] = isOfGrid(window)
        ? overlap.own(made, used, step) - (into.selfUse[at] as number)
        : roundedUnits(metTheLongWay(window, month, { made, used }), step);
    }
    writeWindows(profile, into, at, met);
  }

  private monthShape({
    month,
    made,
    used,
  }: {
    readonly month: ProfileMonth;
    readonly made: number;
    readonly used: number;
  }): MonthShape {
    this.shapeBlocks(month, made, used);
    const direct = month.overlap.value(made, used);
    const met = Float64Array.from(this.terms.profile.windows, (window: ProfileWindow) =>
      isOfGrid(window)
        ? (month.spans[window.span] as MonthSpan).overlap.value(made, used) - direct
        : metTheLongWay(window, month, { made, used }),
    );
    return { taken: this.units.taken, given: this.units.given, met };
  }

  private shapeBlocks(month: ProfileMonth, made: number, used: number): void {
    const { taken, given } = this.units;
    const perUse = month.totals.use === 0 ? 0 : used / month.totals.use;
    const perMade = month.totals.generation === 0 ? 0 : made / month.totals.generation;
    for (let block = 0; block < taken.length; block += 1) {
      const own = (month.blockOverlaps[block] as ProfileMonth['overlap']).value(made, used);
      taken[block] = Math.max(0, (month.blockUse[block] as number) * perUse - own);
      given[block] = Math.max(0, (month.blockGeneration[block] as number) * perMade - own);
    }
  }
}
