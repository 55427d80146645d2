import type { Period } from '../../quantity/index.ts';
import type { LifeUnits } from '../life-columns.ts';
import { BatteryMonths } from './battery-month.ts';
import { EveryInterval, type BatterySource, type BatteryTerms } from './battery-source.ts';
import { BatteryTable, runAfterOne } from './battery-table.ts';
import { BlockUnits } from './block-units.ts';
import { roundedUnits, type OwnUse } from './own-use.ts';
import { byMonths, monthOf } from './profile-use.ts';

/**
 * Own use by intervals with a battery. What is used at home and what is not given to the grid are two things here:
 * between them lie the losses, and what the battery holds from one month to the next.
 */
export class BatteryUse implements OwnUse {
  readonly blocks: readonly string[];
  private readonly terms: BatteryTerms;
  private readonly source: BatterySource;
  private readonly units: BlockUnits;

  /** @param source  left out: every interval is run */
  constructor(terms: BatteryTerms, source: BatterySource = new EveryInterval(terms)) {
    this.blocks = terms.profile.blocks;
    this.terms = terms;
    this.source = source;
    this.units = new BlockUnits(this.blocks.length, terms.step);
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
    const { battery, profile, step } = this.terms;
    const months = new BatteryMonths(battery, profile);
    const kept = byMonths(period, { made, used }, ({ calendar, days }, ofMade, ofUsed) => {
      runAfterOne(months, this.terms, { calendar, days, made: ofMade, used: ofUsed });
      return months.kept;
    });
    return Math.min(made, roundedUnits(kept, step));
  }

  forDraws(): OwnUse {
    return new BatteryUse(this.terms, new BatteryTable(this.terms));
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
    if (this.blocks.length === 0) return;
    units.taken.set(source.taken);
    units.given.set(source.given);
    units.write(into, at, month);
  }
}
