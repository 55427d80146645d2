import {
  addQuotients,
  givenFigure,
  periodDays,
  subtractQuotients,
  wholeSteps,
  ZERO,
  type DayNumber,
  type Figure,
  type Finding,
  type Quotient,
} from './quantity/index.ts';
import { inForceDuring, readTariff, type TariffDocument } from './tariff/index.ts';
import { prepareTariff, type PreparedTariff } from './bill/index.ts';
import { FIGURE, thousandths, type BillFacts, type Figures } from './audit/index.ts';
import { isOfUnitsTaken } from './quote/index.ts';
import { balanceOf, givenCredit } from './check-opening.ts';
import type { LedgerState } from './settlement/index.ts';
import type { Carried, SettledMonth } from './month.ts';
import type { UnitsAccount } from './periods-document.ts';
import { settleUnits } from './settle-units.ts';

/** A bill made of some facts. */
export interface BillRun {
  readonly figures: Figures;
  readonly month: SettledMonth;
  /** What it hands on. */
  readonly carried: Carried;
}

/** What bills of an account go by besides their facts. */
export interface RunBasis {
  readonly account: Pick<UnitsAccount, 'since' | 'settlementDay'>;
  /** What the bill before handed on, by the right chain. */
  readonly carried: Carried;
}

const PREPARED = new WeakMap<TariffDocument, PreparedTariff | null>();

/** A tariff in normal form, prepared once; null: it cannot be read. */
export function preparedTariff(document: TariffDocument): PreparedTariff | null {
  const known = PREPARED.get(document);
  if (known !== undefined) return known;
  const { value } = readTariff(JSON.stringify(document));
  const made = value === null ? null : prepareTariff(value);
  PREPARED.set(document, made);
  return made;
}

const NONE: readonly never[] = [];

/** Thousandths by name as figures; names that the tariff does not know are left out. */
function figuresOf(
  values: Readonly<Record<string, number>>,
  { quantities }: PreparedTariff,
): Record<string, Figure> {
  const figures: Record<string, Figure> = {};
  for (const name in values) {
    const known = quantities.get(name);
    if (known === undefined) continue;
    const { unit, label } = known;
    figures[name] = givenFigure({
      id: name,
      label,
      unit,
      numerator: values[name] as number,
      denominator: 1000,
      clause: 'bill',
    });
  }
  return figures;
}

/** What the bill before hands on, with the credit and the payment that the facts put in its place. */
function carriedBy({ opening, surplus, period, tariff }: BillFacts, carried: Carried): Carried {
  // A ledger may be called "credit", too.
  const netsUnits = tariff.settlements.some(({ scheme }) => scheme === 'unit-netting');
  const { credit, ...others } = opening;
  const ledgers = netsUnits ? others : opening;
  const isSame = !netsUnits || credit === undefined || credit === carried.credit.numerator;
  return {
    credit: isSame ? carried.credit : givenCredit(credit, 'bill'),
    payment: paidBy(surplus, carried.payment),
    chains: withBalances(paidFrom(carried.chains, surplus), ledgers, period.from),
  };
}

/** What ledgers left to be paid by this bill. */
function paidFrom(chains: Carried['chains'], surplus: BillFacts['surplus']): Carried['chains'] {
  const { payments } = chains.actual;
  if (surplus.kind === 'as-due' || payments.length === 0) return chains;
  const own = payments.map((payment) => paidBy(surplus, payment)).filter((payment) => payment !== null);
  return { ...chains, actual: { ...chains.actual, payments: own } };
}

function paidBy(surplus: BillFacts['surplus'], payment: Carried['payment']): Carried['payment'] {
  if (surplus.kind === 'as-due' || payment === null) return payment;
  return surplus.kind === 'not-paid' ? null : { ...payment, rate: surplus.rate };
}

/** Balances that differ from those handed on: as if they had come in the day before. */
function withBalances(
  chains: Carried['chains'],
  opening: Readonly<Record<string, number>>,
  born: DayNumber,
): Carried['chains'] {
  const held = chains.actual.ledgers;
  const others = Object.entries(opening).filter(([id, amount]) => heldOf(held[id]) !== amount);
  if (others.length === 0) return chains;
  const ledgers = { ...held };
  for (const [id, amount] of others) {
    const lots = amount === 0 ? [] : [{ born, amount }];
    ledgers[id] = { lots, denominator: 1000, creditSince: amount === 0 ? null : born };
  }
  return { ...chains, actual: { ...chains.actual, ledgers } };
}

const heldOf = (state: LedgerState | undefined): number => (state === undefined ? 0 : balanceOf(state));

/** What a bill comes to with its account lines: they are summed with the charges, and rounded together. */
function totals(
  { bill }: SettledMonth,
  { accountLines }: BillFacts,
  { totalRounding }: PreparedTariff,
): readonly (readonly [string, Quotient])[] {
  const sum =
    accountLines.length === 0
      ? bill.sum
      : addQuotients([bill.sum, ...accountLines.map(({ amount }) => amount)]);
  const payable =
    accountLines.length === 0 ? bill.payable : totalRounding === null ? sum : rounded(sum, totalRounding);
  return [
    ['sum', plain(sum)],
    ['rounding', subtractQuotients(payable, sum)],
    ['payable', plain(payable)],
  ];
}

const plain = ({ numerator, denominator }: Quotient): Quotient => ({ numerator, denominator });

function rounded(
  value: Quotient,
  { numerator, denominator, rounding }: NonNullable<PreparedTariff['totalRounding']>,
): Quotient {
  const steps = wholeSteps(value, { numerator, denominator }, rounding.mode);
  return { numerator: steps * numerator, denominator };
}

/** Lines that count, by charge: those of several versions are one. */
function lineFigures({ bill }: SettledMonth, into: Map<string, Quotient>): void {
  for (const { figure, counts } of bill.lines) {
    if (!counts) continue;
    const name = FIGURE.line(figure.id);
    const before = into.get(name);
    into.set(name, before === undefined ? plain(figure) : addQuotients([before, figure]));
  }
}

/** The units that the first charge for units goes by; null: there is no such charge. */
function billedUnits(month: SettledMonth, prepared: PreparedTariff, facts: BillFacts): Quotient | null {
  if (month.passbook !== null) return plain(month.passbook.billed);
  const [version] = inForceDuring(prepared.tariff.versions, facts.period);
  const charge = version?.item.charges.find(isOfUnitsTaken);
  if (charge === undefined) return null;
  const name = charge.on.replace(/@.*$/, '');
  const own = month.quantities[name];
  if (own !== undefined) return plain(own);
  const blocks = Object.entries(month.quantities).filter(([id]) => id.startsWith(`${name}@`));
  return blocks.length === 0 ? null : addQuotients(blocks.map(([, figure]) => figure));
}

function creditFigures(month: SettledMonth, into: Map<string, Quotient>): void {
  const { passbook, ledgers } = month;
  if (passbook !== null) {
    into.set(FIGURE.opening('credit'), plain(passbook.opening));
    into.set(FIGURE.closing('credit'), plain(passbook.closing));
  }
  for (const { id, opening, closing } of ledgers) {
    into.set(FIGURE.opening(id), plain(opening));
    into.set(FIGURE.closing(id), plain(closing));
  }
}

/** Readings at both ends: of a meter that was changed the first one of the old meter and the last one of the new. */
function readingFigures({ registers, stretches = NONE }: BillFacts, into: Map<string, Quotient>): void {
  for (const { register, previous, present } of [...Object.values(registers), ...stretches]) {
    const [first, last] = [FIGURE.reading(register.key, 'previous'), FIGURE.reading(register.key, 'present')];
    if (!into.has(first)) into.set(first, thousandths(previous));
    into.set(last, thousandths(present));
    if (register.id === 'import') into.set('factor', register.factor);
  }
}

/** Own use and total use, where they follow from what is known. */
function derivedUnits({ units }: BillFacts, into: Map<string, Quotient>): void {
  const { import: taken, export: given, generation: made } = units;
  if (taken === undefined || given === undefined || made === undefined || made < given) return;
  into.set(FIGURE.units('self-consumption'), thousandths(made - given));
  into.set(FIGURE.units('total-use'), thousandths(taken + made - given));
}

/** Every figure of a bill, by name. */
function figuresOfMonth(
  month: SettledMonth,
  facts: BillFacts,
  prepared: PreparedTariff,
): Map<string, Quotient> {
  const figures = new Map<string, Quotient>();
  figures.set('days', { numerator: periodDays(facts.period), denominator: 1 });
  const load = facts.powers['sanctioned-load'];
  if (load !== undefined) figures.set('load', thousandths(load));
  readingFigures(facts, figures);
  for (const name in facts.units) figures.set(FIGURE.units(name), thousandths(facts.units[name] as number));
  derivedUnits(facts, figures);
  const billed = billedUnits(month, prepared, facts);
  if (billed !== null) figures.set(FIGURE.units('billed'), billed);
  creditFigures(month, figures);
  lineFigures(month, figures);
  for (const { id, amount } of facts.accountLines) figures.set(id, amount);
  for (const [name, value] of totals(month, facts, prepared)) figures.set(name, value);
  for (const name in facts.shown) figures.set(name, facts.shown[name] ?? ZERO);
  return figures;
}

function settle(facts: BillFacts, prepared: PreparedTariff, { account, carried }: RunBasis) {
  const blocks = (prepared.tariff.document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const given = { ...figuresOf(facts.powers, prepared), ...figuresOf(facts.units, prepared) };
  const reading = { known: prepared.quantities, registers: {} };
  return settleUnits(
    { prepared, account, reading, facts: {}, blocks, withSavings: false },
    { period: facts.period, given, changes: NONE, carried: carriedBy(facts, carried), path: NONE },
  );
}

/**
 * Make a bill of some facts, right or wrong, by the same engine.
 *
 * @returns null where the facts cannot be billed: see {@link whyNotBilled}
 */
export function runBill(facts: BillFacts, basis: RunBasis): BillRun | null {
  const prepared = preparedTariff(facts.tariff);
  if (prepared === null) return null;
  const settled = settle(facts, prepared, basis);
  if (settled.value === null) return null;
  const { month, carried } = settled.value;
  return { figures: figuresOfMonth(month, facts, prepared), month, carried };
}

/** Why facts cannot be billed. */
export function whyNotBilled(facts: BillFacts, basis: RunBasis): readonly Finding[] {
  const prepared = preparedTariff(facts.tariff);
  return prepared === null
    ? readTariff(JSON.stringify(facts.tariff)).findings
    : settle(facts, prepared, basis).findings;
}
