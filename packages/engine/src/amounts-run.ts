import { LARGEST_WHOLE } from './quantity/index.ts';
import { timesRatio } from './settlement/index.ts';
import { AmountTooLarge, evaluateQuick, evaluateQuickRaised } from './bill/index.ts';
import { takeUnits } from './amounts-given.ts';
import { AmountColumns } from './amounts-columns.ts';
import { NettedColumns } from './amounts-net-all.ts';
import type { Raises } from './amounts-raises.ts';
import type {
  AmountsPlan,
  AmountsResult,
  LedgersPlan,
  MoneyMove,
  NettingPlan,
  PaidMove,
  PartPlan,
  UnitMove,
} from './amounts-types.ts';

/** Places of what goes from one period to the next: doubles in a column are written in place. */
const CREDIT = 0;
const DUE = 1;
const NEXT = 2;
const CLOSED = 3;

/** Bills the periods of a plan one after the other, in place. */
export class AmountsRun {
  private readonly plan: AmountsPlan;
  /** The credit of the bank, and what this bill and the next one pay out on the grid of the plan. */
  private readonly carried: Float64Array = new Float64Array(4);
  /** Charges in columns, where a plan has them; and where this run uses them. */
  private readonly made: AmountColumns | null;
  private columns: AmountColumns | null = null;
  private readonly netted: NettedColumns | null;
  /** Factors of the run; null: rates as they stand. */
  private raises: Raises | null = null;

  constructor(plan: AmountsPlan) {
    this.plan = plan;
    this.made = AmountColumns.of(plan);
    this.netted = NettedColumns.of(plan);
  }

  /**
   * Bill every period.
   *
   * @param raises  left out: rates as they stand
   * @returns false where only the long way can say what a period comes to
   */
  run(units: Float64Array, result: AmountsResult, raises: Raises | null = null): boolean {
    this.raises = raises;
    const { made } = this;
    // Large quantities, which columns do not hold, are billed one period after the other.
    return (made !== null && this.attempt(made, units, result)) || this.attempt(null, units, result);
  }

  private attempt(columns: AmountColumns | null, units: Float64Array, result: AmountsResult): boolean {
    const { periods, ledgers, credit } = this.plan;
    this.columns = columns;
    this.carried[CREDIT] = credit ?? 0;
    this.carried[NEXT] = 0;
    for (const { ledger, opening, grid } of ledgers) {
      ledger.begin(opening, opening === undefined ? 1 : grid / opening.denominator);
    }
    try {
      if (!this.billAll(units, result)) return false;
    } catch (error) {
      if (error instanceof AmountTooLarge) return false;
      throw error;
    }
    result.count = periods.length;
    result.isQuick = true;
    return true;
  }

  /** In columns where that can be done, else one period after the other. */
  private billAll(units: Float64Array, result: AmountsResult): boolean {
    const { columns, netted, plan } = this;
    if (columns === null || netted === null) {
      if (!this.settleAll(units, result)) return false;
    } else {
      if (!netted.run(units, result)) return false;
      columns.takeAll(netted.values);
    }
    if (columns === null) return true;
    columns.evaluate(this.raises);
    return columns.closeInto(result, plan.total);
  }

  private settleAll(units: Float64Array, result: AmountsResult): boolean {
    const { length } = this.plan.periods;
    for (let at = 0; at < length; at += 1) if (!this.bill(at, units, result)) return false;
    return true;
  }

  /** Round the sum of a bill to what is payable. */
  private close(at: number, sum: number, result: AmountsResult): boolean {
    const { total } = this.plan;
    const payable = total === null ? sum : timesRatio(sum, total);
    result.payables[at] = payable;
    return Math.abs(payable) <= LARGEST_WHOLE;
  }

  private bill(at: number, units: Float64Array, result: AmountsResult): boolean {
    const { given, periods, ledgers, credit } = this.plan;
    const period = periods[at] as LedgersPlan | NettingPlan;
    if (!takeUnits(given, units, at)) return false;
    const { carried } = this;
    carried[DUE] = carried[NEXT] as number;
    carried[NEXT] = 0;
    carried[CLOSED] = 0;
    if (this.raises !== null && this.columns === null) raise(period.parts, this.raises, at);
    const lines = period.scheme === 'ledgers' ? this.settle(period, at) : this.net(period, at);
    if (this.columns === null ? !this.close(at, lines + carried[DUE], result) : Number.isNaN(lines))
      return false;
    result.dues[at] = carried[DUE];
    result.payouts[at] = carried[CLOSED];
    const columns = ledgers.length + (credit === null ? 0 : 1);
    for (let index = 0; index < ledgers.length; index += 1) {
      result.balances[at * columns + index] = (ledgers[index] as (typeof ledgers)[number]).ledger.balance;
    }
    if (credit !== null) result.balances[at * columns + columns - 1] = carried[CREDIT] as number;
    return true;
  }

  /** The sum of the lines of a period under a rule of ledgers; NaN for the long way. */
  private settle(plan: LedgersPlan, period: number): number {
    const { given, ledgers } = this.plan;
    const { values, copies, openings, runs, strangers, units, money, parts } = plan;
    if (this.carried[CREDIT] !== 0) return NaN;
    for (const at of strangers) if (ledgers[at]?.ledger.balance !== 0) return NaN;
    for (let at = 0; at < copies.length; at += 2) {
      values[copies[at + 1] as number] = given.values[copies[at] as number] as number;
    }
    if (plan.days >= 0) values[plan.days] = plan.dayCount;
    for (let at = 0; at < openings.length; at += 2) {
      values[openings[at + 1] as number] = this.balanceOf(openings[at] as number);
    }
    for (let at = 0; at < runs.length; at += 1)
      if (!(runs[at] as LedgersPlan['runs'][number])(values)) return NaN;
    for (let at = 0; at < units.length; at += 1)
      if (!this.moveUnits(units[at] as UnitMove, values)) return NaN;
    if (!remember(plan)) return NaN;
    for (let at = 0; at < money.length; at += 1) this.handBalance(money[at] as MoneyMove, parts);
    const lines = this.charge(period, parts, values);
    for (let at = 0; at < money.length; at += 1)
      if (!this.moveMoney(money[at] as MoneyMove, parts)) return NaN;
    return lines;
  }

  private balanceOf(ledger: number): number {
    return (this.plan.ledgers[ledger] as AmountsPlan['ledgers'][number]).ledger.balance;
  }

  private moveUnits(move: UnitMove, values: Float64Array): boolean {
    const kept = move.keeps < 0 ? 0 : (values[move.keeps] as number);
    const added = move.adds < 0 ? 0 : (values[move.adds] as number);
    const limit = move.most < 0 ? Infinity : (values[move.most] as number);
    const isSound = kept >= 0 && kept <= this.balanceOf(move.at) && added >= 0 && limit >= 0;
    return isSound && this.move(move, kept, added, limit);
  }

  private move(move: PaidMove, keeps: number, adds: number, most: number): boolean {
    const { ledger } = this.plan.ledgers[move.at] as AmountsPlan['ledgers'][number];
    const paid = ledger.move(move.terms, keeps, adds, most);
    return paid === 0 || this.pay(paid, move.pays, move);
  }

  private pay(
    paid: number,
    ratio: PaidMove['pays'],
    { payment, isUnpriced }: Pick<PaidMove, 'payment' | 'isUnpriced'>,
  ): boolean {
    if (ratio === null) return !isUnpriced;
    const amount = timesRatio(paid, ratio);
    return this.payOut(amount, payment?.isNext === true);
  }

  private payOut(amount: number, isNext: boolean): boolean {
    const place = isNext ? NEXT : DUE;
    this.carried[place] = (this.carried[place] as number) + amount;
    this.carried[CLOSED] = (this.carried[CLOSED] as number) + amount;
    return !Number.isNaN(amount);
  }

  private handBalance({ at, place, times }: MoneyMove, parts: readonly PartPlan[]): void {
    const [first] = parts;
    if (place >= 0 && first !== undefined) first.part.vector[place] = this.balanceOf(at) * times;
  }

  /** The balance brought forward goes first, then what the period earned. */
  private moveMoney(move: MoneyMove, parts: readonly PartPlan[]): boolean {
    const opening = this.balanceOf(move.at);
    if (move.used.length === 0) return this.move(move, opening, 0, Infinity);
    const amounts = parts[0]?.part.amounts ?? new Float64Array(0);
    const used = (0 - sumAt(amounts, move.used)) / move.times;
    const earned = sumAt(amounts, move.earned) / move.times;
    const adds = opening >= used ? earned : opening + earned - used;
    const isSound = adds >= 0 && Number.isInteger(used) && Number.isInteger(earned);
    return (
      isSound &&
      opening + earned <= LARGEST_WHOLE &&
      this.move(move, Math.max(0, opening - used), adds, Infinity)
    );
  }

  /** The sum of the lines of a period under unit netting; NaN for the long way. */
  private net(plan: NettingPlan, at: number): number {
    const { given, ledgers } = this.plan;
    const { values } = given;
    for (const { ledger } of ledgers) if (ledger.balance !== 0) return NaN;
    const imported = values[plan.imported] as number;
    const available = (values[plan.exported] as number) + (this.carried[CREDIT] as number);
    const wanted = available < imported ? available : imported;
    const most = plan.cap === null ? wanted : timesRatio(values[plan.capped] as number, plan.cap);
    const setOff = most < wanted ? most : wanted;
    const cut = plan.cuts ? wanted - setOff : 0;
    const left = available - setOff;
    const paid = plan.pays ? left - cut : 0;
    this.carried[CREDIT] = plan.isClosed ? 0 : left - cut;
    values[values.length - 1] = imported - setOff;
    const isPaid = paid === 0 || this.payUnits(paid, plan);
    const lines = this.charge(at, plan.parts, values);
    return isPaid && !Number.isNaN(most) && !(plan.hasCredit && leavesCredit(plan.parts)) ? lines : NaN;
  }

  /** The sum of the lines of a period; 0 where its charges wait for those of all other periods. */
  private charge(at: number, parts: readonly PartPlan[], values: Float64Array): number {
    const { columns, raises } = this;
    if (columns === null) return charge(parts, values, raises !== null);
    columns.take(at, parts[0] as PartPlan, values);
    return 0;
  }

  private payUnits(paid: number, { ratio, isNext, isUnpriced }: NettingPlan): boolean {
    if (ratio === null) return !isUnpriced;
    const amount = timesRatio(paid, ratio);
    return this.payOut(amount, isNext);
  }
}

function sumAt(amounts: Float64Array, places: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < places.length; at += 1) sum += amounts[places[at] as number] as number;
  return sum;
}

/** Take the factors of a period. */
function raise(parts: readonly PartPlan[], table: Raises, at: number): void {
  for (let index = 0; index < parts.length; index += 1) (parts[index] as PartPlan).raises?.take(table, at);
}

/** The sum of the lines of all parts, on the grid of the plan. */
function charge(parts: readonly PartPlan[], values: Float64Array, isRaised: boolean): number {
  let sum = 0;
  for (let at = 0; at < parts.length; at += 1) {
    const { part, from, times, raises } = parts[at] as PartPlan;
    const own =
      raises === null || !isRaised
        ? evaluateQuick(part, values, from)
        : evaluateQuickRaised(part, values, from, raises);
    const lines = own * times;
    if (!(Math.abs(lines) <= LARGEST_WHOLE / 2)) return NaN;
    sum += lines;
  }
  return sum;
}

/** Credit that no ledger takes under unit netting: a finding. */
function leavesCredit(parts: readonly PartPlan[]): boolean {
  return parts.some(({ part: { credits, amounts } }) =>
    credits.some(({ line, earned }) => sumAt(amounts, earned) + (amounts[line] as number) !== 0),
  );
}

/** Add what later periods look back to; false where the sums grow too large. */
function remember({ remembered, ordinal, values }: LedgersPlan): boolean {
  for (let at = 0; at < remembered.length; at += 1) {
    const { place, sums } = remembered[at] as LedgersPlan['remembered'][number];
    const sum = (sums[ordinal] as number) + (place < 0 ? 0 : (values[place] as number));
    if (!(Math.abs(sum) <= LARGEST_WHOLE)) return false;
    sums[ordinal + 1] = sum;
  }
  return true;
}
