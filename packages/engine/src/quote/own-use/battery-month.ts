import { DAY_MINUTES } from './check-profile.ts';
import type { Battery } from './battery.ts';
import { dispatch, emptyBattery, type Dispatched } from './dispatch.ts';
import type { ProfileMonth, ReadProfile } from './profile.ts';

/** A month that a battery is run through. */
export interface MonthTerms {
  /** Units of the month, thousandths. */
  readonly made: number;
  readonly used: number;
  /** Days of the month in the life: the profile may have another year's, or some of them. */
  readonly days: number;
}

/**
 * Runs a battery through months of a profile. A month whose profile has more or fewer days than the life is run
 * with as much energy a day as the life has, and what comes of it is taken in proportion.
 */
export class BatteryMonths {
  /** Of the month that was run last, in Wh of the profile's days. */
  readonly dispatched: Dispatched;
  private readonly battery: Battery;
  private readonly profile: ReadProfile;
  /** Months of the life in that month of the profile. */
  private span = 1;

  constructor(battery: Battery, profile: ReadProfile) {
    this.battery = battery;
    this.profile = profile;
    this.dispatched = emptyBattery(Math.max(1, profile.blocks.length));
  }

  run({ totals, block, use, generation }: ProfileMonth, { made, used, days }: MonthTerms): void {
    const { battery, profile, dispatched } = this;
    const { minutes } = profile;
    this.span = (use.length * minutes) / (days * DAY_MINUTES);
    const terms = {
      perUse: totals.use === 0 ? 0 : (used * this.span) / totals.use,
      perMade: totals.generation === 0 ? 0 : (made * this.span) / totals.generation,
      most: (battery.power * minutes) / 60,
      block: profile.blocks.length > 0 ? block : null,
    };
    dispatch({ use, generation }, battery, terms, dispatched);
  }

  /** Wh used at home in the month of the life, as they were made or out of the battery. */
  get delivered(): number {
    const { direct, discharged } = this.dispatched;
    return (direct + discharged) / this.span;
  }

  /** Wh not given to the grid in it. */
  get kept(): number {
    const { direct, charged } = this.dispatched;
    return (direct + charged) / this.span;
  }
}
