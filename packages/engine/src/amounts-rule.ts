import { periodDays, type Period } from './quantity/index.ts';
import type { LedgersRule } from './tariff/index.ts';
import {
  quickQuantities,
  quickRuns,
  rememberedPeriod,
  type PastPeriod,
  type PreparedSettlement,
  type QuickQuantities,
  type QuickRun,
} from './settlement/index.ts';
import type { QuickPart } from './bill/index.ts';
import { moveOf, paymentGrid, paymentRatio, type LedgerMove } from './amounts-ledgers.ts';
import { LongWay, orLongWay } from './amounts-long-way.ts';
import { partPlans, type PlannedPeriod } from './amounts-netting.ts';
import type { LedgersPlan, MoneyMove, PaidMove, PlanContext, UnitMove, Unscaled } from './amounts-types.ts';

/** A rule of ledgers, the same in every period. */
interface RulePlan {
  readonly rule: LedgersRule;
  readonly settlement: PreparedSettlement;
  readonly quick: QuickQuantities;
  readonly timeless: (QuickRun | null | undefined)[];
  readonly copies: Int32Array;
  readonly days: number;
  readonly openings: Int32Array;
  readonly strangers: readonly number[];
}

/** Rules as periods need them, and what periods remember. */
export class RulePlans {
  readonly past: PastPeriod[] = [];
  readonly sums = new Map<string, Float64Array>();
  private readonly plans = new Map<LedgersRule, RulePlan>();
  private readonly context: PlanContext;
  private readonly count: number;

  constructor(context: PlanContext, count: number) {
    this.context = context;
    this.count = count;
  }

  of(rule: LedgersRule): RulePlan {
    const known = this.plans.get(rule) ?? rulePlan(rule, this.context);
    this.plans.set(rule, known);
    return known;
  }

  /** Remember a period; what its later ones look back to goes into these sums. */
  remember(period: Period, { remembered, quantities }: PreparedSettlement): LedgersPlan['remembered'] {
    if (remembered.length === 0) return [];
    const known = remembered.filter((name) => quantities.at.has(name));
    this.past.push(rememberedPeriod(period, known));
    return remembered.map((name) => {
      const sums = this.sumsOf(name);
      return { place: quantities.at.get(name) ?? -1, sums };
    });
  }

  sumsOf(name: string): Float64Array {
    const sums = this.sums.get(name) ?? new Float64Array(this.count + 1);
    this.sums.set(name, sums);
    return sums;
  }
}

/** A quantity that is 0 where it is not given. */
function isZeroWhenMissing(name: string, { prepared }: PlanContext): boolean {
  return name === 'shared' || prepared.tariff.document.measures?.[name]?.whenMissing === 'zero';
}

function rulePlan(rule: LedgersRule, context: PlanContext): RulePlan {
  const settlement = orLongWay(context.prepared.settlements.get(rule));
  const { quantities } = settlement;
  const quick = orLongWay(quickQuantities(quantities));
  const { given, ledgers, used } = context;
  // A quantity that is given and worked out, too, is one for the long way.
  for (const name of given.at.keys()) {
    const place = quantities.at.get(name);
    if (place !== undefined && quantities.madeBy[place] !== null) throw new LongWay();
  }
  const own = (rule.ledgers ?? []).map(({ id }) => ledgers.findIndex((ledger) => ledger.id === id));
  const openings = own.flatMap((at) => {
    const place = quantities.at.get(ledgers[at]?.id ?? '');
    return place === undefined || ledgers[at]?.isMoney === true ? [] : [at, place];
  });
  const opened = new Set(openings.filter((_, index) => index % 2 === 1));
  const copies: number[] = [];
  let days = -1;
  for (const place of quantities.needed) {
    const name = quantities.names[place] ?? '';
    const from = given.at.get(name);
    used.add(name);
    if (opened.has(place)) continue;
    if (from !== undefined) copies.push(from, place);
    else if (name === 'days') days = place;
    else if (!isZeroWhenMissing(name, context)) throw new LongWay();
  }
  return {
    rule,
    settlement,
    quick,
    timeless: [],
    copies: Int32Array.from(copies),
    days,
    openings: Int32Array.from(openings),
    strangers: ledgers.flatMap((_, at) => (own.includes(at) ? [] : [at])),
  };
}

/** What a period does to a ledger, with its payment on the grid of the bill. */
function paidMove(move: LedgerMove, context: PlanContext): Unscaled<PaidMove> {
  const { payment } = move;
  if (payment !== null) context.grids.push(paymentGrid(payment));
  return (grid) => ({ ...move, pays: payment === null ? null : paymentRatio(payment, grid) });
}

type LedgerIn = NonNullable<LedgersRule['ledgers']>[number];

function unitMove(
  rule: LedgerIn,
  { quantities }: PreparedSettlement,
  unscaled: Unscaled<PaidMove>,
): Unscaled<UnitMove> {
  const at = (name: string | undefined): number =>
    name === undefined ? -1 : (quantities.at.get(name) ?? -1);
  const places = { keeps: at(rule.keeps ?? rule.id), adds: at(rule.adds), most: at(rule.payment?.most) };
  return (grid) => ({ ...unscaled(grid), ...places });
}

function moneyMove(
  id: string,
  parts: readonly QuickPart[],
  grid: number,
  unscaled: Unscaled<PaidMove>,
): Unscaled<MoneyMove> {
  const [part] = parts;
  const credits = (part?.credits ?? []).filter(({ ledger }) => ledger === id);
  const lines = {
    used: credits.map(({ line }) => line),
    earned: credits.flatMap(({ earned }) => earned),
    place: parts.length === 1 ? (part?.balances.get(id) ?? -1) : -1,
    times: parts.length === 1 ? (part?.constants.grid ?? grid) / grid : 1,
  };
  return (own) => ({ ...unscaled(own), ...lines });
}

/** Plan a period under a rule of ledgers; remembers it for those after it. */
export function ledgersPeriod(
  plan: RulePlan,
  { context, period, parts, plans }: PlannedPeriod & { readonly plans: RulePlans },
): Unscaled<LedgersPlan> {
  const { rule, settlement, quick, timeless, copies, days, openings, strangers } = plan;
  const { prepared, account, ledgers } = context;
  const { quantities, remembered } = settlement;
  for (const name of remembered) plans.sumsOf(name);
  const past = { periods: [...plans.past], sums: plans.sums };
  const ordinal = plans.past.length;
  const runs = orLongWay(quickRuns(quick, { period, account, past }, timeless));
  const moves = (rule.ledgers ?? []).map((ledger) => {
    const at = ledgers.findIndex(({ id }) => id === ledger.id);
    const { grid } = ledgers[at] as (typeof ledgers)[number];
    const terms = { at, grid, prepared, period, account, days: context.days };
    return { ledger, grid, move: paidMove(orLongWay(moveOf(ledger, terms)), context) };
  });
  const isMoney = ({ ledger }: (typeof moves)[number]): boolean => ledger.unit === 'money';
  const units = moves
    .filter((one) => !isMoney(one))
    .map(({ ledger, move }) => unitMove(ledger, settlement, move));
  const money = moves
    .filter(isMoney)
    .map(({ ledger, grid, move }) => moneyMove(ledger.id, parts, grid, move));
  const isCharged = new Set(settlement.charged);
  const placed = partPlans(
    parts,
    (name) => {
      const place = quantities.at.get(name);
      return place !== undefined && isCharged.has(place) ? place : undefined;
    },
    context.raised,
  );
  const memory = plans.remember(period, settlement);
  return (grid) => ({
    scheme: 'ledgers',
    values: quick.values,
    copies,
    days,
    dayCount: periodDays(period) * 1000,
    openings,
    runs,
    remembered: memory,
    ordinal,
    units: units.map((one) => one(grid)),
    money: money.map((one) => one(grid)),
    strangers,
    parts: placed(grid),
  });
}
