import { decimalPlaces, decimalToWhole, type Period } from './quantity/index.ts';
import type { UnitNettingRule } from './tariff/index.ts';
import { holdsDayOfYear, type Ratio } from './settlement/index.ts';
import type { PreparedTariff, QuickPart } from './bill/index.ts';
import { paymentGrid, paymentRatio, rateAt, type QuickPayment } from './amounts-ledgers.ts';
import { orLongWay } from './amounts-long-way.ts';
import { partRaises } from './amounts-raises.ts';
import type { NettingPlan, PartPlan, PlanContext, Unscaled } from './amounts-types.ts';

/** A period to plan. */
export interface PlannedPeriod {
  readonly context: PlanContext;
  readonly period: Period;
  readonly parts: readonly QuickPart[];
}

/** The charges with the places of what they use. */
export function partPlans(
  parts: readonly QuickPart[],
  placeOf: (name: string) => number | undefined,
  raised: readonly string[],
): Unscaled<readonly PartPlan[]> {
  const placed = parts.map((part) => ({
    part,
    from: Int32Array.from(part.used, ({ name }) => orLongWay(placeOf(name))),
    raises: partRaises(part.constants, raised),
  }));
  return (grid) => placed.map((one) => ({ ...one, times: grid / one.part.constants.grid }));
}

/** A share of a capped quantity in whole counted units. */
function capRatio({ tariff }: PreparedTariff, cap: UnitNettingRule['cap']): Ratio | null {
  if (cap === undefined) return null;
  const { decimals, rounding } = tariff.document.units;
  const step = 10 ** (3 - (decimals.charCodeAt(0) - 48));
  const places = decimalPlaces(cap.percent);
  const [multiply, divide] = [decimalToWhole(cap.percent, places), 100 * 10 ** places * step];
  return { multiply, divide, mode: rounding, step, per: 1 };
}

/** How the units that a closing bank pays are paid. */
function paymentOf({ close }: UnitNettingRule, { context, period }: PlannedPeriod): QuickPayment | null {
  if (close.rate === undefined || close.inBill === undefined) return null;
  const price = rateAt(context.prepared.tariff, close.rate, period);
  const rounding = context.prepared.lineRounding;
  return price === null ? null : { ...price, rounding, isNext: close.inBill === 'next' };
}

/** Plan a period under unit netting. */
export function nettingPeriod(rule: UnitNettingRule, planned: PlannedPeriod): Unscaled<NettingPlan> {
  const { context, period, parts } = planned;
  const { given, used, grids, prepared } = context;
  const placeOf = (name: string): number | undefined => {
    if (name === 'billed') return given.values.length - 1;
    used.add(name);
    return given.at.get(name);
  };
  const { cap, close } = rule;
  const isClosed = close.on === 'every-period' || holdsDayOfYear(period, close.on);
  const pays = isClosed && close.surplus === 'paid';
  const payment = pays ? paymentOf(rule, planned) : null;
  if (payment !== null) grids.push(paymentGrid(payment));
  const imported = orLongWay(placeOf('import'));
  const exported = orLongWay(placeOf('export'));
  const capped = cap === undefined ? -1 : orLongWay(placeOf(cap.of));
  const unscaled = partPlans(parts, placeOf, context.raised);
  return (grid) => ({
    scheme: 'unit-netting',
    imported,
    exported,
    capped,
    cap: capRatio(prepared, cap),
    cuts: cap?.excess === 'lapses',
    isClosed,
    pays,
    ratio: payment === null ? null : paymentRatio(payment, grid),
    isNext: payment?.isNext ?? false,
    isUnpriced: pays && payment === null && close.rate !== undefined && close.inBill !== undefined,
    parts: unscaled(grid),
    hasCredit: parts.some(({ credits }) => credits.length > 0),
  });
}
