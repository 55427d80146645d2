import { roundLargeQuotient } from '../../quantity/index.ts';

/** Intervals in order of time: whole Wh used and made in each. */
export interface Intervals {
  readonly use: Float64Array;
  readonly generation: Float64Array;
}

/** What all intervals of a month come to: some intervals of it are shares of these. */
export interface IntervalTotals {
  readonly use: number;
  readonly generation: number;
}

/** As for factors: many times what the sum and the quotients can be off. */
const DOUBT = 2 ** -48;

/** Products of whole numbers below this are exact in doubles. */
const EXACT = 2 ** 26;

/** Which of two ratios is larger, by whole numbers. */
function comparedAcross(one: IntervalTotals, other: IntervalTotals): number {
  const { use, generation } = one;
  if (Math.max(use, generation, other.use, other.generation) < EXACT)
    return generation * other.use - other.generation * use;
  const cross = BigInt(generation) * BigInt(other.use) - BigInt(other.generation) * BigInt(use);
  return cross === 0n ? 0 : cross < 0n ? -1 : 1;
}

/**
 * Intervals by generation for each Wh used, the least first. Doubles of different ratios can only be the same where
 * whole numbers are large.
 */
function byRatio({ use, generation }: Intervals): {
  readonly order: number[];
  readonly ratios: Float64Array;
} {
  const ratios = Float64Array.from(use, (used, at) => (generation[at] as number) / used);
  const order = [...use.keys()].filter((at) => use[at] !== 0 || generation[at] !== 0);
  const at = (place: number): IntervalTotals => ({
    use: use[place] as number,
    generation: generation[place] as number,
  });
  order.sort((one, other) => {
    const [a, b] = [ratios[one] as number, ratios[other] as number];
    if (a !== b) return a < b ? -1 : 1;
    return comparedAcross(at(one), at(other));
  });
  return { order, ratios: Float64Array.from(order, (at) => ratios[at] as number) };
}

/**
 * What is used as it is made, for any use and generation with the shape of some intervals: the sum over intervals
 * of the smaller of both, in the time of a few comparisons.
 *
 * Use is the smaller one in all intervals from some ratio of generation to use on, in order of the ratio, and
 * generation before: two sums, made once for each place.
 *
 * @source  Photovoltaic self-consumption in buildings: A review, Luthander, Widén, Nilsson and Palm, Applied Energy
 *          142, 2015: the smaller of load and generation at each time
 */
export class Overlap {
  private readonly totals: IntervalTotals;
  private readonly ratios: Float64Array;
  private readonly use: Float64Array;
  private readonly generation: Float64Array;
  /** Wh used in the intervals from each place on. */
  private readonly above: Float64Array;
  /** Wh made in the intervals before each place. */
  private readonly below: Float64Array;

  /**
   * @param intervals  whole Wh; or windows of several intervals
   * @param totals     of the whole month, where these are only some of its intervals
   */
  constructor(intervals: Intervals, totals: IntervalTotals) {
    const { order, ratios } = byRatio(intervals);
    this.totals = totals;
    this.ratios = ratios;
    this.use = Float64Array.from(order, (at) => intervals.use[at] as number);
    this.generation = Float64Array.from(order, (at) => intervals.generation[at] as number);
    this.above = new Float64Array(order.length + 1);
    this.below = new Float64Array(order.length + 1);
    for (let at = order.length - 1; at >= 0; at -= 1)
      this.above[at] = (this.above[at + 1] as number) + (this.use[at] as number);
    for (let at = 0; at < order.length; at += 1)
      this.below[at + 1] = (this.below[at] as number) + (this.generation[at] as number);
  }

  /**
   * Units used as they are made, as a double.
   *
   * @param made  units of the month, and
   * @param used  in it, in whatever unit the result is wanted
   */
  value(made: number, used: number): number {
    const { use, generation } = this.totals;
    if (made === 0 || used === 0 || use === 0 || generation === 0) return 0;
    const place = this.placeOf((used / use) * (generation / made));
    return (used * (this.above[place] as number)) / use + (made * (this.below[place] as number)) / generation;
  }

  /**
   * The same, rounded half-up to whole steps: exact, by the double where that leaves no doubt.
   *
   * @param made  whole, and
   * @param used  whole
   */
  own(made: number, used: number, step: number): number {
    const top = this.value(made, used) / step + 0.5;
    const whole = Math.floor(top);
    const rest = top - whole;
    const doubt = top * DOUBT;
    return rest > doubt && 1 - rest > doubt ? whole * step : this.exactOwn(made, used, step);
  }

  /** The first place whose ratio is not below some ratio. */
  private placeOf(ratio: number): number {
    const { ratios } = this;
    let [low, high] = [0, ratios.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((ratios[middle] as number) < ratio) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private exactOwn(made: number, used: number, step: number): number {
    const { use, generation } = this.totals;
    if (made === 0 || used === 0 || use === 0 || generation === 0) return 0;
    const perUse = BigInt(used) * BigInt(generation);
    const perMade = BigInt(made) * BigInt(use);
    let [low, high] = [0, this.ratios.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      const [own, other] = [this.generation[middle] as number, this.use[middle] as number];
      if (BigInt(own) * perMade < BigInt(other) * perUse) low = middle + 1;
      else high = middle;
    }
    const numerator =
      perUse * BigInt(this.above[low] as number) + perMade * BigInt(this.below[low] as number);
    const denominator = BigInt(use) * BigInt(generation) * BigInt(step);
    return Number.parseInt(roundLargeQuotient(numerator, denominator, 'half-up').toString(), 10) * step;
  }
}
