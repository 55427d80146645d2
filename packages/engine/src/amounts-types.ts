import type { DayNumber, Period } from './quantity/index.ts';
import type { AccountDays, QuickRun, Ratio } from './settlement/index.ts';
import type { PreparedTariff, QuickPart } from './bill/index.ts';
import type { GivenSlots } from './amounts-given.ts';
import type { AmountsLedger, LedgerMove } from './amounts-ledgers.ts';
import type { PartRaises } from './amounts-raises.ts';
import type { UnitsAccount } from './periods-document.ts';

/** Billing periods of an account, and the quantities that each will give. */
export interface AmountsInput {
  readonly account: UnitsAccount;
  /** In order of time, each beginning where the one before ends. */
  readonly periods: readonly Period[];
  /** Names of the quantities given, or registers of the account, in the order of the columns. */
  readonly names: readonly string[];
  /** Charges, by id, whose rates a run can raise; left out: none. */
  readonly raised?: readonly string[];
}

/** A payment with what it comes to. */
export interface PaidMove extends LedgerMove {
  readonly pays: Ratio | null;
}

/** A ledger of units in a period: places of what moves it; −1 for nothing. */
export interface UnitMove extends PaidMove {
  readonly keeps: number;
  readonly adds: number;
  readonly most: number;
}

/** A ledger of money in a period: what its balance is multiplied by on the grid of the bill's lines. */
export interface MoneyMove extends PaidMove {
  /** Credit lines of the ledger, and the lines that earn it. */
  readonly used: readonly number[];
  readonly earned: readonly number[];
  readonly place: number;
  readonly times: number;
}

/** The charges of a part with the places of what they use. */
export interface PartPlan {
  readonly part: QuickPart;
  readonly from: Int32Array;
  /** Lines on the grid of the bill. */
  readonly times: number;
  /** Factors of its lines; null: no line of it can rise. */
  readonly raises: PartRaises | null;
}

/** A period under a rule of ledgers. */
export interface LedgersPlan {
  readonly scheme: 'ledgers';
  readonly values: Float64Array;
  /** Pairs: a place among the given quantities, and one among the rule's. */
  readonly copies: Int32Array;
  /** The place of the days; −1 where they are given or nothing uses them. */
  readonly days: number;
  readonly dayCount: number;
  /** Pairs: a ledger of units, and the place of its balance. */
  readonly openings: Int32Array;
  readonly runs: readonly QuickRun[];
  readonly remembered: readonly { readonly place: number; readonly sums: Float64Array }[];
  readonly ordinal: number;
  readonly units: readonly UnitMove[];
  readonly money: readonly MoneyMove[];
  /** Ledgers that the rule does not know. */
  readonly strangers: readonly number[];
  readonly parts: readonly PartPlan[];
}

/** A period under unit netting. */
export interface NettingPlan {
  readonly scheme: 'unit-netting';
  readonly imported: number;
  readonly exported: number;
  readonly capped: number;
  readonly cap: Ratio | null;
  readonly cuts: boolean;
  readonly isClosed: boolean;
  readonly pays: boolean;
  /** What the units paid come to; null: nothing pays them. */
  readonly ratio: Ratio | null;
  readonly isNext: boolean;
  /** Whether units are paid although no price is in force. */
  readonly isUnpriced: boolean;
  readonly parts: readonly PartPlan[];
  /** Whether a line sets credit off: under unit netting nothing may be left of it. */
  readonly hasCredit: boolean;
}

/** Everything that is the same whatever units the periods give. */
export interface AmountsPlan {
  readonly given: GivenSlots;
  readonly ledgers: readonly AmountsLedger[];
  /** Credit brought forward into the bank of unit netting; null: no rule has one. */
  readonly credit: number | null;
  readonly periods: readonly (LedgersPlan | NettingPlan)[];
  /** Payable and the lines stand on this grid before the total is rounded. */
  readonly grid: number;
  readonly total: Ratio | null;
  readonly payableGrid: number;
}

/** What every period of a plan is made from. */
export interface PlanContext {
  readonly prepared: PreparedTariff;
  readonly raised: readonly string[];
  readonly account: AccountDays;
  readonly given: GivenSlots;
  readonly ledgers: readonly AmountsLedger[];
  /** The days on which anything can have come into a ledger, in order of time. */
  readonly days: readonly DayNumber[];
  /** Collects the names that anything uses. */
  readonly used: Set<string>;
  /** Collects what amounts need to be whole numbers of. */
  readonly grids: number[];
}

/** A period before amounts have a common grid. */
export type Unscaled<Plan> = (grid: number) => Plan;

/** Payables and balances of some periods, in columns of whole numbers. */
export interface AmountsResult {
  /** How many periods are billed: all, or those before the first finding. */
  count: number;
  /** Whether they were billed without figures. */
  isQuick: boolean;
  /** What is to be paid in each period, in 1/grid of the currency. */
  readonly payables: Float64Array;
  readonly payableGrids: Float64Array;
  /** What each ledger hands on, a row for each period; 0 for one that its rule does not know. */
  readonly balances: Float64Array;
  readonly balanceGrids: Float64Array;
  /** What surplus each bill pays out, in 1/payoutGrid and below 0 in favour of the account; NaN where not quick. */
  readonly dues: Float64Array;
  /** The same of the surplus that each period closed, whichever bill pays it. */
  readonly payouts: Float64Array;
  payoutGrid: number;
}
