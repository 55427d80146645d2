import type { PreparedQuote } from './quote-prepare.ts';
import {
  exactPresentValue,
  fillUnits,
  makeLifeUnits,
  nearestDouble,
  outlayOf,
  ownUseOf,
  simplePayback,
  timesFactor,
  upkeepFactors,
  yearCosts,
  type LifeUnits,
  type YearFactors,
} from './quote/index.ts';

/** What a plant of some size comes to: units in whole thousandths, money in whole 1/grid of the quote. */
export interface SizePoint {
  readonly watts: number;
  /** Units of the first year. */
  readonly generation: number;
  /** Bills with it in the first year. */
  readonly after: number;
  /** Saving of the first year, before maintenance. */
  readonly saving: number;
  readonly netPrice: number;
  /** Years until the price has first come back; null: not within the life. */
  readonly payback: number | null;
  /** Years from which it stays so; another than the first where it is owed again; null: at the end it is owed. */
  readonly paybackForGood: number | null;
  readonly netPresentValue: number;
}

/** Sizes in a row. */
export interface SizeRange {
  /** Watts of the smallest. */
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** What plants of some sizes come to. */
export interface Sizes {
  readonly points: readonly SizePoint[];
  /**
   * The first size that lowers no bill of the first year any further than the one before: another unit earns
   * only what surplus is paid. null: none of these.
   */
  readonly onlySurplusFrom: SizePoint | null;
}

/** Generation of another size: by capacity, so that units are rounded only once. */
function sizedFactors({ exact }: YearFactors, watts: number, quoted: number): YearFactors {
  const ratio = { numerator: BigInt(watts), denominator: BigInt(quoted) };
  const sized = exact.map((factor) => timesFactor(factor, ratio));
  return { exact: sized, doubles: Float64Array.from(sized, nearestDouble) };
}

/** What the years of one size come to. */
function pointOf(
  { input, biller, grid }: PreparedQuote,
  {
    watts,
    units,
    growth,
  }: { readonly watts: number; readonly units: LifeUnits; readonly growth: YearFactors },
): SizePoint {
  const { bills } = biller;
  const times = grid / bills.grid;
  const { price, subsidy } = outlayOf(input.document, grid, watts);
  // A subsidy of one amount stays, up to the price: more than that no quote may count.
  const netPrice = Math.max(0, price - subsidy);
  const costs = yearCosts(input.document, { grid, watts, factors: growth });
  const savings = costs.map((_, year) => savingIn(bills, year) * times);
  const flows = [
    0 - netPrice,
    ...costs.map((cost, year) => (savings[year] ?? 0) - cost.maintenance - cost.replacement),
  ];
  const { first, last } = simplePayback(flows);
  return {
    watts,
    generation: firstYear(units.generation),
    after: firstYear(bills.after) * times,
    saving: savings[0] ?? 0,
    netPrice,
    payback: first,
    paybackForGood: last,
    netPresentValue: exactPresentValue(input.document.discountRate, flows),
  };
}

const firstYear = (values: Float64Array): number =>
  values.subarray(0, 12).reduce((sum, value) => sum + value, 0);

/** What the bills of a year are lower with the plant, with surplus. */
function savingIn({ before, after, surplus }: PreparedQuote['biller']['bills'], year: number): number {
  let saved = 0;
  for (let at = year * 12; at < year * 12 + 12; at += 1) {
    saved += (before[at] as number) - (after[at] as number) + (surplus[at] as number);
  }
  return saved;
}

/**
 * What plants of other sizes would save: generation, price and upkeep by capacity (items marked as fixed stay),
 * own use by the same share up to what the house uses, or by the same profile, the same battery, the same bills
 * without a plant.
 *
 * The bills of the quote itself are worked out anew afterwards.
 *
 * @param prepared  its bills are made
 */
export function quoteSizes(prepared: PreparedQuote, { from, step, count }: SizeRange): Sizes {
  const { input, biller, raises, units: quoted } = prepared;
  const own = ownUseOf(prepared);
  const units = makeLifeUnits(input.years * 12, quoted.width);
  const growth = upkeepFactors(input.document, input.years);
  const points: SizePoint[] = [];
  for (let at = 0; at < count; at += 1) {
    const watts = from + step * at;
    const generationFactors = sizedFactors(input.generationFactors, watts, input.watts);
    fillUnits({ ...input, generationFactors, watts }, own, units);
    if (biller.run(units, raises, 'with').length > 0) continue;
    points.push(pointOf(prepared, { watts, units, growth }));
  }
  biller.run(quoted, raises, 'with');
  const flat = points.find(({ after }, at) => at > 0 && after >= (points[at - 1]?.after ?? Infinity));
  return { points, onlySurplusFrom: flat ?? null };
}
