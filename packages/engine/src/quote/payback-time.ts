import type { ExactFactor } from '../bill/index.ts';
import { exactParts, roundedText } from './exact-decimals.ts';
import type { Quote } from './quote.ts';

/**
 * When an outlay first comes back, as an exact value: the flow of a year is spread evenly over it. The same
 * moment as `simplePayback(flows).first`, for texts that have to come out the same everywhere.
 *
 * @param flows  whole 1/grid of money, one a year, the first now
 * @returns      years; null: not within the flows
 * @source 10 CFR 436.23 Estimated simple payback time, US DOE, 1996
 * @example
 * paybackWords(exactPayback([-300, 100, 300])) //=> "1.7 years"
 * exactPayback([-300, 100]) //=> null
 */
export function exactPayback(flows: readonly number[]): ExactFactor | null {
  let owed = 0;
  for (const [year, flow] of flows.entries()) {
    const before = owed;
    owed += flow;
    if (owed < 0) continue;
    if (year === 0) return exactParts(0, 1);
    // (year − 1) + what was owed ÷ flow
    return exactParts((year - 1) * flow - before, flow);
  }
  return null;
}

/**
 * The simple payback of a quote whose outlay is another: the price without the subsidy, for one.
 *
 * @param outlay  in whole 1/grid
 */
export function paybackOfOutlay({ years }: Pick<Quote, 'years'>, outlay: number): ExactFactor | null {
  return exactPayback([0 - outlay, ...years.map(({ net }) => net)]);
}

/**
 * A payback in words, rounded half-up to a tenth of a year.
 *
 * @example
 * paybackWords({ numerator: 9n, denominator: 2n }) //=> "4.5 years"
 * paybackWords(null) //=> "not within the life"
 */
export function paybackWords(payback: ExactFactor | null): string {
  return payback === null ? 'not within the life' : `${roundedText(payback, 1)} years`;
}
