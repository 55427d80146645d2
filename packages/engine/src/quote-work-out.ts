import { calendarDay, wholeToDecimal, decimalPlaces, decimalToWhole } from './quantity/index.ts';
import { batteryResultOf } from './quote-battery.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import {
  dayOneOf,
  instalmentsIn,
  loanOf,
  measuresOf,
  moneyGrid,
  outlayOf,
  upkeepFactors,
  yearCosts,
  type LifeUnits,
  type OwnUseBasis,
  type Quote,
  type QuoteMonth,
  type QuoteYear,
} from './quote/index.ts';

const sum = (values: Float64Array, from: number, count: number): number => {
  let total = 0;
  for (let at = from; at < from + count; at += 1) total += values[at] as number;
  return total;
};

/** A column of the units of so many months with the plant. */
function column({ withPlant, width }: LifeUnits, place: number, from: number, count: number): number {
  let total = 0;
  for (let at = from; at < from + count; at += 1) total += withPlant[at * width + place] as number;
  return total;
}

/** The months of the first year. */
function monthsOf({ biller, units, grid, input }: PreparedQuote): readonly QuoteMonth[] {
  const { bills, periods } = biller;
  const times = grid / bills.grid;
  return periods.slice(0, 12).map((period, at) => ({
    period,
    isFilled: input.filled.includes(calendarDay(period.from).month),
    use: units.use[at] as number,
    generation: units.generation[at] as number,
    selfUse: units.selfUse[at] as number,
    imported: column(units, 0, at, 1),
    exported: column(units, 1, at, 1),
    bank: bills.bank[at] as number,
    before: (bills.before[at] as number) * times,
    after: (bills.after[at] as number) * times,
    surplus: (bills.surplus[at] as number) * times,
  }));
}

/** What the bills of a year come to. */
function billsOf({ biller, units, grid }: PreparedQuote, at: number) {
  const { bills } = biller;
  const times = grid / bills.grid;
  const from = at * 12;
  const before = sum(bills.before, from, 12) * times;
  const after = sum(bills.after, from, 12) * times;
  const surplus = sum(bills.surplus, from, 12) * times;
  return {
    year: at + 1,
    use: sum(units.use, from, 12),
    generation: sum(units.generation, from, 12),
    selfUse: sum(units.selfUse, from, 12),
    imported: column(units, 0, from, 12),
    exported: column(units, 1, from, 12),
    before,
    after,
    surplus,
    saving: before - after + surplus,
  };
}

/** Kilograms of CO2 for so many thousandths of a unit, as exact text. */
function kilograms(factor: string, thousandths: number): string {
  const places = decimalPlaces(factor);
  return wholeToDecimal(BigInt(decimalToWhole(factor, places)) * BigInt(thousandths), places + 3);
}

function carbonOf({ document }: PreparedQuote['input'], years: readonly QuoteYear[]): Quote['carbon'] {
  const { carbon } = document;
  if (carbon === undefined) return null;
  const all = years.reduce((total, { generation }) => total + generation, 0);
  return { year: kilograms(carbon.factor, years[0]?.generation ?? 0), life: kilograms(carbon.factor, all) };
}

function ownUseBasis({ input, profile }: PreparedQuote): OwnUseBasis {
  if (profile !== null) return 'profile';
  return input.share === null ? 'unknown' : 'share';
}

/**
 * Work a quote out: the months of its first year, every year of its life, and what they come to.
 *
 * @param prepared     its bills are made
 * @param withSubsidy  false: as if it were refused
 */
export function workOutQuote(prepared: PreparedQuote, withSubsidy = true): Quote {
  const { input, grid, tariff } = prepared;
  const { document } = input;
  const whole = outlayOf(document, grid, input.watts);
  const outlay = withSubsidy ? whole : { ...whole, subsidy: 0 };
  const loan = loanOf(document, moneyGrid(tariff.document.currency));
  const factors = upkeepFactors(document, input.years);
  const costs = yearCosts(document, { grid, watts: input.watts, factors });
  const netPrice = outlay.price - outlay.subsidy;
  let cumulative = 0 - netPrice;
  const years = costs.map(({ maintenance, replacement }, at): QuoteYear => {
    const bills = billsOf(prepared, at);
    const cost = maintenance + replacement;
    const net = bills.saving - cost;
    cumulative += net;
    return {
      ...bills,
      maintenance,
      replacement,
      cost,
      net,
      instalments: instalmentsIn(loan, at + 1, grid),
      cumulative,
    };
  });
  const months = monthsOf(prepared);
  return {
    ownUse: ownUseBasis(prepared),
    input,
    currency: tariff.document.currency,
    grid,
    outlay,
    months,
    years,
    measures: measuresOf(years, { months, netPrice, percent: document.discountRate, grid }),
    dayOne: dayOneOf(document, outlay),
    loan,
    battery: batteryResultOf(prepared, years),
    carbon: carbonOf(input, years),
  };
}
