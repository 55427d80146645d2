import type { Period } from '../../quantity/index.ts';
import type { LifeUnits } from '../life-columns.ts';
import { BatteryMonths } from './battery-month.ts';
import { EveryInterval, type BatterySource, type BatteryTerms } from './battery-source.ts';
import { BatteryTable, runAfterOne } from './battery-table.ts';
import { BlockUnits } from './block-units.ts';
import { roundedUnits, type OwnUse } from './own-use.ts';
import { periodShape, type PeriodShape } from './period-shape.ts';
import { byMonths, monthOf } from './profile-use.ts';
import { isOfGrid, writeWindows } from './window-units.ts';

/**
 * Own use by intervals with a battery. What is used at home and what is not given to the grid are two things here:
 * between them lie the losses, and what the battery holds from one month to the next.
 */
export class BatteryUse implements OwnUse {
  readonly blocks: readonly string[];
  readonly measures: readonly string[];
  private readonly terms: BatteryTerms;
  private readonly source: BatterySource;
  private readonly units: BlockUnits;
  private readonly met: Float64Array;

  /** @param source  left out: every interval is run */
  constructor(terms: BatteryTerms, source: BatterySource = new EveryInterval(terms)) {
    const { blocks, windows } = terms.profile;
    this.blocks = blocks;
    this.measures = windows.map(({ id }) => id);
    this.terms = terms;
    this.source = source;
    this.units = new BlockUnits(blocks.length, terms.step);
    this.met = new Float64Array(windows.length);
  }

  take(into: LifeUnits): void {
    const { use, generation } = into;
    this.source.begin();
    for (let at = 0; at < use.length; at += 1) {
      this.source.run(at, generation[at] as number, use[at] as number);
      this.takeMonth(into, at);
    }
  }

  kept(period: Period, made: number, used: number): number {
    return Math.min(made, this.inPeriod(period, { made, used }, 'kept'));
  }

  delivered(period: Period, made: number, used: number): number {
    return Math.min(used, this.inPeriod(period, { made, used }, 'delivered'));
  }

  shape(period: Period, made: number, used: number): PeriodShape {
    const { battery, profile } = this.terms;
    const months = new BatteryMonths(battery, profile);
    return periodShape(period, { made, used }, profile, (one) => {
      runAfterOne(months, this.terms, one);
      return { taken: months.ofLife('taken'), given: months.ofLife('given'), met: months.met };
    });
  }

  forDraws(): OwnUse {
    return new BatteryUse(this.terms, new BatteryTable(this.terms));
  }

  private inPeriod(
    period: Period,
    units: { readonly made: number; readonly used: number },
    what: 'kept' | 'delivered',
  ): number {
    const { battery, profile, step } = this.terms;
    const months = new BatteryMonths(battery, profile);
    const value = byMonths(period, units, ({ calendar, days }, made, used) => {
      runAfterOne(months, this.terms, { calendar, days, made, used });
      return months[what];
    });
    return roundedUnits(value, step);
  }

  /** A battery never lowers own use: last digits of sums must not seem to. */
  private takeMonth(into: LifeUnits, at: number): void {
    const { source, terms, units } = this;
    const { use, generation, selfUse, withPlant, withoutPlant, width } = into;
    const made = generation[at] as number;
    const used = use[at] as number;
    const month = monthOf(terms, at);
    const direct = month.overlap.own(made, used, terms.step);
    const own = Math.min(used, Math.max(direct, roundedUnits(source.delivered, terms.step)));
    const kept = Math.min(made, Math.max(direct, roundedUnits(source.kept, terms.step)));
    selfUse[at] = own;
    withPlant[at * width] = used - own;
    withPlant[at * width + 1] = made - kept;
    withPlant[at * width + 2] = made;
    withoutPlant[at * width] = used;
    if (this.blocks.length > 0) {
      units.taken.set(source.taken);
      units.given.set(source.given);
      units.write(into, at, month);
    }
    if (this.measures.length > 0) this.takeWindows(into, at);
  }

  /** What meets inside windows is used at home as far as the grid's meter is asked: both are rounded together. */
  private takeWindows(into: LifeUnits, at: number): void {
    const { met, source, terms } = this;
    const { profile, step } = terms;
    const own = into.selfUse[at] as number;
    profile.windows.forEach((window, index) => {
      const units = source.met[index] as number;
      met[index] = isOfGrid(window)
        ? roundedUnits(source.delivered + units, step) - own
        : roundedUnits(units, step);
    });
    writeWindows(profile, into, at, met);
  }
}
