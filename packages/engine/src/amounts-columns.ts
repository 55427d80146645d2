import { LARGEST_WHOLE } from './quantity/index.ts';
import { timesRatio, type Ratio } from './settlement/index.ts';
import { billColumns, evaluateColumns, isColumnar, type BillColumns, type Constants } from './bill/index.ts';
import { GroupRaises, type Raises } from './amounts-raises.ts';
import type { AmountsPlan, AmountsResult, LedgersPlan, NettingPlan, PartPlan } from './amounts-types.ts';

/** Periods with the same charges. */
interface Group {
  readonly columns: BillColumns;
  /** The period of each row. */
  readonly periods: Int32Array;
  /** Lines on the grid of the plan. */
  readonly times: number;
  readonly raises: GroupRaises;
}

type Period = LedgersPlan | NettingPlan;

/** The one part of a period whose charges can be evaluated in columns; null: it has other ones. */
function onlyPart(period: Period): PartPlan | null {
  const [first, ...others] = period.parts;
  if (first === undefined || others.length > 0) return null;
  const { part } = first;
  const isPlain = !part.isShared && part.credits.length === 0 && isColumnar(part.constants);
  return isPlain && (period.scheme === 'unit-netting' || period.money.length === 0) ? first : null;
}

function groupsOf(parts: readonly PartPlan[]): readonly Group[] {
  const byConstants = new Map<Constants, number[]>();
  parts.forEach(({ part: { constants } }, at) => {
    const periods = byConstants.get(constants) ?? [];
    periods.push(at);
    byConstants.set(constants, periods);
  });
  return [...byConstants].map(([constants, rows]) => {
    const { times, raises } = parts[rows[0] ?? 0] as PartPlan;
    const rising = raises?.columns ?? new Int32Array(constants.lines.length).fill(-1);
    const used = constants.used.map(() => new Float64Array(rows.length));
    const periods = Int32Array.from(rows);
    return {
      columns: billColumns(constants, rows.length, used),
      periods,
      times,
      raises: new GroupRaises(rising, periods),
    };
  });
}

/** Charges of many periods, evaluated line by line once their quantities are known. */
export class AmountColumns {
  private readonly parts: readonly PartPlan[];
  private readonly groups: readonly Group[];
  private readonly groupOf: Int32Array;
  private readonly rowOf: Int32Array;

  private constructor(parts: readonly PartPlan[]) {
    this.parts = parts;
    this.groups = groupsOf(parts);
    this.groupOf = new Int32Array(parts.length);
    this.rowOf = new Int32Array(parts.length);
    this.groups.forEach(({ periods }, group) => {
      periods.forEach((period, row) => {
        this.groupOf[period] = group;
        this.rowOf[period] = row;
      });
    });
  }

  /**
   * @returns null where the charges of a period feed back into its ledgers, are split, or ask the general rule
   */
  static of({ periods }: Pick<AmountsPlan, 'periods'>): AmountColumns | null {
    const parts = periods.map(onlyPart);
    return parts.every((part) => part !== null) ? new AmountColumns(parts) : null;
  }

  /** Take the quantities of a period in. */
  take(at: number, { from }: PartPlan, values: Float64Array): void {
    const { used } = (this.groups[this.groupOf[at] as number] as Group).columns;
    const row = this.rowOf[at] as number;
    for (let index = 0; index < from.length; index += 1) {
      (used[index] as Float64Array)[row] = values[from[index] as number] as number;
    }
  }

  /** Take the quantities of all periods in, of a column for each place. */
  takeAll(values: readonly Float64Array[]): void {
    for (const { columns, periods } of this.groups) {
      const { from } = this.parts[periods[0] as number] as PartPlan;
      for (let index = 0; index < from.length; index += 1) {
        const given = values[from[index] as number] as Float64Array;
        const used = columns.used[index] as Float64Array;
        if (used.length === given.length) used.set(given);
        else
          for (let row = 0; row < used.length; row += 1) used[row] = given[periods[row] as number] as number;
      }
    }
  }

  /** Evaluate the charges of all periods. */
  evaluate(raises: Raises | null): void {
    for (const group of this.groups) evaluateColumns(group.columns, group.raises.take(raises));
  }

  /**
   * Add what each bill pays out to its lines, and round it to what is payable.
   *
   * @returns false where a double has no room for one of them
   */
  closeInto(result: AmountsResult, total: AmountsPlan['total']): boolean {
    for (const group of this.groups) if (!closeGroup(group, result)) return false;
    return total === null || roundAll(result.payables, total);
  }
}

/** Lines and what is paid out; false where a double has no room for one of them. */
function closeGroup({ columns, times, periods }: Group, { payables, dues }: AmountsResult): boolean {
  const { totals } = columns;
  let isSound = true;
  for (let row = 0; row < totals.length; row += 1) {
    const at = periods[row] as number;
    const lines = (totals[row] as number) * times;
    const sum = lines + (dues[at] as number);
    payables[at] = sum;
    if (!(Math.abs(lines) <= LARGEST_WHOLE / 2 && Math.abs(sum) <= LARGEST_WHOLE)) isSound = false;
  }
  return isSound;
}

/** Sums rounded to what is payable. */
function roundAll(payables: Float64Array, total: Ratio): boolean {
  let isSound = true;
  for (let at = 0; at < payables.length; at += 1) {
    const payable = timesRatio(payables[at] as number, total);
    payables[at] = payable;
    if (!(Math.abs(payable) <= LARGEST_WHOLE)) isSound = false;
  }
  return isSound;
}
