import { timesRatio } from './settlement/index.ts';
import { GivenColumns, type GivenColumn } from './amounts-given.ts';
import type { AmountsPlan, AmountsResult, NettingPlan } from './amounts-types.ts';

/** Periods in a row that do the same to the bank. */
interface NettingRun {
  readonly terms: Pick<
    NettingPlan,
    'capped' | 'cap' | 'cuts' | 'isClosed' | 'pays' | 'ratio' | 'isNext' | 'isUnpriced'
  >;
  readonly from: number;
  readonly to: number;
}

/** Where the units taken and given stand. */
interface NettedUnits {
  readonly imports: GivenColumn;
  readonly exports: GivenColumn;
}

/** Nearly all periods do the same: what they do is looked up once for each run of them. */
function runsOf(periods: readonly NettingPlan[]): readonly NettingRun[] {
  const runs: NettingRun[] = [];
  let last = '';
  periods.forEach(({ capped, cap, cuts, isClosed, pays, ratio, isNext, isUnpriced }, at) => {
    const terms = { capped, cap, cuts, isClosed, pays, ratio, isNext, isUnpriced };
    const key = JSON.stringify(terms);
    const from = key === last ? (runs.pop() as NettingRun).from : at;
    runs.push({ terms, from, to: at + 1 });
    last = key;
  });
  return runs;
}

/** Places of the quantities that cap or charge the units of any period. */
function placesOf(periods: readonly NettingPlan[]): ReadonlySet<number> {
  return new Set(periods.flatMap(({ capped, parts }) => [capped, ...parts.flatMap(({ from }) => [...from])]));
}

/**
 * Nets the periods of a plan one after the other, in columns: what `AmountsRun` does period by period, in one
 * loop, since quotes spend their time here. A law compares the two.
 */
export class NettedColumns {
  private readonly given: GivenColumns;
  private readonly runs: readonly NettingRun[];
  private readonly imported: number;
  private readonly exported: number;
  private readonly credit: number;
  /** What goes from one run of periods to the next: the bank, and what the next bill pays out. */
  private readonly carried: Float64Array = new Float64Array(2);

  private constructor(plan: AmountsPlan, periods: readonly NettingPlan[]) {
    const [first] = periods as [NettingPlan];
    this.given = new GivenColumns(plan.given, periods.length, placesOf(periods));
    this.runs = runsOf(periods);
    this.imported = first.imported;
    this.exported = first.exported;
    this.credit = plan.credit ?? 0;
  }

  /**
   * @returns null unless every period is settled by unit netting, and nothing stands beside its bank
   */
  static of(plan: AmountsPlan): NettedColumns | null {
    const { periods, ledgers, credit } = plan;
    const netted = periods.filter((period) => period.scheme === 'unit-netting');
    const isAll = netted.length === periods.length && !netted.some(({ hasCredit }) => hasCredit);
    return isAll && credit !== null && ledgers.length === 0 ? new NettedColumns(plan, netted) : null;
  }

  /** A column for each place of the given quantities that is charged, the last one for the units billed. */
  get values(): readonly Float64Array[] {
    return this.given.values;
  }

  /**
   * Net all periods.
   *
   * @returns false where only the long way can say what a period comes to
   */
  run(given: Float64Array, result: AmountsResult): boolean {
    if (!this.given.take(given)) return false;
    this.carried[0] = this.credit;
    this.carried[1] = 0;
    const units = {
      imports: this.given.columnOf(this.imported, given),
      exports: this.given.columnOf(this.exported, given),
    };
    for (const run of this.runs) {
      const { cap, isClosed } = run.terms;
      if (cap === null && !isClosed) this.carryOn(run, units, result);
      else if (!this.net(run, units, result)) return false;
    }
    return true;
  }

  /** Periods that nothing caps or closes, as most are: what is given is set off, and the rest is kept. */
  private carryOn(
    { from, to }: NettingRun,
    { imports, exports }: NettedUnits,
    { balances, dues, payouts }: AmountsResult,
  ): void {
    const { given, carried } = this;
    const billed = given.values[given.values.length - 1] as Float64Array;
    let bank = carried[0] as number;
    let fromImports = imports.first + from * imports.every;
    let fromExports = exports.first + from * exports.every;
    for (let at = from; at < to; at += 1) {
      const imported = imports.values[fromImports] as number;
      const available = (exports.values[fromExports] as number) + bank;
      const setOff = available < imported ? available : imported;
      bank = available - setOff;
      billed[at] = imported - setOff;
      balances[at] = bank;
      dues[at] = 0;
      payouts[at] = 0;
      fromImports += imports.every;
      fromExports += exports.every;
    }
    dues[from] = carried[1] as number;
    carried[0] = bank;
    carried[1] = 0;
  }

  /** Any other periods; false where only the long way can say what one comes to. */
  private net(
    { terms, from, to }: NettingRun,
    { imports, exports }: NettedUnits,
    { balances, dues, payouts }: AmountsResult,
  ): boolean {
    const { capped, cap, cuts, isClosed, pays, ratio, isNext, isUnpriced } = terms;
    const { given, carried } = this;
    const billed = given.values[given.values.length - 1] as Float64Array;
    let bank = carried[0] as number;
    let next = carried[1] as number;
    for (let at = from; at < to; at += 1) {
      const imported = imports.values[imports.first + at * imports.every] as number;
      const available = (exports.values[exports.first + at * exports.every] as number) + bank;
      const wanted = available < imported ? available : imported;
      const most =
        cap === null ? wanted : timesRatio((given.values[capped] as Float64Array)[at] as number, cap);
      const setOff = most < wanted ? most : wanted;
      const left = available - setOff - (cuts ? wanted - setOff : 0);
      const paid = pays ? left : 0;
      if (paid !== 0 && ratio === null && isUnpriced) return false;
      const amount = paid === 0 || ratio === null ? 0 : timesRatio(paid, ratio);
      if (Number.isNaN(most) || Number.isNaN(amount)) return false;
      bank = isClosed ? 0 : left;
      billed[at] = imported - setOff;
      dues[at] = isNext ? next : next + amount;
      next = isNext ? amount : 0;
      payouts[at] = amount;
      balances[at] = bank;
    }
    carried[0] = bank;
    carried[1] = next;
    return true;
  }
}
