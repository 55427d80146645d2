import { LARGEST_WHOLE } from './quantity/index.ts';
import { timesRatio } from './settlement/index.ts';
import { evaluateQuick } from './bill/index.ts';
import type { AmountsPlan, NettingPlan, PartPlan } from './amounts-types.ts';
import type { QuickAmounts } from './check-batch-figures.ts';

/** What stands for an account whose chain plain arithmetic does not know. */
export const LOST = NaN;

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

/** Bills periods under unit netting without making figures, each with the credit that the one before left. */
export class QuickNetting {
  readonly amounts: QuickAmounts = { opening: 0, closing: LOST, billed: 0, due: 0, sum: 0, payable: 0 };
  /** What the next bill pays out, on the grid of the plan that left it. */
  private next = 0;
  private nextGrid = 1;

  /** Begin with a period into which no surplus is to be paid. */
  begin(): void {
    this.next = 0;
  }

  /**
   * Settle and bill the units that were put into the slots of a plan, from `amounts.opening`.
   *
   * @returns false where plain arithmetic cannot make the bill
   * @throws  AmountTooLarge where an amount has no room in a double
   */
  bill(plan: AmountsPlan, bill: NettingPlan): boolean {
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
