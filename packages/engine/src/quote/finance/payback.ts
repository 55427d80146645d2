import { growthOf } from './check-arguments.ts';

/** A moment at which the sum of the flows up to it passes 0. */
export interface Crossing {
  /** Years since the first flow, interpolated within the year. */
  readonly at: number;
  /** Whether the outlay is recovered there; false: it is owed again, as after a part was replaced. */
  readonly recovered: boolean;
}

/** When an outlay comes back. */
export interface Payback {
  /** The sum of the flows up to each year. */
  readonly cumulative: readonly number[];
  /** Every crossing, in order. */
  readonly crossings: readonly Crossing[];
  /** Years to the first moment at which all is recovered; null: not within the flows. */
  readonly first: number | null;
  /** Years to the moment from which all stays recovered; null: at the end of the flows it is not. */
  readonly last: number | null;
}

function crossingsOf(cumulative: readonly number[]): readonly Crossing[] {
  return cumulative.slice(1).flatMap((after, year) => {
    const before = cumulative[year] ?? 0;
    if (before < 0 === after < 0) return [];
    return [{ at: year + before / (before - after), recovered: after >= 0 }];
  });
}

function paybackOf(cumulative: readonly number[]): Payback {
  const crossings = crossingsOf(cumulative);
  const recoveries = crossings.filter(({ recovered }) => recovered).map(({ at }) => at);
  const starts = (cumulative[0] ?? 0) >= 0 ? [0] : [];
  const times = [...starts, ...recoveries];
  const isOwed = (cumulative.at(-1) ?? 0) < 0;
  return { cumulative, crossings, first: times[0] ?? null, last: isOwed ? null : (times.at(-1) ?? null) };
}

/**
 * When an outlay comes back without discounting: every crossing of 0 by the sum of the flows, with the flow
 * of a year spread evenly over it. Sums are exact.
 *
 * @param flows  whole numbers of a grid of money (coins), one a year, the first now
 * @returns      sums on the same grid, and years in doubles, not rounded
 * @throws RangeError where a flow or a sum is no whole number up to 2^53: a caller's bug
 * @source 10 CFR 436.23 Estimated simple payback time, US DOE, 1996: years until savings less costs beside
 *         fuel equal the outlay, nothing discounted
 * @example
 * simplePayback([-100, 60, 80]).first //=> 1.5
 * simplePayback([-100, 60]).first //=> null
 */
export function simplePayback(flows: readonly number[]): Payback {
  let sum = 0;
  const cumulative = flows.map((flow) => {
    sum += flow;
    if (!Number.isSafeInteger(flow) || !Number.isSafeInteger(sum)) {
      throw new RangeError(`flows and their sums must be whole, found ${flow} and ${sum}`);
    }
    return sum;
  });
  return paybackOf(cumulative);
}

/**
 * When an outlay comes back by flows discounted to now, the discounted flow of a year spread evenly over it.
 *
 * @param rate   a part of one a year, above −1
 * @param flows  money in any unit, one a year, the first now
 * @returns      sums and years in doubles, not rounded
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * discountedPayback(0.25, [-100, 50, 150]).first //=> 1.625
 */
export function discountedPayback(rate: number, flows: readonly number[]): Payback {
  const growth = growthOf(rate);
  let sum = 0;
  return paybackOf(
    flows.map((flow, year) => {
      sum += flow / growth ** year;
      return sum;
    }),
  );
}
