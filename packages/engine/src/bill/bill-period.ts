import {
  addQuotients,
  commonMultiple,
  dayText,
  exactText,
  NumberTooLarge,
  type DayNumber,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
  type Period,
} from '../quantity/index.ts';
import { isBorneInFull } from '../tariff/index.ts';
import {
  moneyOf,
  settlementFinding,
  useOf,
  type MoneyUse,
  type SurplusPayment,
} from '../settlement/index.ts';
import { billPart, type BillLine, type BillQuantities } from './bill-part.ts';
import { billFinding } from './findings.ts';
import { periodParts, splitEnergy, type EnergySplit } from './period-parts.ts';
import {
  NoPriceInForce,
  preparedFor,
  type PeriodPart,
  type Prepared,
  type PreparedTariff,
} from './prepare.ts';
import { ledgerName } from './quantities.ts';
import { paymentLine, sumOfLines, totalOf, type Total } from './total.ts';

/** A bill: lines in the tariff's order, their sum, and the amount payable. */
export interface Bill extends Total {
  readonly period: Period;
  readonly lines: readonly BillLine[];
  readonly sum: Figure;
  readonly currency: string;
}

/** Powers and the like of an account from a day on. */
export interface QuantityChange {
  readonly from: DayNumber;
  readonly quantities: BillQuantities;
}

/** What a bill is made of besides the tariff. */
export interface BillInput {
  readonly period: Period;
  readonly quantities: BillQuantities;
  /** Powers and the like that changed inside the period, in order of time; left out: none. */
  readonly changes?: readonly QuantityChange[];
  /** Surplus units to pay in this bill. */
  readonly payments: readonly SurplusPayment[];
  /** Where the reading stands that closes the period, for findings. */
  readonly path: Path;
}

const NONE: readonly never[] = [];

/** The charges of a period, before anything is paid out. */
export interface ChargedPeriod {
  readonly lines: readonly BillLine[];
  /** What is left of each money ledger, and what the period added to it, by its id. */
  readonly money: ReadonlyMap<string, MoneyUse>;
}

/** What the parts of a period earned and used of a ledger of money. */
interface CreditSoFar {
  readonly clause: string;
  readonly earned: Figure[];
  readonly used: Figure[];
}

const NO_MONEY: ReadonlyMap<string, MoneyUse> = new Map();

/** A bill in the making: parts one after the other, each with what the one before left of the ledgers. */
class Charging {
  readonly lines: BillLine[] = [];
  readonly problems: Finding[] = [];
  /** By ledger; made when the first credit is met, which few tariffs have. */
  private credits: Map<string, CreditSoFar> | null = null;
  private readonly prepared: PreparedTariff;
  private readonly input: Omit<BillInput, 'payments'>;

  constructor(prepared: PreparedTariff, input: Omit<BillInput, 'payments'>) {
    this.prepared = prepared;
    this.input = input;
  }

  /** What is left of each ledger of money, and what the period added: the balance brought forward goes first. */
  money(): ReadonlyMap<string, MoneyUse> {
    if (this.credits === null) return NO_MONEY;
    const uses = [...this.credits].map(([ledger, { clause, earned, used }]) => {
      const sum = (id: string, label: string, figures: readonly Figure[]): Figure => {
        const [only, ...others] = figures;
        if (only !== undefined && others.length === 0) return only;
        return moneyOf({ id, label, clause, operation: 'sum' }, addQuotients(figures), [...figures]);
      };
      const opening = this.input.quantities[ledgerName(ledger)] ?? emptyBalance(ledger);
      const credit = sum(`${ledger}-earned`, 'Credit earned', earned);
      return [ledger, useOf(opening, credit, sum(`${ledger}-used`, 'Credit used', used))] as const;
    });
    return new Map(uses);
  }

  /** Balances of money as the next part finds them. */
  private balances(): BillQuantities {
    if (this.credits === null) return this.input.quantities;
    const left = [...this.money()].map(([id, { keeps, adds }]) => {
      const words = { id, label: `${keeps.label} and credit of the days before`, clause: keeps.clause };
      const both = moneyOf({ ...words, operation: 'sum' }, addQuotients([keeps, adds]), [keeps, adds]);
      return [ledgerName(id), both] as const;
    });
    return { ...this.input.quantities, ...Object.fromEntries(left) };
  }

  charge(part: PeriodPart, at: number, split: EnergySplit): void {
    const { period, path } = this.input;
    const balances = this.balances();
    const ready = preparedFor(this.prepared, part, period, {
      energyScale: split.energyScale,
      money: moneyDenominator(balances, this.prepared),
    });
    const quantities = changedBy(this.input.changes ?? NONE, part, balances);
    const billed = billPart({ quantities, part, at, split, prepared: ready, path });
    for (const line of billed.value) this.lines.push(line);
    for (const finding of billed.findings) this.problems.push(finding);
    if (billed.findings.length === 0 && ready.hasCredit) this.takeCredit(ready, billed.value);
  }

  /** What the credit lines of a part earned and used of their ledgers. */
  private takeCredit({ constants }: Prepared, lines: readonly BillLine[]): void {
    const credits = (this.credits ??= new Map<string, CreditSoFar>());
    constants.shape.lines.forEach(({ charge, earned }, at) => {
      if (charge.kind !== 'credit') return;
      const { ledger, clause, label } = charge;
      if (ledger === undefined) {
        const sum = addQuotients(earned.map((index) => (lines[index] as BillLine).figure));
        if (sum.numerator < 0) this.problems.push(belowNothing(label, this.input.path));
        return;
      }
      const credit: CreditSoFar = credits.get(ledger) ?? { clause, earned: [], used: [] };
      credit.used.push(opposite((lines[at] as BillLine).figure));
      for (const index of earned) credit.earned.push((lines[index] as BillLine).figure);
      credits.set(ledger, credit);
    });
  }
}

/** What balances of money are counted in: 1/this. */
function moneyDenominator(quantities: BillQuantities, { hasMoney }: PreparedTariff): number {
  let denominator = 1;
  if (!hasMoney) return denominator;
  for (const name in quantities) {
    const figure = quantities[name];
    if (figure?.unit === 'money') denominator = commonMultiple(denominator, figure.denominator);
  }
  return denominator;
}

/** Quantities as of the day of a part. */
function changedBy(
  changes: readonly QuantityChange[],
  part: PeriodPart,
  quantities: BillQuantities,
): BillQuantities {
  const day = part.day ?? part.period.from;
  if (changes.length === 0) return quantities;
  const past = changes.filter(({ from }) => from <= day);
  return past.length === 0
    ? quantities
    : past.reduce((all, one) => ({ ...all, ...one.quantities }), quantities);
}

/** A charge for the whole of a period that each part of it would bear in full. */
function unscaledFindings(
  prepared: PreparedTariff,
  parts: readonly PeriodPart[],
  { changes = NONE, path }: Omit<BillInput, 'payments'>,
): readonly Finding[] {
  if (changes.length === 0 || parts.length < 2) return NONE;
  const unitOf = (name: string) => prepared.units.get(name)?.unit ?? 'kWh';
  const charges = parts.flatMap(({ version }) =>
    version.item.charges.filter((charge) => isBorneInFull(charge, unitOf)),
  );
  return charges
    .slice(0, 1)
    .map(({ label }) => billFinding('bill/change-unscaled', { path }, { charge: label }));
}

const belowNothing = (ledger: string, path: Path): Finding =>
  settlementFinding('settlement/credit-below-nothing', { path }, { ledger });

/** A figure of money with the other sign. */
function opposite(figure: Figure): Figure {
  const { numerator, denominator } = figure;
  const nothing = emptyBalance('nothing');
  const words = {
    id: `${figure.id}-used`,
    label: 'Credit used',
    operation: 'difference',
    clause: figure.clause,
  } as const;
  return moneyOf(words, { numerator: 0 - (numerator as number), denominator }, [nothing, figure]);
}

const emptyBalance = (id: string): Figure =>
  moneyOf({ id, label: 'No balance', operation: 'sum', clause: '' }, { numerator: 0, denominator: 1 }, NONE);

/**
 * Charge one period under a tariff: every line of its versions, and what credits leave of ledgers.
 *
 * @param prepared  the tariff in normal form
 * @param input     the period and its quantities
 * @returns         the lines, or null with the reasons
 */
export function chargePeriod(
  prepared: PreparedTariff,
  input: Omit<BillInput, 'payments'>,
): Outcome<ChargedPeriod | null> {
  const { period, path } = input;
  const days = input.changes === undefined ? NONE : input.changes.map(({ from }) => from);
  const { value: parts, findings } = periodParts(prepared.tariff, period, days);
  if (parts.length === 0) return { value: null, findings };
  const unscaled = unscaledFindings(prepared, parts, input);
  if (unscaled.length > 0) return { value: null, findings: unscaled };
  const split = splitEnergy(prepared.tariff, period, parts);
  const charging = new Charging(prepared, input);
  try {
    for (let at = 0; at < parts.length; at += 1) charging.charge(parts[at] as PeriodPart, at, split);
  } catch (error) {
    if (error instanceof NoPriceInForce) {
      return { value: null, findings: [billFinding('bill/no-price', { path }, { problem: error.message })] };
    }
    throw error;
  }
  const { lines, problems } = charging;
  return problems.length > 0
    ? { value: null, findings: problems }
    : { value: { lines, money: charging.money() }, findings: NONE };
}

/** Credit that is left over where the rule in force has no ledger to take it. */
export function strayCredit(
  { money }: ChargedPeriod,
  known: ReadonlySet<string>,
  { period, path }: Pick<BillInput, 'period' | 'path'>,
): readonly Finding[] {
  if (money.size === 0) return NONE;
  return [...money].flatMap(([ledger, { adds }]) => {
    if (known.has(ledger) || adds.numerator === 0) return [];
    const values = {
      ledger,
      balance: exactText(adds.numerator, adds.denominator),
      from: dayText(period.from),
    };
    return [settlementFinding('settlement/balance-has-no-ledger', { path }, values)];
  });
}

/**
 * Bill one period under a tariff, every line with its derivation.
 *
 * @param prepared  the tariff in normal form
 * @param input     the period, its quantities and what the settlement pays in this bill
 * @returns         the bill, or null with the reason
 */
export function billPeriod(prepared: PreparedTariff, input: BillInput): Outcome<Bill | null> {
  const charged = chargePeriod(prepared, input);
  if (charged.value === null) return { value: null, findings: charged.findings };
  const stray = strayCredit(charged.value, new Set(), input);
  if (stray.length > 0) return { value: null, findings: stray };
  return closeBill(prepared, input, charged.value.lines);
}

/** Add what the settlement pays, then sum and round. */
export function closeBill(
  prepared: PreparedTariff,
  { period, path, payments }: BillInput,
  charged: readonly BillLine[],
): Outcome<Bill | null> {
  const { currency } = prepared.tariff.document;
  const version = charged.at(-1)?.version ?? '';
  try {
    const lines = [...charged, ...payments.map((payment) => paymentLine(payment, prepared, version))];
    const sum = sumOfLines(lines);
    const { payable, roundingDifference } = totalOf(sum, prepared);
    return { value: { period, lines, sum, roundingDifference, payable, currency }, findings: NONE };
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return {
      value: null,
      findings: [billFinding('bill/too-large', { path }, { charge: 'Sum of the lines' })],
    };
  }
}
