import { periodDays, type Period } from '../../quantity/index.ts';
import type { MonthlyUnits } from '../quote-input.ts';
import type { Battery } from './battery.ts';
import { BatteryMonths } from './battery-month.ts';
import { monthOf, type ProfileTerms } from './profile-use.ts';

/** A battery beside a profile, and the months of the life. */
export interface BatteryTerms extends ProfileTerms {
  readonly battery: Battery;
  readonly periods: readonly Period[];
  /** Units of the first year by calendar month: what tables are made around. */
  readonly use: MonthlyUnits;
  readonly generation: MonthlyUnits;
}

/** What a battery does in the months of a life, one after the other. Doubles in Wh, not rounded. */
export interface BatterySource {
  /** Begin a life: the battery is empty. */
  readonly begin: () => void;
  /** The next month: its place in the life, what is made and used in it. */
  readonly run: (at: number, made: number, used: number) => void;
  /** Used at home in it: as it was made, or out of the battery. */
  readonly delivered: number;
  /** Not given to the grid in it. */
  readonly kept: number;
  /** Taken and given by time block, in any unit. */
  readonly taken: Float64Array;
  readonly given: Float64Array;
  /** What met inside the windows of each measure. */
  readonly met: Float64Array;
}

/** Every interval of the life in order of time: what the battery holds goes over from month to month. */
export class EveryInterval implements BatterySource {
  readonly taken: Float64Array;
  readonly given: Float64Array;
  readonly met: Float64Array;
  private readonly terms: BatteryTerms;
  private readonly months: BatteryMonths;

  constructor(terms: BatteryTerms) {
    this.terms = terms;
    this.months = new BatteryMonths(terms.battery, terms.profile);
    this.taken = this.months.dispatched.taken;
    this.given = this.months.dispatched.given;
    this.met = this.months.met;
  }

  begin(): void {
    this.months.dispatched.content = 0;
  }

  run(at: number, made: number, used: number): void {
    const { terms } = this;
    const days = periodDays(terms.periods[at] as Period);
    this.months.run(monthOf(terms, at), { made, used, days });
  }

  get delivered(): number {
    return this.months.delivered;
  }

  get kept(): number {
    return this.months.kept;
  }
}
