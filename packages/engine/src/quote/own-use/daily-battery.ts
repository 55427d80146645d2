import { periodDays, type Period } from '../../quantity/index.ts';
import type { LifeUnits } from '../life-columns.ts';
import type { Battery } from './battery.ts';
import { NO_BLOCKS, NO_SHAPE, roundedUnits, type OwnUse } from './own-use.ts';
import { selfUsed, type ShareTerms } from './share-use.ts';

/** Hours of a day, for charging and discharging together. */
const HOURS = 24;

/**
 * What a battery stores in so many days that are all like their mean: an estimate, for want of intervals.
 *
 * A day stores no more than the battery holds, than its surplus brings in, than the rest of its use can take out,
 * and than its power can move in and out again within 24 hours. Days with more surplus than others, or less use,
 * are not seen: the true value is rather lower.
 *
 * @param surplus  thousandths made in those days beyond what is used as it is made
 * @param lack     thousandths used in them beyond it
 * @returns        Wh stored in all days, a double, not rounded
 * @example
 * dailyStored({ capacity: 5000, power: 2500, way: 1 }, 30, { surplus: 240_000, lack: 300_000 }) //=> 150000
 */
export function dailyStored(
  { capacity, power, way }: Battery,
  days: number,
  { surplus, lack }: { readonly surplus: number; readonly lack: number },
): number {
  const moved = (HOURS * days * power) / (1 / way + way);
  return Math.min(capacity * days, surplus * way, lack / way, moved);
}

/** Own use as a share of the generation, and a battery that works as on a mean day of each month. */
export class DailyBatteryUse implements OwnUse {
  readonly blocks = NO_BLOCKS;
  readonly measures = NO_BLOCKS;
  readonly shape = NO_SHAPE;
  private readonly terms: ShareTerms;
  private readonly battery: Battery;
  private readonly periods: readonly Period[];

  /** @param periods  the months of the life */
  constructor(terms: ShareTerms, battery: Battery, periods: readonly Period[]) {
    this.terms = terms;
    this.battery = battery;
    this.periods = periods;
  }

  take({ use, generation, selfUse, withPlant, withoutPlant, width }: LifeUnits): void {
    const { terms, periods } = this;
    for (let at = 0; at < use.length; at += 1) {
      const made = generation[at] as number;
      const used = use[at] as number;
      const direct = selfUsed(made, used, terms);
      const rest = { surplus: made - direct, lack: used - direct };
      const stored = this.storedIn(periods[at] as Period, rest);
      const own = this.deliveredOf(used, direct, stored);
      selfUse[at] = own;
      withPlant[at * width] = used - own;
      withPlant[at * width + 1] = made - this.keptOf(made, direct, stored);
      withPlant[at * width + 2] = made;
      withoutPlant[at * width] = used;
    }
  }

  kept(period: Period, made: number, used: number): number {
    const direct = selfUsed(made, used, this.terms);
    return this.keptOf(made, direct, this.storedIn(period, { surplus: made - direct, lack: used - direct }));
  }

  delivered(period: Period, made: number, used: number): number {
    const direct = selfUsed(made, used, this.terms);
    const stored = this.storedIn(period, { surplus: made - direct, lack: used - direct });
    return this.deliveredOf(used, direct, stored);
  }

  forDraws(): OwnUse {
    return this;
  }

  private storedIn(period: Period, rest: { readonly surplus: number; readonly lack: number }): number {
    return dailyStored(this.battery, periodDays(period), rest);
  }

  /** What is used at home: as it is made, and out of the battery. */
  private deliveredOf(used: number, direct: number, stored: number): number {
    return Math.min(used, direct + roundedUnits(stored * this.battery.way, this.terms.step));
  }

  /** What is not given: used as it is made, and what goes into the battery. */
  private keptOf(made: number, direct: number, stored: number): number {
    return Math.min(made, direct + roundedUnits(stored / this.battery.way, this.terms.step));
  }
}
