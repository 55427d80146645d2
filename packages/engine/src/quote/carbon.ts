import { compared, exactDecimal, exactPlaces, lessExact, roundedText } from './exact-decimals.ts';
import { timesFactor } from './factors.ts';

/** What a grid gives off for one more unit: by plants that run anyway, and by those built lately. */
export interface Margins {
  /** kg CO2 per kWh, or t per MWh: the same number. */
  readonly operating: string;
  readonly build: string;
  /** Percent by which the operating margin counts; the build margin counts by the rest. */
  readonly operatingPercent: string;
}

/**
 * The combined margin of a grid: its operating and its build margin, each by its weight.
 *
 * 75 and 25 percent are usual for wind and solar, 50 and 50 for other plants; which of them is meant has to be said.
 *
 * @returns exact decimal text in the unit of the margins, not rounded
 * @throws RangeError where a text is no decimal, or the weight is not from 0 to 100: a caller's bug
 * @source Tool to calculate the emission factor for an electricity system (TOOL07), CDM Executive Board, UNFCCC,
 *         2018 (version 7): from memory
 * @example
 * combinedMargin({ operating: '0.8', build: '0.4', operatingPercent: '75' }) //=> "0.7"
 */
export function combinedMargin({ operating, build, operatingPercent }: Margins): string {
  const [weight, all] = [exactDecimal(operatingPercent), exactDecimal('100')];
  const rest = lessExact(all, weight);
  if (weight.numerator < 0n || compared(weight, all) > 0)
    throw new RangeError(`a weight from 0 to 100 percent, found ${operatingPercent}`);
  const one = timesFactor(exactDecimal(operating), weight);
  const other = timesFactor(exactDecimal(build), rest);
  const sum = {
    numerator: one.numerator * other.denominator + other.numerator * one.denominator,
    denominator: one.denominator * other.denominator * 100n,
  };
  // Products of decimals over a hundred always end.
  return roundedText(sum, exactPlaces(sum) ?? 12);
}
