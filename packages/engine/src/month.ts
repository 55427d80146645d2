import {
  addDays,
  dayText,
  exactText,
  givenFigure,
  type Figure,
  type Outcome,
  type Path,
  type Period,
} from './quantity/index.ts';
import {
  inForceDuring,
  type LedgersRule,
  type SettlementRule,
  type Tariff,
  type UnitNettingRule,
} from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import {
  closesBefore,
  closingDays,
  paidRate,
  settlePeriod,
  settlementFinding,
  type AccountDays,
  type LedgerEntry,
  type PassbookEntry,
  type SurplusPayment,
} from './settlement/index.ts';
import {
  coveredDays,
  EMPTY_CHAIN,
  ledgersWithoutRule,
  type LedgerChain,
  type PreparedTariff,
  type QuantityChange,
} from './bill/index.ts';
import {
  billLedgerMonth,
  billMonth,
  powerFigures,
  type AccountPowers,
  type LedgerChains,
  type LedgerMonth,
  type MonthBills,
} from './savings/index.ts';

/** One billing period, settled and billed. */
export interface SettledMonth extends MonthBills {
  /** Where the units went, under the scheme `unit-netting`; null under any other. */
  readonly passbook: PassbookEntry | null;
  /** The ledgers, under the scheme `ledgers`. */
  readonly ledgers: readonly LedgerEntry[];
  /** Every quantity that was given or worked out, under the scheme `ledgers`. */
  readonly quantities: Readonly<Record<string, Figure>>;
}

/** What goes from one month into the next. */
export interface Carried {
  /** Credit of the bank, under the scheme `unit-netting`. */
  readonly credit: Figure;
  readonly payment: SurplusPayment | null;
  readonly chains: LedgerChains;
}

/** What a month is settled and billed from. */
export interface MonthStep {
  readonly prepared: PreparedTariff;
  readonly account: AccountPowers & AccountDays;
  readonly energy: EnergyPeriod;
  /** Channels that are 0 in the energy because nobody gave them; left out: none. */
  readonly missing?: readonly ('import' | 'export')[];
  /** Quantities besides those of the energy, by name. */
  readonly more: Readonly<Record<string, Figure>>;
  readonly carried: Carried;
  /** Powers and the like that changed inside the period; left out: none. */
  readonly changes?: readonly QuantityChange[];
  readonly path: Path;
  /** false: no bills besides the one there is; left out: what solar saved, too. */
  readonly withSavings?: boolean;
}

/** A month and what it hands on. */
export interface MonthResult {
  readonly month: SettledMonth;
  readonly carried: Carried;
}

/** What an account begins with. */
export function beginWith(credit: Figure): Carried {
  return {
    credit,
    payment: null,
    chains: { actual: EMPTY_CHAIN, withoutExport: EMPTY_CHAIN, withoutSolar: EMPTY_CHAIN },
  };
}

/** The settlement rule in force on the last day of a period. */
export function ruleInForce(
  tariff: Tariff,
  { period, account }: { readonly period: Period; readonly account: AccountDays },
  path: Path,
): Outcome<SettlementRule | null> {
  const last = addDays(period.to, -1);
  const [rule] = inForceDuring(tariff.settlements, { from: last, to: period.to });
  const earlier = closesBefore(tariff.settlements, period, account);
  if (rule !== undefined && earlier !== null) {
    const after = dayText(rule.period.from);
    const close = closingDays(earlier.item).join(', ') || 'a day of the account';
    const values = { close, before: dayText(earlier.period.from), after };
    return { value: null, findings: [settlementFinding('settlement/two-rules', { path }, values)] };
  }
  if (rule !== undefined) return { value: rule.item, findings: [] };
  const values = { day: dayText(last), covered: coveredDays(tariff.settlements) };
  return { value: null, findings: [settlementFinding('settlement/no-rule-in-force', { path }, values)] };
}

/** Units that a passbook entry hands on, as a figure of their own. */
function handedOn(
  units: Figure,
  words: { readonly id: string; readonly label: string },
  from: string,
): Figure {
  const { numerator, denominator } = units;
  return givenFigure({ ...words, unit: 'kWh', numerator, denominator, clause: `passbook, ${from}` });
}

/**
 * What goes from one period into the next: the credit, and surplus that the next bill pays. Both are
 * figures of their own, not the closing ones unfolded: their derivation stands in the passbook one line
 * above, and unfolding it again in every later bill would double with each month.
 */
function carriedFrom({ closing, paid, payment, energy }: PassbookEntry, chains: LedgerChains): Carried {
  const until = `of the period to ${dayText(energy.period.to)}`;
  const credit = handedOn(closing, { id: 'opening', label: 'Credit brought forward' }, `closing ${until}`);
  if (payment?.inBill !== 'next') return { credit, payment: null, chains };
  const units = handedOn(paid, { id: 'paid', label: paid.label }, `units paid ${until}`);
  return { credit, payment: { ...payment, units }, chains };
}

/** A period that no quantities were worked out in: a rule that looks back to it is told so. */
function lookedPast(chains: LedgerChains, { prepared, energy }: MonthStep): LedgerChains {
  const looksBack = [...prepared.settlements.values()].some(({ remembered }) => remembered.length > 0);
  if (!looksBack) return chains;
  const past = { period: energy.period, quantities: {} };
  const after = <Chain extends LedgerChain | null>(chain: Chain): Chain =>
    chain === null ? chain : { ...chain, past: [...chain.past, past] };
  const { actual, withoutExport, withoutSolar } = chains;
  return { actual: after(actual), withoutExport: after(withoutExport), withoutSolar: after(withoutSolar) };
}

/** Chains whose payments stand in a bill. */
function paidUp(chains: LedgerChains): LedgerChains {
  return chains.actual.payments.length === 0
    ? chains
    : { ...chains, actual: { ...chains.actual, payments: [] } };
}

function unitNettingMonth(step: MonthStep, rule: UnitNettingRule): Outcome<MonthResult | null> {
  const { prepared, energy, carried, account, path } = step;
  const lost = ledgersWithoutRule(carried.chains.actual.ledgers, new Set(), { from: rule.from, path });
  if (lost.length > 0) return { value: null, findings: lost };
  const missing = (step.missing ?? []).map((quantity) =>
    settlementFinding('settlement/not-given', { path }, { quantity }),
  );
  if (missing.length > 0) return { value: null, findings: missing };
  const unitsRule = prepared.tariff.document.units;
  const { document } = prepared.tariff;
  const rateOf = (rate: string) => paidRate(document, rate, energy.period);
  const settled = settlePeriod(energy, { rule, opening: carried.credit, unitsRule, path, rateOf });
  if (settled.value === null) return { value: null, findings: settled.findings };
  const passbook = settled.value;
  const own = passbook.payment?.inBill === 'same' ? passbook.payment : null;
  const due = [carried.payment, ...carried.chains.actual.payments, own];
  const payments = due.filter((payment) => payment !== null);
  const billed = billMonth(prepared, {
    account,
    entry: passbook,
    payments,
    more: step.more,
    changes: step.changes ?? [],
    path,
    withSavings: step.withSavings ?? true,
  });
  const findings = [...settled.findings, ...billed.findings];
  if (billed.value === null) return { value: null, findings };
  const month = { passbook, ledgers: [], quantities: {}, ...billed.value };
  const chains = lookedPast(paidUp(carried.chains), step);
  return { value: { month, carried: carriedFrom(passbook, chains) }, findings };
}

/** Everything that is known of a period, by the names that tariffs use. */
function givenQuantities({
  energy,
  account,
  more,
  missing = [],
}: MonthStep): Readonly<Record<string, Figure>> {
  const { generation, selfConsumption, totalUse, days } = energy;
  const span = { id: 'days', label: 'Days of the period', unit: 'count', clause: '' } as const;
  return {
    ...(missing.includes('import') ? {} : { import: energy.import }),
    ...(missing.includes('export') ? {} : { export: energy.export }),
    ...(generation === null ? {} : { generation }),
    ...(selfConsumption === null ? {} : { 'self-consumption': selfConsumption }),
    ...(totalUse === null ? {} : { 'total-use': totalUse }),
    ...powerFigures(account),
    days: givenFigure({ ...span, numerator: days * 1000, denominator: 1000 }),
    ...more,
  };
}

/** A credit that an account has from unit netting has no place among ledgers. */
function strayCredit({ carried, path }: MonthStep, rule: LedgersRule) {
  if (carried.credit.numerator === 0) return [];
  const balance = exactText(carried.credit.numerator, carried.credit.denominator);
  const values = { ledger: 'Credit brought forward', balance, from: rule.from };
  return [settlementFinding('settlement/balance-has-no-ledger', { path }, values)];
}

function ledgersMonth(step: MonthStep, rule: LedgersRule): Outcome<MonthResult | null> {
  const { prepared, energy, carried, account, path } = step;
  const stray = strayCredit(step, rule);
  if (stray.length > 0) return { value: null, findings: stray };
  const given = givenQuantities(step);
  const { payment } = carried;
  const due = payment === null ? [] : [payment];
  const actual = { ...carried.chains.actual, payments: [...due, ...carried.chains.actual.payments] };
  const chains = due.length === 0 ? carried.chains : { ...carried.chains, actual };
  const billed = billLedgerMonth(prepared, {
    rule,
    period: energy.period,
    given,
    account,
    chains,
    changes: step.changes ?? [],
    withSavings: step.withSavings ?? true,
    path,
  });
  if (billed.value === null) return { value: null, findings: billed.findings };
  const { chains: next, ...bills }: LedgerMonth = billed.value;
  const month = { passbook: null, ...bills };
  return {
    value: { month, carried: { ...carried, payment: null, chains: next } },
    findings: billed.findings,
  };
}

/** Settle and bill one period by the rule in force: settlement → bill → savings. */
export function settleMonth(step: MonthStep): Outcome<MonthResult | null> {
  const { prepared, energy, account, path } = step;
  const rule = ruleInForce(prepared.tariff, { period: energy.period, account }, path);
  if (rule.value === null) return { value: null, findings: rule.findings };
  return rule.value.scheme === 'unit-netting'
    ? unitNettingMonth(step, rule.value)
    : ledgersMonth(step, rule.value);
}
