import { decimalToWhole, wholeToDecimal } from '../quantity/index.ts';
import { percentFactor, timesRounded, yearFactors, type YearFactors } from './factors.ts';
import { loanSchedule, type LoanSchedule } from './finance/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { bySize, onGrid, type Outlay } from './outlay.ts';
import type { DayOne } from './quote.ts';

/** What a plant costs in a year of its life, in whole 1/grid. */
export interface YearCosts {
  readonly maintenance: number;
  readonly replacement: number;
}

/** Year by year what maintenance grows by. */
export function upkeepFactors({ upkeep }: QuoteDocument, years: number): YearFactors {
  return yearFactors(years, [percentFactor(upkeep.growth)]);
}

/** An amount in a year from 0 on, grown by its factor and rounded half-up. */
export function grown(amount: number, { doubles, exact }: YearFactors, at: number): number {
  const factor = exact[at] ?? { numerator: 1n, denominator: 1n };
  return timesRounded(amount, { double: doubles[at] ?? 1, exact: factor, step: 1 });
}

/**
 * Maintenance, grown and rounded half-up, and what is replaced, by year from 1 on. For another size of the
 * plant both go by its capacity; a battery does not.
 */
export function yearCosts(
  document: QuoteDocument,
  { grid, watts, factors }: { readonly grid: number; readonly watts: number; readonly factors: YearFactors },
): readonly YearCosts[] {
  const { upkeep, battery, plant } = document;
  const quoted = decimalToWhole(plant.kWp, 3);
  const first = bySize(onGrid(upkeep.perYear, grid), watts, quoted);
  const replaced = upkeep.replacements.map(({ year, amount }) => ({
    year: Number.parseInt(year, 10),
    amount: bySize(onGrid(amount, grid), watts, quoted),
  }));
  const next = battery?.replacement;
  if (next !== undefined)
    replaced.push({ year: Number.parseInt(next.year, 10), amount: onGrid(next.amount, grid) });
  return factors.exact.map((_, at) => ({
    maintenance: grown(first, factors, at),
    replacement: replaced.reduce((sum, { year, amount }) => sum + (year === at + 1 ? amount : 0), 0),
  }));
}

/**
 * The loan of a quote month by month, rounded half-up to coins; null: none.
 *
 * @param coins  of a unit of money: a power of ten
 */
export function loanOf({ loan }: QuoteDocument, coins: number): LoanSchedule | null {
  if (loan === undefined) return null;
  const step = wholeToDecimal(1, String(coins).length - 1);
  return loanSchedule({
    amount: loan.amount,
    yearlyPercent: loan.rate,
    months: Number.parseInt(loan.months, 10),
    kind: loan.kind,
    rounding: { step, mode: 'half-up' },
    fees: loan.fees === undefined ? [] : [loan.fees],
  });
}

/** Instalments of a loan in a year from 1 on, on a grid that whole coins stand on. */
export function instalmentsIn(loan: LoanSchedule | null, year: number, grid: number): number {
  if (loan === null) return 0;
  const lines = loan.lines.slice((year - 1) * 12, year * 12);
  return lines.reduce((sum, { payment }) => sum + payment, 0) * (grid / 10 ** loan.places);
}

/** What has to be paid on the first day: a subsidy that the customer receives comes later. */
export function dayOneOf({ loan, subsidy }: QuoteDocument, outlay: Outlay): DayOne {
  const { grid } = outlay;
  // A subsidy that the seller receives is off the price from the first day on.
  const price = outlay.price - (subsidy?.to === 'seller' ? outlay.subsidy : 0);
  const borrowed = loan === undefined ? 0 : onGrid(loan.amount, grid);
  const fees = loan?.fees === undefined ? 0 : onGrid(loan.fees, grid);
  return { price, borrowed, fees, cash: price - borrowed + fees };
}
