import {
  decimalPlaces,
  decimalToWhole,
  givenFigure,
  NumberTooLarge,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
  type Period,
} from '../quantity/index.ts';
import { type LedgerRule, type LedgersRule, type TariffDocument } from '../tariff/index.ts';
import { settlementFinding } from './findings.ts';
import { emptyLedger, type LedgerState } from './ledger.ts';
import { ledgerEntry, openingFigure, type LedgerEntry, type LedgerFigures } from './ledger-entry.ts';
import { paidRate } from './paid-rate.ts';
import { prepareQuantities } from './prepare-quantities.ts';
import { quantityFigure } from './quantity-figures.ts';
import type {
  AccountDays,
  PastPeriod,
  PreparedQuantities,
  QuantitySource,
  SettleContext,
} from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** A settlement rule of scheme `ledgers` in normal form. */
export interface PreparedSettlement {
  readonly rule: LedgersRule;
  readonly document: TariffDocument;
  readonly quantities: PreparedQuantities;
  /** Places of the quantities that charges name. */
  readonly charged: readonly number[];
  /** Quantities that later periods look back to. */
  readonly remembered: readonly string[];
}

/** The ledgers of an account, by id. */
export type LedgerStates = Readonly<Record<string, LedgerState>>;

/** What a period is settled from. */
export interface SettleInput {
  readonly period: Period;
  /** Every quantity that is known, in thousandths. */
  readonly given: Readonly<Record<string, Figure>>;
  readonly ledgers: LedgerStates;
  readonly past: readonly PastPeriod[];
  readonly account: AccountDays;
  /** Where the period stands in its input, for findings. */
  readonly path: Path;
}

/** A settled period: what charges are counted on, and the lines of the ledgers of units. */
export interface Settled {
  /** The quantities that charges of the document name. */
  readonly charged: Readonly<Record<string, Figure>>;
  /** Every quantity, given or worked out. */
  readonly quantities: () => Readonly<Record<string, Figure>>;
  readonly ledgers: readonly LedgerEntry[];
  /** What later periods look back to; null where they do not. */
  readonly remember: PastPeriod | null;
}

/**
 * Bring a settlement rule into normal form, once for any number of periods.
 *
 * @param charged  names of the quantities that charges of the document use
 */
export function prepareSettlement(
  document: TariffDocument,
  rule: LedgersRule,
  charged: ReadonlySet<string>,
): PreparedSettlement {
  const remembered = document.settlements.flatMap((one) =>
    one.scheme === 'ledgers' ? (one.quantities ?? []) : [],
  );
  const names = remembered.flatMap((definition) =>
    definition.is === 'running-total' || definition.is === 'mean' ? [definition.of] : [],
  );
  const quantities = prepareQuantities(document, rule, new Set([...charged, ...names]));
  const places = [...charged].flatMap((name) => quantities.at.get(name) ?? []);
  return { rule, document, quantities, charged: places, remembered: [...new Set(names)] };
}

/** A quantity that the input leaves out: 0 where the document says so, else unknown. */
function missing(document: TariffDocument, name: string): Figure | null {
  const isZero = name === 'shared' || document.measures?.[name]?.whenMissing === 'zero';
  if (!isZero) return null;
  const unit = document.measures?.[name]?.unit ?? 'kWh';
  const label = document.measures?.[name]?.label ?? 'Units shared out to this account';
  return givenFigure({ id: name, label, unit, numerator: 0, denominator: 1000, clause: 'not given' });
}

/** The given quantities in their places; those that are needed and unknown are findings. */
function givenPlaces(prepared: PreparedSettlement, input: SettleInput) {
  const { quantities, rule, document } = prepared;
  const figures: (Figure | null)[] = quantities.names.map((name) => input.given[name] ?? null);
  for (const ledger of rule.ledgers ?? []) {
    const at = quantities.at.get(ledger.id);
    if (at !== undefined) figures[at] = openingFigure(ledger, input.ledgers[ledger.id] ?? emptyLedger(1000));
  }
  const unknown: string[] = [];
  for (const at of quantities.needed) {
    figures[at] ??= missing(document, quantities.names[at] ?? '');
    if (figures[at] === null) unknown.push(quantities.names[at] ?? '');
  }
  return { figures, unknown };
}

function limitOf(rule: LedgerRule, denominator: number): number | null {
  const above = rule.payment?.above ?? rule.payment?.atLeast;
  if (above === undefined) return null;
  const places = decimalPlaces(above);
  return (decimalToWhole(above, places) * denominator) / 10 ** places;
}

/** The rate of a ledger's payment in a period. */
function rateOf(rule: LedgerRule, document: TariffDocument, period: Period): LedgerFigures['rate'] {
  const rate = rule.payment?.rate;
  if (rate === undefined) return null;
  return () => paidRate(document, rate, period);
}

/** The line of one ledger of units. */
function unitEntry(
  rule: LedgerRule,
  source: QuantitySource,
  input: SettleInput,
  document: TariffDocument,
): LedgerEntry {
  const { prepared, context } = source;
  const state = input.ledgers[rule.id] ?? emptyLedger(1000);
  const at = (name: string | undefined): number => (name === undefined ? -1 : (prepared.at.get(name) ?? -1));
  const value = (place: number): number => (place < 0 ? 0 : (context.values[place] as number));
  const nothing = { unit: rule.unit, numerator: 0, denominator: 1000, clause: '' } as const;
  const figure = (place: number, id: string, label: string): Figure =>
    place < 0 ? givenFigure({ id, label, ...nothing }) : quantityFigure(source, place);
  const [keeps, adds, most] = [at(rule.keeps ?? rule.id), at(rule.adds), at(rule.payment?.most)];
  const opening = state.lots.reduce((sum, { amount }) => sum + amount, 0);
  if (value(keeps) > opening || value(keeps) < 0 || value(adds) < 0) {
    throw new SettlementProblem('settlement/ledger-out-of-balance', { ledger: rule.label });
  }
  const moves = {
    state,
    keeps: value(keeps),
    adds: value(adds),
    most: most < 0 ? null : value(most),
    threshold: limitOf(rule, 1000),
    period: input.period,
    account: input.account,
  };
  return ledgerEntry(rule, moves, {
    keeps: figure(keeps, `${rule.id}-kept`, 'Left of the balance brought forward'),
    adds: figure(adds, `${rule.id}-added`, 'Added'),
    most: most < 0 ? null : quantityFigure(source, most),
    rate: rateOf(rule, document, input.period),
  });
}

function settled(
  prepared: PreparedSettlement,
  input: SettleInput,
  given: readonly (Figure | null)[],
): Settled {
  const { quantities, rule, document, remembered } = prepared;
  const values = new Float64Array(quantities.names.length);
  for (let at = 0; at < given.length; at += 1) values[at] = (given[at]?.numerator as number | undefined) ?? 0;
  const context: SettleContext = {
    values,
    given,
    period: input.period,
    past: input.past,
    account: input.account,
  };
  for (const step of quantities.steps) step.run(context);
  const source: QuantitySource = { prepared: quantities, context };
  const ledgers = (rule.ledgers ?? [])
    .filter(({ unit }) => unit !== 'money')
    .map((ledger) => unitEntry(ledger, source, input, document));
  const past: Record<string, number> = {};
  for (const name of remembered) {
    const at = quantities.at.get(name);
    if (at !== undefined) past[name] = values[at] as number;
  }
  const remember = remembered.length === 0 ? null : { period: input.period, quantities: past };
  const charged: Record<string, Figure> = {};
  for (const at of prepared.charged) charged[quantities.names[at] as string] = quantityFigure(source, at);
  return { charged, quantities: () => allQuantities(source), ledgers, remember };
}

/** Every quantity that is known, by name. */
function allQuantities(source: QuantitySource): Readonly<Record<string, Figure>> {
  const { prepared, context } = source;
  const known: Record<string, Figure> = {};
  prepared.names.forEach((name, at) => {
    if (context.given[at] !== null || prepared.kinds[at] !== null) known[name] = quantityFigure(source, at);
  });
  return known;
}

/** The finding that a problem comes to; what is no problem of the input is thrown on. */
export function problemFinding(error: unknown, path: Path): Finding {
  if (error instanceof SettlementProblem) return settlementFinding(error.code, { path }, error.values);
  if (error instanceof NumberTooLarge) return settlementFinding('settlement/too-large', { path });
  throw error;
}

/**
 * Settle a period by a rule of scheme `ledgers`: work its quantities out one by one and carry its
 * ledgers of units through it. Ledgers of money follow once the bill is known.
 *
 * @returns the quantities and ledgers, or null with the reasons
 */
export function settleLedgers(prepared: PreparedSettlement, input: SettleInput): Outcome<Settled | null> {
  const { figures, unknown } = givenPlaces(prepared, input);
  if (unknown.length > 0) {
    const { path } = input;
    const findings = unknown.map((quantity) =>
      settlementFinding('settlement/not-given', { path }, { quantity }),
    );
    return { value: null, findings };
  }
  try {
    return { value: settled(prepared, input, figures), findings: [] };
  } catch (error) {
    return { value: null, findings: [problemFinding(error, input.path)] };
  }
}
