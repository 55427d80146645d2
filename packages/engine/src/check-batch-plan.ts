import type { DayNumber, Period } from './quantity/index.ts';
import type { PreparedTariff } from './bill/index.ts';
import { amountsPlan } from './amounts-plan.ts';
import type { AmountsPlan, NettingPlan } from './amounts-types.ts';
import type { BatchNames, BatchRows } from './check-batch-columns.ts';
import { quickFigures, type QuickFigure } from './check-batch-figures.ts';
import { isResultFigure } from './check-batch-names.ts';
import type { UnitsAccount } from './periods-document.ts';

/** One period under one tariff, ready for row after row. */
export interface BatchPlan {
  readonly amounts: AmountsPlan;
  readonly bill: NettingPlan;
  /** Known columns in the order of the names that the plan was made for. */
  readonly columns: Int32Array;
  readonly figures: readonly QuickFigure[];
  /** Printed columns any of which is a result: a bill that prints none of them tells nothing. */
  readonly results: readonly number[];
}

/** What plans are made of. */
export interface PlanTerms {
  readonly prepared: PreparedTariff;
  readonly names: BatchNames;
  readonly account: Pick<UnitsAccount, 'since' | 'settlementDay'>;
}

/** Plans that are kept: a table has as many periods as the utility has reading days in a month, times its months. */
const MOST_PLANS = 4096;
/** Periods of more days than this are told apart all the same, by a key of their own. */
const DAYS = 4096;

function planOf({ prepared, names, account }: PlanTerms, period: Period, mask: number): BatchPlan | null {
  const known = names.known.map((name, column) => ({ name, column }));
  const filled = known.filter(({ column }) => ((mask >> column) & 1) === 1);
  const given = filled.filter(({ name }) => prepared.quantities.has(name));
  const amounts = amountsPlan(prepared, { account, periods: [period], names: given.map(({ name }) => name) });
  const bill = amounts?.periods[0];
  if (amounts === null || bill?.scheme !== 'unit-netting' || bill.hasCredit) return null;
  const figures = quickFigures({
    plan: amounts,
    bill,
    period,
    names,
    filled: filled.map(({ column }) => column),
  });
  return {
    amounts,
    bill,
    columns: Int32Array.from(given, ({ column }) => column),
    figures,
    results: names.printed.flatMap((name, column) => (isResultFigure(name) ? [column] : [])),
  };
}

/** The plans of a table of bills: one for each period, and for each choice of what is known. */
export class BatchPlans {
  private readonly terms: PlanTerms;
  private readonly byMask = new Map<number, Map<number, BatchPlan | null>>();
  private count = 0;
  private last: BatchPlan | null = null;
  private lastKey = -1;
  private lastMask = -1;

  constructor(terms: PlanTerms) {
    this.terms = terms;
  }

  /** Which known columns a row fills, bit by bit. */
  private maskOf(known: readonly Float64Array[], row: number): number {
    let mask = 0;
    for (let column = 0; column < known.length; column += 1) {
      const value = (known[column] as Float64Array)[row] as number;
      if (value === value) mask |= 1 << column;
    }
    return mask;
  }

  /**
   * The plan of a row.
   *
   * @returns null where only the long way can bill it
   */
  of({ known, from, to }: BatchRows, row: number): BatchPlan | null {
    const mask = this.maskOf(known, row);
    const [begin, end] = [from[row] as number, to[row] as number];
    const key = begin * DAYS + (end - begin);
    if (mask === this.lastMask && key === this.lastKey) return this.last;
    if (end - begin >= DAYS) return null;
    const period = { from: begin as DayNumber, to: end as DayNumber };
    this.last = this.kept(mask, key, period);
    this.lastKey = key;
    this.lastMask = mask;
    return this.last;
  }

  private kept(mask: number, key: number, period: Period): BatchPlan | null {
    const plans = this.byMask.get(mask) ?? new Map<number, BatchPlan | null>();
    const known = plans.get(key);
    if (known !== undefined) return known;
    if (this.count >= MOST_PLANS) {
      this.byMask.clear();
      this.count = 0;
      plans.clear();
    }
    const made = planOf(this.terms, period, mask);
    plans.set(key, made);
    this.byMask.set(mask, plans);
    this.count += 1;
    return made;
  }
}
