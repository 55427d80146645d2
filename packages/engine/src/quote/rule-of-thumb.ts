import { exactDecimal, exactPlaces, roundedText } from './exact-decimals.ts';
import { timesFactor } from './factors.ts';

/** A rule of thumb for what a plant brings, as it was published. */
export interface ThumbRule {
  /** kWh for a kW of plant and a day. */
  readonly unitsPerKilowattDay: string;
  readonly daysPerYear: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number;
}

/** Twelve months of thirty days, and every unit worth the same: to check an order of magnitude, not to offer. */
export const RULE_OF_THUMB: ThumbRule = {
  unitsPerKilowattDay: '4',
  daysPerYear: '360',
  title: 'PM Surya Ghar scheme',
  publisher: 'Online38media',
  year: 2024,
};

/** What a rule of thumb comes to. */
export interface ThumbEstimate {
  /** It is no quote: no month, no bill and no rate of this house is in it. */
  readonly isRuleOfThumb: true;
  /** kWh a year for a kW. */
  readonly unitsPerKilowatt: string;
  /** kWh a year. */
  readonly units: string;
  /** Money a year. */
  readonly saving: string;
  readonly rule: ThumbRule;
}

/** A product of decimal texts, exact. */
function product(...texts: readonly string[]): string {
  const value = texts.map(exactDecimal).reduce(timesFactor);
  return roundedText(value, exactPlaces(value) ?? 12);
}

/**
 * What a plant brings in a year by the rule of thumb of the scheme: 4 units for each kW and day, 360 days, all at one
 * price. It is marked as what it is, and nothing of a quote is worked out with it.
 *
 * @param kilowatts  of the plant, as decimal text, 0 or more
 * @param price      money for a unit, as decimal text
 * @returns          kWh and money as exact decimal texts
 * @throws RangeError where a text is no decimal: a caller's bug
 * @source PM Surya Ghar scheme, Online38media, 2024: 3 kW × 4 units × 30 × 12 × 7 = 30,240
 * @example
 * byRuleOfThumb('2', '5').saving //=> "14400"
 */
export function byRuleOfThumb(kilowatts: string, price: string): ThumbEstimate {
  const { unitsPerKilowattDay: daily, daysPerYear: days } = RULE_OF_THUMB;
  return {
    isRuleOfThumb: true,
    unitsPerKilowatt: product(daily, days),
    units: product(kilowatts, daily, days),
    saving: product(kilowatts, daily, days, price),
    rule: RULE_OF_THUMB,
  };
}
