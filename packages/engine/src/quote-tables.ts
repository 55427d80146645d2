import { dayText, exactText, quotientText, wholeToDecimal, type Quotient } from './quantity/index.ts';
import type { DrawSummary, Quote } from './quote/index.ts';
import type { CaseResult } from './quote-cases.ts';
import type { BatterySizes } from './quote-battery-sizes.ts';
import type { SizePoint, Sizes } from './quote-sizes.ts';

/** Everything that is worked out of a quote. */
export interface QuoteResult {
  readonly quote: Quote;
  /** Where own use is not known: the quote with as much of it as use and generation allow; else null. */
  readonly mostOwnUse: Quote | null;
  readonly cases: readonly CaseResult[];
  readonly sizes: Sizes;
  /** Sizes beside other batteries; empty: the quote has none. */
  readonly batteries: readonly BatterySizes[];
  /** What each month of the first year is billed for; null: by no charge for units. */
  readonly billed: readonly (Quotient | null)[];
  /** null: nothing was drawn. */
  readonly draws: DrawSummary | null;
}

/** Decimals of what is a projection, and no amount: years, rates and ratios, money for a unit. */
export const PROJECTION_PLACES = { years: 4, part: 6, perUnit: 4 } as const;
/** Larger doubles are whole, and have nothing to round. */
const WHOLE_FROM = 2 ** 53;

/**
 * A projection in a double as decimal text, rounded half-up: for people and files to read, never to go on with.
 *
 * @param value  finite
 * @example
 * projectionText(4.597, 1) //=> "4.6"
 * projectionText(-0.04, 1) //=> "0.0"
 */
export function projectionText(value: number, places: number): string {
  const scaled = value * 10 ** places;
  const whole = Math.abs(scaled) >= WHOLE_FROM ? scaled : Math.floor(scaled + 0.5);
  return wholeToDecimal(BigInt(whole), places);
}

/** A projection that may not be there: null, or endless. */
export function optionalText(value: number | null, places: number): string | null {
  return value === null || !Number.isFinite(value) ? null : projectionText(value, places);
}

/**
 * What each unit earns that a size makes more than the one before: money for a unit.
 *
 * @param grid  of the quote
 * @returns     null for the first size, and where no more is made
 * @example
 * savingOfAddedUnits([{ generation: 1000, saving: 700 }, { generation: 3000, saving: 1300 }], 1, 100).numerator //=> 600000n
 */
export function savingOfAddedUnits(
  points: readonly Pick<SizePoint, 'generation' | 'saving'>[],
  at: number,
  grid: number,
): Quotient | null {
  const [before, point] = [points[at - 1], points[at]];
  if (before === undefined || point === undefined || point.generation <= before.generation) return null;
  return {
    numerator: BigInt(point.saving - before.saving) * 1000n,
    denominator: (point.generation - before.generation) * grid,
  };
}

/**
 * What is left in a month of the first year, on the average, once the instalment of the loan is paid: below 0
 * where the plant saves less than that.
 *
 * @returns null without a loan
 */
export function leftAfterInstalment({ years, loan, grid }: Quote): Quotient | null {
  const [first] = years;
  if (loan === null || first === undefined) return null;
  // An instalment is in its own decimals.
  const scale = 10 ** loan.places;
  const numerator = BigInt(first.net) * BigInt(scale) - 12n * BigInt(loan.instalment) * BigInt(grid);
  return { numerator, denominator: 12 * grid * scale };
}

/**
 * What the plant is paid for in all where part of it is borrowed: the price with the interest and the fees of the loan.
 *
 * @returns null without a loan
 */
export function priceWithLoan({ outlay, loan, grid }: Quote): Quotient | null {
  if (loan === null) return null;
  // A loan is in its own decimals.
  const scale = 10 ** loan.places;
  return {
    numerator: BigInt(outlay.price) * BigInt(scale) + BigInt(loan.cost) * BigInt(grid),
    denominator: grid * scale,
  };
}

/** What a month of the first year saves after upkeep, on the average. */
export function netInMonth({ years, grid }: Quote): Quotient {
  return { numerator: years[0]?.net ?? 0, denominator: grid * 12 };
}

const units = (thousandths: number): string => exactText(thousandths, 1000);

function moneyText({ grid }: Pick<Quote, 'grid'>): (amount: number) => string {
  return (amount) => exactText(amount, grid);
}

function monthRows(quote: Quote, billed: QuoteResult['billed']) {
  const money = moneyText(quote);
  const billedText = (one: Quotient | null | undefined): string | null =>
    one == null ? null : exactText(one.numerator, one.denominator);
  return quote.months.map(({ period, isFilled, ...month }, at) => ({
    from: dayText(period.from),
    to: dayText(period.to),
    isFilled,
    use: units(month.use),
    generation: units(month.generation),
    selfUse: units(month.selfUse),
    import: units(month.imported),
    export: units(month.exported),
    billed: billedText(billed[at]),
    bank: units(month.bank),
    before: money(month.before),
    after: money(month.after),
    surplus: money(month.surplus),
  }));
}

function yearRows(quote: Quote) {
  const money = moneyText(quote);
  return quote.years.map((year) => ({
    year: String(year.year),
    use: units(year.use),
    generation: units(year.generation),
    selfUse: units(year.selfUse),
    import: units(year.imported),
    export: units(year.exported),
    before: money(year.before),
    after: money(year.after),
    surplus: money(year.surplus),
    saving: money(year.saving),
    maintenance: money(year.maintenance),
    replacement: money(year.replacement),
    cost: money(year.cost),
    net: money(year.net),
    instalments: money(year.instalments),
    cumulative: money(year.cumulative),
  }));
}

/** What a quote and each of its cases come to, side by side, as texts. */
export function comesTo(quote: Quote) {
  const { measures, years } = quote;
  const money = moneyText(quote);
  return {
    saving: money(years[0]?.saving ?? 0),
    payback: optionalText(measures.simple.first, PROJECTION_PLACES.years),
    discountedPayback: optionalText(measures.discounted.first, PROJECTION_PLACES.years),
    lifeNet: money(measures.lifeNet),
    netPresentValue: money(measures.netPresentValue),
    rates: measures.rates.rates.map((rate) => projectionText(rate, PROJECTION_PLACES.part)),
    smallestBill: money(measures.smallestBill),
    largestBill: money(measures.largestBill),
  };
}

const NOT_BILLED = {
  saving: null,
  payback: null,
  discountedPayback: null,
  lifeNet: null,
  netPresentValue: null,
  rates: null,
  smallestBill: null,
  largestBill: null,
};

function caseRows(cases: readonly CaseResult[]) {
  return cases.map(({ id, name, quote }) => ({
    id,
    name,
    ...(quote === null ? NOT_BILLED : comesTo(quote)),
  }));
}

function sizeRows({ points, onlySurplusFrom }: Sizes, quote: Quote) {
  const money = moneyText(quote);
  return points.map((point, at) => {
    const added = savingOfAddedUnits(points, at, quote.grid);
    return {
      kWp: exactText(point.watts, 1000),
      isQuoted: point.watts === quote.input.watts,
      isOnlySurplus: onlySurplusFrom !== null && point.watts >= onlySurplusFrom.watts,
      generation: units(point.generation),
      after: money(point.after),
      saving: money(point.saving),
      savingOfAddedUnit:
        added === null ? null : quotientText(added.numerator, added.denominator, PROJECTION_PLACES.perUnit),
      netPrice: money(point.netPrice),
      payback: optionalText(point.payback, PROJECTION_PLACES.years),
      netPresentValue: money(point.netPresentValue),
    };
  });
}

/** The rows of all sizes beside each battery. */
function batteryRows(batteries: readonly BatterySizes[], quote: Quote) {
  return batteries.flatMap(({ wattHours, sizes }) =>
    sizeRows(sizes, quote).map((row) => ({ batteryKWh: exactText(wattHours, 1000), ...row })),
  );
}

function bandRows({ band }: DrawSummary, places: number) {
  return band.p50.map((middle, year) => ({
    year: String(year),
    p10: projectionText(band.p10[year] ?? 0, places),
    p50: projectionText(middle, places),
    p90: projectionText(band.p90[year] ?? 0, places),
  }));
}

/** The tables behind a quote, each a list of flat rows of texts. */
export interface QuoteTables {
  readonly months: ReturnType<typeof monthRows>;
  readonly years: ReturnType<typeof yearRows>;
  readonly cases: ReturnType<typeof caseRows>;
  readonly sizes: ReturnType<typeof sizeRows>;
  /** The same beside each battery; empty where the quote has none. */
  readonly batteries: ReturnType<typeof batteryRows>;
  /** What is left of the price, year by year, in random draws; empty where nothing was drawn. */
  readonly band: ReturnType<typeof bandRows>;
}

/**
 * The tables behind a quote: money and units exact; years, rates and money for a unit rounded half-up, to four
 * decimals or six of a part; draws to the coin.
 *
 * @param places  decimals of the currency
 */
export function quoteTables(
  { quote, cases, sizes, batteries, billed, draws }: Omit<QuoteResult, 'mostOwnUse'>,
  places: number,
): QuoteTables {
  return {
    months: monthRows(quote, billed),
    years: yearRows(quote),
    cases: caseRows(cases),
    sizes: sizeRows(sizes, quote),
    batteries: batteryRows(batteries, quote),
    band: draws === null ? [] : bandRows(draws, places),
  };
}
