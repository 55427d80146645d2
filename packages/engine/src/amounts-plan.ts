import { commonMultiple, parseDay, type Period } from './quantity/index.ts';
import type { LedgersRule, SettlementRule } from './tariff/index.ts';
import type { AccountDays, LedgerStates, Ratio } from './settlement/index.ts';
import { creditGrid, quickParts, type PreparedTariff, type QuickPart } from './bill/index.ts';
import { givenSlots, onlyUsed, type GivenSlots } from './amounts-given.ts';
import { ledgersOf, moneyGrid, type AmountsLedger } from './amounts-ledgers.ts';
import { ledgersPeriod, RulePlans } from './amounts-rule.ts';
import { nettingPeriod } from './amounts-netting.ts';
import { LongWay, orLongWay } from './amounts-long-way.ts';
import type {
  AmountsInput,
  AmountsPlan,
  LedgersPlan,
  NettingPlan,
  PlanContext,
  Unscaled,
} from './amounts-types.ts';
import { ruleInForce } from './month.ts';
import { openLedgers } from './open-ledgers.ts';
import { startKeeping } from './keeper.ts';
import { readQuantities, type Given } from './read-units.ts';

/** The largest grid on which amounts leave room for a bill. */
const FINEST = 2 ** 36;

/** Periods as the input has to have them, and the quantities as columns; anything else is a finding. */
function checkInput(prepared: PreparedTariff, { account, periods, names }: AmountsInput): Given {
  const started = startKeeping({ account, tariff: prepared, withSavings: false, first: undefined });
  const registers = account.registers ?? {};
  const columns = names.map((name) => registers[name] ?? name);
  const isSound =
    started.value !== null &&
    new Set(columns).size === columns.length &&
    columns.every((name) => prepared.quantities.has(name)) &&
    periods.every(({ from, to }, at) => to > from && (at === 0 || periods[at - 1]?.to === from));
  if (!isSound) throw new LongWay();
  const reading = { known: prepared.quantities, registers };
  return readQuantities(account.quantities ?? {}, reading, []).given;
}

function rulesOf(
  { tariff }: PreparedTariff,
  periods: readonly Period[],
  account: AccountDays,
): readonly SettlementRule[] {
  return periods.map((period) => orLongWay(ruleInForce(tariff, { period, account }, []).value));
}

/** The days that an account tells. */
function daysOf({ since, settlementDay }: AmountsInput['account']): AccountDays {
  return { since: since === undefined ? null : parseDay(since), settlementDay: settlementDay ?? null };
}

/** The charges of each period; balances of money on a grid on which all credits are whole. */
function chargesOf(
  prepared: PreparedTariff,
  periods: readonly Period[],
  least: number,
): { readonly parts: readonly (readonly QuickPart[])[]; readonly money: number } {
  const charged = (money: number) => periods.map((period) => orLongWay(quickParts(prepared, period, money)));
  const plain = charged(1);
  const money = plain.map(creditGrid).reduce(commonMultiple, least);
  if (!(money <= FINEST)) throw new LongWay();
  return { parts: money === 1 ? plain : charged(money), money };
}

const isLedgers = (rule: SettlementRule): rule is LedgersRule => rule.scheme === 'ledgers';

/** Rounding of the total as a ratio from a grid to its steps. */
function totalRatio(
  { totalRounding }: PreparedTariff,
  grid: number,
): Pick<AmountsPlan, 'total' | 'payableGrid'> {
  if (totalRounding === null) return { total: null, payableGrid: grid };
  const { numerator, denominator, rounding } = totalRounding;
  const divide = (grid / denominator) * numerator;
  const total: Ratio = { multiply: 1, divide, mode: rounding.mode, step: numerator, per: 1 };
  return { total, payableGrid: denominator };
}

interface Opening {
  readonly credit: number;
  readonly ledgers: LedgerStates;
}

function contextOf(
  prepared: PreparedTariff,
  input: AmountsInput,
  given: GivenSlots,
  ledgers: readonly AmountsLedger[],
): PlanContext {
  const account = daysOf(input.account);
  const days = [...input.periods.slice(0, 1).map(({ from }) => from), ...input.periods.map(({ to }) => to)];
  return {
    prepared,
    raised: input.raised ?? [],
    account,
    given,
    ledgers,
    days,
    used: new Set(),
    grids: [prepared.totalRounding?.denominator ?? 1],
  };
}

function planOf(prepared: PreparedTariff, input: AmountsInput, opening: Opening): AmountsPlan {
  const { account, periods, names } = input;
  const { document } = prepared.tariff;
  const facts = checkInput(prepared, input);
  const blocks = (document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const columns = names.map((name) => account.registers?.[name] ?? name);
  const given = givenSlots(columns, facts, blocks);
  const declared = document.settlements.filter(isLedgers);
  const rules = rulesOf(prepared, periods, daysOf(account));
  const charges = chargesOf(prepared, periods, moneyGrid(declared, opening.ledgers));
  const money = { opened: opening.ledgers, money: charges.money, periods: periods.length };
  const ledgers = orLongWay(ledgersOf(declared, money));
  const hasBank = document.settlements.some((rule) => !isLedgers(rule));
  if (hasBank && ledgers.some(({ id }) => id === 'credit')) throw new LongWay();
  const context = contextOf(prepared, input, given, ledgers);
  const plans = new RulePlans(context, periods.length);
  const unscaled = rules.map((rule, at): Unscaled<LedgersPlan | NettingPlan> => {
    const [period, parts] = [periods[at] as Period, charges.parts[at] ?? []];
    for (const { constants } of parts) context.grids.push(constants.grid);
    return isLedgers(rule)
      ? ledgersPeriod(plans.of(rule), { context, period, parts, plans })
      : nettingPeriod(rule, { context, period, parts });
  });
  const grid = context.grids.reduce(commonMultiple, 1);
  if (!(grid <= FINEST)) throw new LongWay();
  return {
    given: onlyUsed(given, context.used),
    ledgers,
    credit: hasBank ? opening.credit : null,
    periods: unscaled.map((one) => one(grid)),
    grid,
    ...totalRatio(prepared, grid),
  };
}

/**
 * Everything about the bills of some periods that does not depend on their units.
 *
 * @returns null where only the long way can bill them, or say why not
 */
export function amountsPlan(prepared: PreparedTariff, input: AmountsInput): AmountsPlan | null {
  const [first] = input.periods;
  const { value, findings } = openLedgers(input.account.opening ?? {}, prepared.tariff, undefined);
  if (first === undefined || findings.length > 0) return null;
  const born = first.from;
  const ledgers = Object.entries(value.ledgers).map(([id, state]) => {
    const lots = state.lots.map((lot) => ({ ...lot, born }));
    return [id, { ...state, lots, creditSince: lots.length === 0 ? null : born }] as const;
  });
  try {
    const credit = value.credit.numerator as number;
    return planOf(prepared, input, { credit, ledgers: Object.fromEntries(ledgers) });
  } catch (error) {
    if (error instanceof LongWay) return null;
    throw error;
  }
}
