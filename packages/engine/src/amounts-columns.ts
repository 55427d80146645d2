import { LARGEST_WHOLE } from './quantity/index.ts';
import { billColumns, evaluateColumns, isColumnar, type BillColumns, type Constants } from './bill/index.ts';
import type { AmountsPlan, LedgersPlan, NettingPlan, PartPlan } from './amounts-types.ts';
import type { Raises } from './amounts-raises.ts';

/** Periods with the same charges. */
interface Group {
  readonly columns: BillColumns;
  /** The period of each row. */
  readonly periods: Int32Array;
  /** Lines on the grid of the plan. */
  readonly times: number;
  /** For each line the column of its charge among those that rise; −1: it does not. */
  readonly rising: Int32Array;
  /** The factors that are in the columns now. */
  taken: Raises | null;
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
  return [...byConstants].map(([constants, periods]) => {
    const { times, raises } = parts[periods[0] ?? 0] as PartPlan;
    const rising = raises?.columns ?? new Int32Array(constants.lines.length).fill(-1);
    const columns = billColumns(
      constants,
      periods.length,
      [...rising].map((column) => column >= 0),
    );
    return { columns, periods: Int32Array.from(periods), times, rising, taken: null };
  });
}

/** Charges of many periods, evaluated line by line once their quantities are known. */
export class AmountColumns {
  private readonly groups: readonly Group[];
  private readonly groupOf: Int32Array;
  private readonly rowOf: Int32Array;

  private constructor(parts: readonly PartPlan[]) {
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

  /** The columns of the quantities where all periods have the same charges, row by row; null: they have not. */
  get only(): readonly Float64Array[] | null {
    const [first, ...others] = this.groups;
    return first === undefined || others.length > 0 ? null : first.columns.used;
  }

  /** Take the quantities of a period in. */
  take(at: number, { from }: PartPlan, values: Float64Array): void {
    const { used } = (this.groups[this.groupOf[at] as number] as Group).columns;
    const row = this.rowOf[at] as number;
    for (let index = 0; index < from.length; index += 1) {
      (used[index] as Float64Array)[row] = values[from[index] as number] as number;
    }
  }

  /** Evaluate the charges of all periods. */
  evaluate(raises: Raises | null): void {
    for (const group of this.groups) {
      raise(group, raises);
      evaluateColumns(group.columns, (line, row) => {
        const period = group.periods[row] as number;
        const column = group.rising[line] as number;
        return raises === null || column < 0
          ? { numerator: 1n, denominator: 1n }
          : raises.exact(raises.rows[period] as number, column);
      });
    }
  }

  /** The sums of the lines of all periods on the grid of the plan; NaN where a double has no room. */
  linesInto(sums: Float64Array): void {
    for (const { columns, times, periods } of this.groups) {
      const { totals } = columns;
      for (let row = 0; row < totals.length; row += 1) {
        const lines = (totals[row] as number) * times;
        sums[periods[row] as number] = Math.abs(lines) <= LARGEST_WHOLE / 2 ? lines : NaN;
      }
    }
  }
}

/** Write the factors of each period into the columns of the lines that rise. */
function raise(group: Group, raises: Raises | null): void {
  const { columns, rising, periods } = group;
  // The same table of factors, not written anew since, is in the columns already.
  if (raises === group.taken && raises?.isFixed !== false) return;
  group.taken = raises;
  columns.factors.forEach((factors, line) => {
    if (factors === null) return;
    const column = rising[line] as number;
    for (let row = 0; row < factors.length; row += 1) {
      factors[row] =
        raises === null
          ? 1
          : (raises.factors[
              (raises.rows[periods[row] as number] as number) * raises.columns + column
            ] as number);
    }
  });
}
