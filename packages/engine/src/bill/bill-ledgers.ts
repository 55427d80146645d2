import {
  exactText,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
  type Period,
} from '../quantity/index.ts';
import type { LedgersRule, LedgerRule } from '../tariff/index.ts';
import {
  moneyBalance,
  moneyEntry,
  openingFigure,
  problemFinding,
  settleLedgers,
  settlementFinding,
  emptyLedger,
  type AccountDays,
  type LedgerEntry,
  type LedgerStates,
  type MoneyUse,
  type PastPeriod,
  type PreparedSettlement,
  type Settled,
  type SurplusPayment,
} from '../settlement/index.ts';
import { chargePeriod, closeBill, strayCredit, type Bill, type QuantityChange } from './bill-period.ts';
import type { BillQuantities } from './bill-part.ts';
import type { PreparedTariff } from './prepare.ts';
import { ledgerName } from './quantities.ts';

/** What goes from one period to the next under a rule of scheme `ledgers`. */
export interface LedgerChain {
  readonly ledgers: LedgerStates;
  readonly past: readonly PastPeriod[];
  /** What the next bill pays. */
  readonly payments: readonly SurplusPayment[];
}

/** What a period is billed from. */
export interface LedgerBillInput {
  readonly rule: LedgersRule;
  readonly period: Period;
  /** Every quantity that is known, by name. */
  readonly given: Readonly<Record<string, Figure>>;
  readonly account: AccountDays;
  readonly chain: LedgerChain;
  /** Powers and the like that changed inside the period; left out: none. */
  readonly changes?: readonly QuantityChange[];
  readonly path: Path;
}

/** A billed period with its ledgers, and what it hands on. */
export interface LedgerBill {
  readonly bill: Bill;
  readonly ledgers: readonly LedgerEntry[];
  /** Every quantity, given or worked out. */
  readonly quantities: () => Readonly<Record<string, Figure>>;
  readonly chain: LedgerChain;
}

/** An account of its first period. */
export const EMPTY_CHAIN: LedgerChain = { ledgers: {}, past: [], payments: [] };

/** Balances of money, as quantities that credit charges find. */
function moneyBalances(rule: LedgersRule, ledgers: LedgerStates): BillQuantities {
  const money = (rule.ledgers ?? []).filter(({ unit }) => unit === 'money');
  return Object.fromEntries(
    money.map((ledger) => [
      ledgerName(ledger.id),
      openingFigure(ledger, ledgers[ledger.id] ?? emptyLedger(1)),
    ]),
  );
}

/** Ledgers with a balance that a rule does not know: nothing says what becomes of it. */
export function ledgersWithoutRule(
  ledgers: LedgerStates,
  known: ReadonlySet<string>,
  place: { readonly from: string; readonly path: Path },
): readonly Finding[] {
  return Object.entries(ledgers).flatMap(([ledger, state]) => {
    const { numerator, denominator } = moneyBalance(state);
    if (known.has(ledger) || numerator === 0) return [];
    const values = { ledger, balance: exactText(numerator, denominator), from: place.from };
    return [settlementFinding('settlement/balance-has-no-ledger', { path: place.path }, values)];
  });
}

/** Quantities that the settlement works with cannot change inside a period: it settles the whole of it. */
function changedInputs(
  prepared: PreparedTariff,
  { rule, changes = [], path }: LedgerBillInput,
): readonly Finding[] {
  if (changes.length === 0) return [];
  const { quantities } = prepared.settlements.get(rule) as PreparedSettlement;
  const used = new Set(quantities.steps.flatMap(({ operands }) => operands.map(({ text }) => text)));
  const names = new Set(changes.flatMap((change) => Object.keys(change.quantities)));
  return [...names]
    .filter((name) => used.has(name))
    .map((quantity) => settlementFinding('settlement/changed-inside', { path }, { quantity }));
}

const ledgerIds = ({ ledgers = [] }: LedgersRule): ReadonlySet<string> =>
  new Set(ledgers.map(({ id }) => id));

/** What a bill that has no credit charge for a ledger leaves of it: everything. */
function untouched(rule: LedgerRule, ledgers: LedgerStates): MoneyUse {
  const keeps = openingFigure(rule, ledgers[rule.id] ?? emptyLedger(1));
  return { keeps, adds: { ...keeps, id: `${rule.id}-added`, label: 'Credit of this period', numerator: 0 } };
}

function moneyEntries(input: LedgerBillInput, used: ReadonlyMap<string, MoneyUse>): readonly LedgerEntry[] {
  const { rule, chain, period, account } = input;
  return (rule.ledgers ?? [])
    .filter(({ unit }) => unit === 'money')
    .map((ledger) => {
      const use = used.get(ledger.id) ?? untouched(ledger, chain.ledgers);
      return moneyEntry(ledger, chain.ledgers[ledger.id], { ...use, period, account, most: null });
    });
}

const paymentsIn = (entries: readonly LedgerEntry[], inBill: 'same' | 'next'): readonly SurplusPayment[] =>
  entries.flatMap(({ payment }) => (payment?.inBill === inBill ? [payment] : []));

/** Ledgers in the order of the rule. */
function inOrder(rule: LedgersRule, entries: readonly LedgerEntry[]): readonly LedgerEntry[] {
  return (rule.ledgers ?? []).flatMap(({ id }) => entries.find((entry) => entry.id === id) ?? []);
}

function closed(
  prepared: PreparedTariff,
  input: LedgerBillInput,
  settled: Settled,
): Outcome<LedgerBill | null> {
  const { rule, period, path, chain } = input;
  const quantities = { ...settled.charged, ...moneyBalances(rule, chain.ledgers) };
  const { changes = [] } = input;
  const charged = chargePeriod(prepared, { period, quantities, changes, path });
  if (charged.value === null) return { value: null, findings: charged.findings };
  const stray = strayCredit(charged.value, ledgerIds(rule), { period, path });
  if (stray.length > 0) return { value: null, findings: stray };
  const entries = inOrder(rule, [...settled.ledgers, ...moneyEntries(input, charged.value.money)]);
  const payments = [...chain.payments, ...paymentsIn(entries, 'same')];
  const bill = closeBill(prepared, { period, quantities, payments, path }, charged.value.lines);
  if (bill.value === null) return { value: null, findings: bill.findings };
  const next: LedgerChain = {
    ledgers: Object.fromEntries(entries.map(({ id, next: state }) => [id, state])),
    past: settled.remember === null ? chain.past : [...chain.past, settled.remember],
    payments: paymentsIn(entries, 'next'),
  };
  const value = { bill: bill.value, ledgers: entries, quantities: settled.quantities, chain: next };
  return { value, findings: bill.findings };
}

/**
 * Settle and bill one period under a rule of scheme `ledgers`: quantities, ledgers of units, charges and
 * credits, ledgers of money, payments.
 *
 * @returns the bill with its ledgers, or null with the reasons
 */
export function billLedgers(prepared: PreparedTariff, input: LedgerBillInput): Outcome<LedgerBill | null> {
  const lost = [
    ...ledgersWithoutRule(input.chain.ledgers, ledgerIds(input.rule), {
      from: input.rule.from,
      path: input.path,
    }),
    ...changedInputs(prepared, input),
  ];
  if (lost.length > 0) return { value: null, findings: lost };
  const { rule, period, given, chain, account, path } = input;
  const settlement = prepared.settlements.get(rule) as PreparedSettlement;
  const settled = settleLedgers(settlement, {
    period,
    given,
    ledgers: chain.ledgers,
    past: chain.past,
    account,
    path,
  });
  if (settled.value === null) return { value: null, findings: settled.findings };
  try {
    return closed(prepared, input, settled.value);
  } catch (error) {
    return { value: null, findings: [problemFinding(error, path)] };
  }
}
