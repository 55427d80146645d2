import { loanSchedule, type LoanSchedule } from './finance/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { grown, onGrid, type Outlay } from './outlay.ts';
import type { DayOne } from './quote.ts';

/** What a plant costs in a year of its life, in whole 1/grid. */
export interface YearCosts {
  readonly maintenance: number;
  readonly replacement: number;
}

/** Maintenance, grown and rounded half-up, and what is replaced, by year from 1 on. */
export function yearCosts(document: QuoteDocument, grid: number, years: number): readonly YearCosts[] {
  const { upkeep, battery } = document;
  const first = onGrid(upkeep.perYear, grid);
  const next = battery?.replacement;
  const replaced = [...upkeep.replacements, ...(next === undefined ? [] : [next])];
  return Array.from({ length: years }, (_, at) => ({
    maintenance: grown(first, upkeep.growth, at + 1),
    replacement: replaced
      .filter(({ year }) => year === String(at + 1))
      .reduce((sum, { amount }) => sum + onGrid(amount, grid), 0),
  }));
}

/** The loan of a quote month by month, rounded half-up to coins; null: none. */
export function loanOf({ loan }: QuoteDocument, grid: number): LoanSchedule | null {
  if (loan === undefined) return null;
  const step = grid === 1 ? '1' : `0.${'0'.repeat(String(grid).length - 2)}1`;
  return loanSchedule({
    amount: loan.amount,
    yearlyPercent: loan.rate,
    months: Number.parseInt(loan.months, 10),
    kind: loan.kind,
    rounding: { step, mode: 'half-up' },
    fees: loan.fees === undefined ? [] : [loan.fees],
  });
}

/** Instalments of a loan in a year from 1 on, on a grid. */
export function instalmentsIn(loan: LoanSchedule | null, year: number, grid: number): number {
  if (loan === null) return 0;
  const lines = loan.lines.slice((year - 1) * 12, year * 12);
  return lines.reduce((sum, { payment }) => sum + payment, 0) * (grid / 10 ** loan.places);
}

/** What has to be paid on the first day: the subsidy comes later. */
export function dayOneOf({ loan }: QuoteDocument, { price, grid }: Outlay): DayOne {
  const borrowed = loan === undefined ? 0 : onGrid(loan.amount, grid);
  const fees = loan?.fees === undefined ? 0 : onGrid(loan.fees, grid);
  return { price, borrowed, fees, cash: price - borrowed + fees };
}
