import type { Period, Quotient } from './quantity/index.ts';
import type { TariffDocument } from './tariff/index.ts';
import { AmountTooLarge } from './bill/index.ts';
import type { BillFacts } from './audit/index.ts';
import { takeUnits } from './amounts-given.ts';
import { amountsPlan } from './amounts-plan.ts';
import type { AmountsPlan } from './amounts-types.ts';
import { QuickNetting } from './check-batch-netting.ts';
import { preparedTariff, type RunBasis } from './check-run.ts';
import type { Carried } from './month.ts';

type Plans = Map<string, AmountsPlan | null>;

/** Plans that are kept: every mistake has its own for each period of a table. */
const MOST_PLANS = 2000;

/** Facts that a plan does not hold: they go the long way. */
function isPlain({ accountLines, surplus, shown, opening }: BillFacts): boolean {
  if (accountLines.length > 0 || surplus.kind !== 'as-due' || shown['payable'] !== undefined) return false;
  for (const ledger in opening) if (ledger !== 'credit') return false;
  return true;
}

const owesNothing = ({ payment, chains: { actual } }: Carried): boolean =>
  payment === null && actual.payments.length === 0 && Object.keys(actual.ledgers).length === 0;

/**
 * Tells what bills come to by plain arithmetic, where a mistake after the other is tried on bill after bill of a table:
 * most of them do not come to what is printed, and need no figures to show it.
 */
export class QuickPayable {
  private readonly account: RunBasis['account'];
  private readonly netting = new QuickNetting();
  private plans = new WeakMap<TariffDocument, Plans>();
  private count = 0;

  constructor(account: RunBasis['account']) {
    this.account = account;
  }

  /**
   * What is to be paid of some facts.
   *
   * @param carried  what the bill before handed on
   * @returns        null where only the long way can say
   */
  of(facts: BillFacts, carried: Carried): Quotient | null {
    if (!isPlain(facts) || !owesNothing(carried)) return null;
    const names: string[] = [];
    const values: number[] = [];
    for (const given of [facts.units, facts.powers])
      for (const name in given) {
        names.push(name);
        values.push(given[name] as number);
      }
    const plan = this.planOf(facts, names);
    const bill = plan?.periods[0];
    if (plan === null || bill?.scheme !== 'unit-netting' || bill.hasCredit) return null;
    const own =
      plan.given.columns.length === values.length && takeUnits(plan.given, Float64Array.from(values), 0);
    return own ? this.bill(plan, facts.opening['credit'] ?? (carried.credit.numerator as number)) : null;
  }

  private bill(plan: AmountsPlan, opening: number): Quotient | null {
    const [bill] = plan.periods;
    if (bill?.scheme !== 'unit-netting' || !(opening >= 0)) return null;
    const { netting } = this;
    netting.begin();
    netting.amounts.opening = opening;
    try {
      if (!netting.bill(plan, bill)) return null;
    } catch (error) {
      if (error instanceof AmountTooLarge) return null;
      throw error;
    }
    return { numerator: netting.amounts.payable, denominator: plan.payableGrid };
  }

  /** The plan of some facts; null at the first of a tariff, which may be the last one: a plan costs a few bills. */
  private planOf({ tariff, period }: BillFacts, names: readonly string[]): AmountsPlan | null {
    const known = this.plans.get(tariff);
    if (known === undefined) {
      this.plans.set(tariff, new Map());
      return null;
    }
    const key = `${String(period.from)} ${String(period.to)} ${names.join(' ')}`;
    const own = known.get(key);
    if (own !== undefined) return own;
    const made = this.make(tariff, period, names);
    this.count += 1;
    if (this.count > MOST_PLANS) {
      this.plans = new WeakMap();
      this.count = 0;
    } else known.set(key, made);
    return made;
  }

  private make(tariff: TariffDocument, period: Period, names: readonly string[]): AmountsPlan | null {
    const prepared = preparedTariff(tariff);
    if (prepared === null || names.some((name) => !prepared.quantities.has(name))) return null;
    return amountsPlan(prepared, { account: this.account, periods: [period], names });
  }
}
