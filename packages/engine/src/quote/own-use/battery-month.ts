import { DAY_MINUTES } from './local-minutes.ts';
import type { Battery } from './battery.ts';
import { dispatch, emptyBattery, type Dispatched } from './dispatch.ts';
import { metInside } from './month-windows.ts';
import type { MonthSpan, ProfileMonth, ReadProfile } from './profile.ts';

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
  /** What met in that month inside the windows of each measure, in Wh of the life. */
  readonly met: Float64Array;
  private readonly battery: Battery;
  private readonly profile: ReadProfile;
  /** Months of the life in that month of the profile. */
  private span = 1;
  /** Each interval of that month by channel; of no length where no measure asks for them. */
  private readonly each: Readonly<Record<'import' | 'export' | 'generation', Float64Array>>;

  constructor(battery: Battery, profile: ReadProfile) {
    this.battery = battery;
    this.profile = profile;
    this.dispatched = emptyBattery(Math.max(1, profile.blocks.length));
    this.met = new Float64Array(profile.windows.length);
    const longest = Math.max(...profile.months.map(({ use }) => use.length));
    const room = (): Float64Array => new Float64Array(profile.windows.length === 0 ? 0 : longest);
    this.each = { import: room(), export: room(), generation: room() };
  }

  run(month: ProfileMonth, { made, used, days }: MonthTerms): void {
    const { totals, block, use, generation } = month;
    const { battery, profile, dispatched, each } = this;
    const { minutes, windows } = profile;
    this.span = (use.length * minutes) / (days * DAY_MINUTES);
    const terms = {
      perUse: totals.use === 0 ? 0 : (used * this.span) / totals.use,
      perMade: totals.generation === 0 ? 0 : (made * this.span) / totals.generation,
      most: (battery.power * minutes) / 60,
      block: profile.blocks.length > 0 ? block : null,
      each: windows.length > 0 ? { taken: each.import, given: each.export } : undefined,
    };
    dispatch({ use, generation }, battery, terms, dispatched);
    if (windows.length > 0) this.net(month, terms.perMade);
  }

  /** What was taken and given in the same window meets there. */
  private net({ generation, spans }: ProfileMonth, perMade: number): void {
    const { each, met, profile } = this;
    const own = (channel: keyof typeof each): Float64Array => each[channel].subarray(0, generation.length);
    for (let at = 0; at < generation.length; at += 1)
      each.generation[at] = (generation[at] as number) * perMade;
    profile.windows.forEach(({ of, less, span }, index) => {
      met[index] = metInside(own(of), own(less), (spans[span] as MonthSpan).groups) / this.span;
    });
  }

  /** Wh taken or given in the month of the life, by time block. */
  ofLife(what: 'taken' | 'given'): Float64Array {
    return this.dispatched[what].map((value) => value / this.span);
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
