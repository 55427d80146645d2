import { AmountTooLarge } from './bill/index.ts';
import { takeUnits } from './amounts-given.ts';
import type { BatchNames, BatchRows, PrintedColumn } from './check-batch-columns.ts';
import { printsRight } from './check-batch-figures.ts';
import { LOST, QuickNetting } from './check-batch-netting.ts';
import { BatchPlans, type BatchPlan, type PlanTerms } from './check-batch-plan.ts';

function printsResult(results: readonly number[], printed: readonly PrintedColumn[], row: number): boolean {
  for (let index = 0; index < results.length; index += 1) {
    const value = (printed[results[index] as number] as PrintedColumn).mantissas[row] as number;
    if (value === value) return true;
  }
  return false;
}

/**
 * Finds the rows that the long way has to look at: bills that differ from the right one in any printed figure, and
 * those that plain arithmetic cannot make. It goes the way of `AmountsRun` under unit netting, each row with the
 * credit that the one before left. A law holds it to `checkBill`.
 */
export class QuickCheck {
  private readonly plans: BatchPlans;
  private readonly credit: number;
  private readonly others: readonly number[];
  private units: Float64Array = new Float64Array(0);
  private readonly netting = new QuickNetting();

  constructor(terms: PlanTerms) {
    this.plans = new BatchPlans(terms);
    const { opening }: BatchNames = terms.names;
    this.credit = opening.indexOf('credit');
    this.others = [...opening.keys()].filter((column) => column !== this.credit);
  }

  /**
   * Check rows.
   *
   * @param marks  receives 1 for each row that the long way has to look at, and 0 for those that are right
   * @returns      how many are marked
   */
  run(rows: BatchRows, marks: Uint8Array): number {
    let marked = 0;
    let before = -1;
    const { amounts } = this.netting;
    amounts.closing = LOST;
    for (let row = 0; row < rows.count; row += 1) {
      const isBegun = rows.begins[row] === 1 || rows.from[row] !== before;
      const opening = isBegun ? this.begin(rows, row) : amounts.closing;
      const isRight = opening === opening && this.check(rows, row, opening);
      marks[row] = isRight ? 0 : 1;
      if (!isRight) marked += 1;
      if (opening !== opening) amounts.closing = LOST;
      before = rows.to[row] as number;
    }
    return marked;
  }

  /** What the table says was brought forward into a row. */
  private begin({ opening }: BatchRows, row: number): number {
    this.netting.begin();
    for (let index = 0; index < this.others.length; index += 1) {
      const value = (opening[this.others[index] as number] as Float64Array)[row] as number;
      if (value === value) return LOST;
    }
    const own = opening[this.credit]?.[row] ?? LOST;
    return own >= 0 ? own : LOST;
  }

  /** Whether a row prints the right bill; leaves what it hands on. */
  private check(rows: BatchRows, row: number, opening: number): boolean {
    const { amounts } = this.netting;
    amounts.closing = LOST;
    const plan = this.plans.of(rows, row);
    if (plan === null || !this.take(plan, rows, row)) return false;
    try {
      amounts.opening = opening;
      if (!this.netting.bill(plan.amounts, plan.bill)) return false;
    } catch (error) {
      if (error instanceof AmountTooLarge) return false;
      throw error;
    }
    return printsRight(plan.figures, amounts, rows, row) && printsResult(plan.results, rows.printed, row);
  }

  private take({ columns, amounts }: BatchPlan, { known }: BatchRows, row: number): boolean {
    if (this.units.length !== columns.length) this.units = new Float64Array(columns.length);
    const { units } = this;
    for (let at = 0; at < columns.length; at += 1)
      units[at] = (known[columns[at] as number] as Float64Array)[row] as number;
    return takeUnits(amounts.given, units, 0);
  }
}
