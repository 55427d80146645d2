import { timesRatio } from './settlement/index.ts';
import { takeUnits } from './amounts-given.ts';
import type { AmountColumns } from './amounts-columns.ts';
import type { AmountsPlan, AmountsResult, NettingPlan, PartPlan } from './amounts-types.ts';

/**
 * Whether every period of a plan is settled by unit netting, and nothing stands beside its bank: then `netAll`
 * nets them in one go.
 */
export function isAllNetted({ periods, ledgers, credit }: AmountsPlan): boolean {
  return (
    credit !== null &&
    ledgers.length === 0 &&
    periods.every((period) => period.scheme === 'unit-netting' && !period.hasCredit)
  );
}

/** Put what the charges of a period use into its row. */
function takeRow(used: readonly Float64Array[], row: number, from: Int32Array, values: Float64Array): void {
  for (let index = 0; index < from.length; index += 1) {
    (used[index] as Float64Array)[row] = values[from[index] as number] as number;
  }
}

/**
 * Net the periods of a plan one after the other, their charges in columns: what `AmountsRun` does period by
 * period, in one loop, since quotes spend their time here. A law compares the two.
 *
 * @returns false where only the long way can say what a period comes to
 */
export function netAll(
  plan: AmountsPlan,
  columns: AmountColumns,
  units: Float64Array,
  { balances, dues, payouts }: AmountsResult,
): boolean {
  const { given, periods, credit } = plan;
  const { values } = given;
  const last = values.length - 1;
  const { only } = columns;
  let bank = credit ?? 0;
  let next = 0;
  for (let at = 0; at < periods.length; at += 1) {
    const period = periods[at] as NettingPlan;
    if (!takeUnits(given, units, at)) return false;
    const imported = values[period.imported] as number;
    const available = (values[period.exported] as number) + bank;
    const wanted = available < imported ? available : imported;
    const most = period.cap === null ? wanted : timesRatio(values[period.capped] as number, period.cap);
    const setOff = most < wanted ? most : wanted;
    const left = available - setOff - (period.cuts ? wanted - setOff : 0);
    const paid = period.pays ? left : 0;
    if (paid !== 0 && period.ratio === null && period.isUnpriced) return false;
    const amount = paid === 0 || period.ratio === null ? 0 : timesRatio(paid, period.ratio);
    bank = period.isClosed ? 0 : left;
    values[last] = imported - setOff;
    const part = period.parts[0] as PartPlan;
    if (only === null) columns.take(at, part, values);
    else takeRow(only, at, part.from, values);
    dues[at] = period.isNext ? next : next + amount;
    next = period.isNext ? amount : 0;
    payouts[at] = amount;
    balances[at] = bank;
    if (Number.isNaN(most) || Number.isNaN(amount)) return false;
  }
  return true;
}
