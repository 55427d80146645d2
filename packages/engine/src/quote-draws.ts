import type { Finding, Outcome } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { ExactFactor } from './bill/index.ts';
import type { Raises } from './amounts-raises.ts';
import type { LifeBiller } from './quote-life.ts';
import { prepareCase } from './quote-cases.ts';
import { chargeFactors, type PreparedQuote } from './quote-prepare.ts';
import {
  drawSource,
  drawTerms,
  fillDrawnUnits,
  makeDraw,
  makeLifeUnits,
  outlayOf,
  ownUseOf,
  rateOf,
  upkeepFactors,
  yearCosts,
  type Draw,
  type DrawBasis,
  type DrawResults,
} from './quote/index.ts';

/** Draws of a block; a block can be worked out by itself, on any thread. */
export const BLOCK = 100;

/** Works out random draws of a quote, block by block. */
export interface QuoteDrawer {
  /** Every number of a block: the same for the same seed, whoever works it out. */
  readonly draw: (block: number) => DrawResults;
}

const SCALE = 2 ** 60;

/** The very value of a double above 2^-8. */
function exactDouble(value: number): ExactFactor {
  return { numerator: BigInt(value * SCALE), denominator: BigInt(SCALE) };
}

/** Factors of rising charges that each draw writes anew. */
class DrawnRaises implements Raises {
  readonly rows: Int32Array;
  readonly columns: number;
  readonly factors: Float64Array;
  private readonly rises: readonly number[];
  private readonly years: number;

  constructor(rises: readonly number[], years: number) {
    this.rises = rises;
    this.years = years;
    this.columns = rises.length;
    this.factors = new Float64Array(years * rises.length);
    this.rows = Int32Array.from({ length: years * 12 }, (_, at) => Math.floor(at / 12));
  }

  readonly exact = (row: number, column: number): ExactFactor =>
    exactDouble(this.factors[row * this.columns + column] as number);

  write(more: number): this {
    const { rises, years, columns, factors } = this;
    for (let column = 0; column < columns; column += 1) {
      const growth = Math.max(0.9, 1 + (rises[column] as number) + more);
      let factor = 1;
      for (let year = 0; year < years; year += 1) {
        factors[year * columns + column] = factor;
        factor *= growth;
      }
    }
    return this;
  }
}

/** The savings of each year in a draw: of the base rule, and from the policy's year on by the other. */
function yearSavings(
  billers: readonly (LifeBiller | null)[],
  years: number,
  policyAfter: number,
): Float64Array {
  const [base, policy] = billers;
  const savings = new Float64Array(years);
  for (let year = 0; year < years; year += 1) {
    const own = year >= policyAfter && policy != null ? policy : base;
    if (own == null) continue;
    const { before, after, surplus, grid } = own.bills;
    const paid = base?.bills.before ?? before;
    let saved = 0;
    for (let at = year * 12; at < year * 12 + 12; at += 1) {
      saved += (paid[at] as number) - (after[at] as number) + (surplus[at] as number);
    }
    savings[year] = saved / grid;
  }
  return savings;
}

function roomFor(years: number): DrawResults {
  return {
    count: BLOCK,
    unbilled: 0,
    payback: new Float64Array(BLOCK),
    saving: new Float64Array(BLOCK),
    lifeNet: new Float64Array(BLOCK),
    cumulative: new Float64Array(BLOCK * (years + 1)),
  };
}

/** The draws that could be billed, where some could not. */
function firstOf({ payback, saving, lifeNet, cumulative }: DrawResults, count: number): DrawResults {
  const width = cumulative.length / BLOCK;
  return {
    count,
    unbilled: BLOCK - count,
    payback: payback.slice(0, count),
    saving: saving.slice(0, count),
    lifeNet: lifeNet.slice(0, count),
    cumulative: cumulative.slice(0, count * width),
  };
}

/** Write what a draw comes to. */
function record(
  results: DrawResults,
  at: number,
  {
    savings,
    costs,
    price,
  }: { readonly savings: Float64Array; readonly costs: Float64Array; readonly price: number },
): void {
  const width = savings.length + 1;
  let sum = -price;
  let payback = price <= 0 ? 0 : Infinity;
  results.cumulative[at * width] = sum;
  for (let year = 0; year < savings.length; year += 1) {
    const net = (savings[year] as number) - (costs[year] as number);
    if (payback === Infinity && sum + net >= 0) payback = year + -sum / net;
    sum += net;
    results.cumulative[at * width + year + 1] = sum;
  }
  results.payback[at] = payback;
  results.saving[at] = savings[0] ?? 0;
  results.lifeNet[at] = sum;
}

/**
 * Make the drawer of a quote: each draw varies generation, use, rises, wear and the policy as the quote says
 * they are uncertain, and bills the whole life by the same engine.
 *
 * @param tariff  as it is today: for the bills under the policy
 * @returns       null where the policy cannot be billed
 */
export function quoteDrawer(prepared: PreparedQuote, tariff: Tariff): Outcome<QuoteDrawer | null> {
  const { input, biller, grid } = prepared;
  const { document, years } = input;
  const terms = drawTerms(document);
  const policy = policyBiller(prepared, tariff);
  if (policy.findings.length > 0) return { value: null, findings: policy.findings };
  const { price, subsidy } = outlayOf(document, grid, input.watts);
  const yearly = yearCosts(document, { grid, watts: input.watts, factors: upkeepFactors(document, years) });
  const costs = Float64Array.from(
    yearly,
    ({ maintenance, replacement }) => (maintenance + replacement) / grid,
  );
  const rises = chargeFactors(input).raised.map((id) => rateOf(document.escalation.charges[id] ?? '0'));
  const raises = new DrawnRaises(rises, years);
  // Where rises are certain their factors are exact.
  const isDrawn = rises.length > 0 && terms.escalation !== 0;
  const { degradation } = document;
  const basis: DrawBasis = {
    input,
    own: ownUseOf(prepared).forDraws(),
    terms,
    wear: [rateOf(degradation.first), rateOf(degradation.later)],
  };
  const units = makeLifeUnits(years * 12, prepared.units.width);
  const one = (draw: Draw): Float64Array | null => {
    fillDrawnUnits(basis, draw, units);
    const used = isDrawn ? raises.write(terms.escalation * draw.escalation) : prepared.raises;
    const found = [
      ...biller.run(units, used, 'both'),
      ...(draw.policyAfter < years ? (policy.value?.run(units, used, 'with') ?? []) : []),
    ];
    if (found.length > 0) return null;
    return yearSavings([biller, policy.value], years, draw.policyAfter);
  };
  const draw = (block: number): DrawResults => {
    const results = roomFor(years);
    const source = drawSource(terms, block, years);
    const drawn = makeDraw(years);
    let count = 0;
    for (let at = 0; at < BLOCK; at += 1) {
      source.next(drawn);
      const savings = one(drawn);
      if (savings === null) continue;
      record(results, count, { savings, costs, price: (price - subsidy) / grid });
      count += 1;
    }
    // The bills of the quote itself are made again.
    biller.run(prepared.units, prepared.raises, 'both');
    return count === BLOCK ? results : firstOf(results, count);
  };
  return { value: { draw }, findings: [] };
}

/** Bills of the whole life under the policy that may come. */
function policyBiller(
  { input, profile, hasBattery: withBattery }: PreparedQuote,
  tariff: Tariff,
): { readonly value: LifeBiller | null; readonly findings: readonly Finding[] } {
  const { policies = [], uncertainty } = input.document;
  const policy = policies.find(({ name }) => name === uncertainty?.policy?.name);
  if (policy === undefined) return { value: null, findings: [] };
  // Its bills are made of the units of the draws: its own share of own use is for its case alone.
  const change = { policy: { policy: { ...policy, selfUse: undefined }, from: 1 } };
  const one = { id: 'policy', name: policy.name, change };
  const { prepared, findings } = prepareCase(input, tariff, one, { profile, withBattery });
  return { value: prepared?.biller ?? null, findings };
}
