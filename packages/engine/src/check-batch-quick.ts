import { LARGEST_WHOLE } from './quantity/index.ts';
import { timesRatio } from './settlement/index.ts';
import { AmountTooLarge, evaluateQuick } from './bill/index.ts';
import { takeUnits } from './amounts-given.ts';
import type { PartPlan } from './amounts-types.ts';
import type { BatchNames, BatchRows, PrintedColumn } from './check-batch-columns.ts';
import { printsRight, type QuickAmounts } from './check-batch-figures.ts';
import { BatchPlans, type BatchPlan, type PlanTerms } from './check-batch-plan.ts';

/** What stands for an account whose chain the quick way does not know. */
const LOST = NaN;

/** The sum of the lines of all parts on the grid of the plan; NaN where a double has no room. */
function charge(parts: readonly PartPlan[], values: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < parts.length; at += 1) {
    const { part, from, times } = parts[at] as PartPlan;
    const lines = evaluateQuick(part, values, from) * times;
    if (!(Math.abs(lines) <= LARGEST_WHOLE / 2)) return LOST;
    sum += lines;
  }
  return sum;
}

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
  private readonly amounts: QuickAmounts = { opening: 0, closing: 0, billed: 0, due: 0, sum: 0, payable: 0 };
  /** What the next bill pays out, on the grid of the plan that left it. */
  private next = 0;
  private nextGrid = 1;

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
    this.amounts.closing = LOST;
    for (let row = 0; row < rows.count; row += 1) {
      const isBegun = rows.begins[row] === 1 || rows.from[row] !== before;
      const opening = isBegun ? this.begin(rows, row) : this.amounts.closing;
      const isRight = opening === opening && this.check(rows, row, opening);
      marks[row] = isRight ? 0 : 1;
      if (!isRight) marked += 1;
      if (opening !== opening) this.amounts.closing = LOST;
      before = rows.to[row] as number;
    }
    return marked;
  }

  /** What the table says was brought forward into a row. */
  private begin({ opening }: BatchRows, row: number): number {
    this.next = 0;
    for (let index = 0; index < this.others.length; index += 1) {
      const value = (opening[this.others[index] as number] as Float64Array)[row] as number;
      if (value === value) return LOST;
    }
    const own = opening[this.credit]?.[row] ?? LOST;
    return own >= 0 ? own : LOST;
  }

  /** Whether a row prints the right bill; leaves what it hands on. */
  private check(rows: BatchRows, row: number, opening: number): boolean {
    const { amounts } = this;
    amounts.closing = LOST;
    const plan = this.plans.of(rows, row);
    if (plan === null || !this.take(plan, rows, row)) return false;
    try {
      amounts.opening = opening;
      if (!this.bill(plan)) return false;
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

  /** Settle and bill the units that were taken in; false where only the long way can. */
  private bill({ amounts: plan, bill }: BatchPlan): boolean {
    const { amounts } = this;
    const { values } = plan.given;
    const imported = values[bill.imported] as number;
    const available = (values[bill.exported] as number) + amounts.opening;
    const wanted = available < imported ? available : imported;
    const most = bill.cap === null ? wanted : timesRatio(values[bill.capped] as number, bill.cap);
    const setOff = most < wanted ? most : wanted;
    const left = available - setOff - (bill.cuts ? wanted - setOff : 0);
    const paid = bill.pays ? left : 0;
    const due = this.dueOf(plan.grid);
    const amount =
      paid === 0 ? 0 : bill.ratio === null ? (bill.isUnpriced ? LOST : 0) : timesRatio(paid, bill.ratio);
    amounts.billed = imported - setOff;
    values[values.length - 1] = amounts.billed;
    amounts.due = bill.isNext ? due : due + amount;
    this.next = bill.isNext ? amount : 0;
    this.nextGrid = plan.grid;
    amounts.sum = charge(bill.parts, values) + amounts.due;
    amounts.payable = plan.total === null ? amounts.sum : timesRatio(amounts.sum, plan.total);
    const isSound = most === most && amount === amount && Math.abs(amounts.payable) <= LARGEST_WHOLE;
    amounts.closing = !isSound ? LOST : bill.isClosed ? 0 : left;
    return isSound;
  }

  /** What the bill before left to be paid out, on the grid of this one; NaN where it is not whole there. */
  private dueOf(grid: number): number {
    if (this.next === 0) return 0;
    const due = (this.next * grid) / this.nextGrid;
    return Number.isInteger(due) && Math.abs(this.next) * grid <= LARGEST_WHOLE ? due : LOST;
  }
}
