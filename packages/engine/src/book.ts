import {
  addDays,
  dayText,
  givenFigure,
  type Figure,
  type Finding,
  type Outcome,
  type Path,
} from './quantity/index.ts';
import { inForceDuring, type SettlementRule, type Tariff } from './tariff/index.ts';
import {
  readReadings,
  type Account,
  type ReadingPair,
  type ReadingRow,
  type ReadReadingsOptions,
} from './readings/index.ts';
import { energyRatios, measureEnergy, type EnergyPeriod, type EnergyRatios } from './energy/index.ts';
import {
  closesBefore,
  settlePeriod,
  settlementFinding,
  type PassbookEntry,
  type SurplusPayment,
} from './settlement/index.ts';
import { coveredDays, prepareTariff, type PreparedTariff } from './bill/index.ts';
import { billMonth, type MonthBills } from './savings/index.ts';

/** One billing period of a household, from readings to bill. */
export interface BookMonth extends MonthBills {
  readonly energy: EnergyPeriod;
  readonly ratios: EnergyRatios;
  readonly passbook: PassbookEntry;
}

/** A household's account book: its billing periods in order of time. */
export interface Book {
  readonly account: Account;
  readonly tariff: Tariff;
  readonly months: readonly BookMonth[];
  /** Surplus that the next bill will pay, after the last period. */
  readonly paymentDue: SurplusPayment | null;
}

/** What an account book is made of. */
export interface BookInput {
  readonly account: Account;
  /** As read, or already in normal form. */
  readonly tariff: Tariff | PreparedTariff;
  readonly readings: readonly ReadingRow[];
}

function openingFigure(account: Account): Figure {
  return givenFigure({
    id: 'opening',
    label: 'Credit brought forward',
    unit: 'kWh',
    numerator: account.openingCredit,
    denominator: 1000,
    clause: 'account',
  });
}

/** The settlement rule in force on the last day of a period. */
function ruleInForce(tariff: Tariff, energy: EnergyPeriod, path: Path): Outcome<SettlementRule | null> {
  const last = addDays(energy.period.to, -1);
  const [rule] = inForceDuring(tariff.settlements, { from: last, to: energy.period.to });
  const earlier = closesBefore(tariff.settlements, energy.period);
  if (rule !== undefined && earlier !== null) {
    const after = dayText(rule.period.from);
    const values = { close: earlier.item.close.on, before: dayText(earlier.period.from), after };
    return { value: null, findings: [settlementFinding('settlement/two-rules', { path }, values)] };
  }
  if (rule !== undefined) return { value: rule.item, findings: [] };
  const values = { day: dayText(last), covered: coveredDays(tariff.settlements) };
  return { value: null, findings: [settlementFinding('settlement/no-rule-in-force', { path }, values)] };
}

/** What goes from one month into the next. */
interface Carried {
  readonly opening: Figure;
  readonly payment: SurplusPayment | null;
}

interface MonthStep {
  readonly prepared: PreparedTariff;
  readonly account: Account;
  readonly pair: ReadingPair;
  readonly carried: Carried;
}

/** Readings → energy → settlement → bill → savings, for one period. */
function bookMonth({ prepared, account, pair, carried }: MonthStep): Outcome<BookMonth | null> {
  const { tariff } = prepared;
  const unitsRule = tariff.document.units;
  const measured = measureEnergy(pair, account, unitsRule);
  const energy = measured.value;
  const rule = ruleInForce(tariff, energy, pair.to.path);
  if (rule.value === null) return { value: null, findings: [...measured.findings, ...rule.findings] };
  const settled = settlePeriod(energy, {
    rule: rule.value,
    opening: carried.opening,
    unitsRule,
    path: pair.to.path,
  });
  const before = [...measured.findings, ...settled.findings];
  if (settled.value === null) return { value: null, findings: before };
  const passbook = settled.value;
  const own = passbook.payment?.inBill === 'same' ? passbook.payment : null;
  const payments = [carried.payment, own].filter((payment) => payment !== null);
  const billed = billMonth(prepared, { account, entry: passbook, payments, path: pair.to.path });
  const findings = [...before, ...billed.findings];
  if (billed.value === null) return { value: null, findings };
  return { value: { energy, ratios: energyRatios(energy, account), passbook, ...billed.value }, findings };
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
function carriedFrom({ passbook, energy }: BookMonth): Carried {
  const { closing, paid, payment } = passbook;
  const until = `of the period to ${dayText(energy.period.to)}`;
  const opening = handedOn(closing, { id: 'opening', label: 'Credit brought forward' }, `closing ${until}`);
  if (payment?.inBill !== 'next') return { opening, payment: null };
  const units = handedOn(paid, { id: 'paid', label: paid.label }, `units paid ${until}`);
  return { opening, payment: { ...payment, units } };
}

/** What is true of every month is said once. */
function isSaidOfAll({ code }: Finding, said: readonly Finding[]): boolean {
  return code === 'energy/self-consumption-unknown' && said.some((finding) => finding.code === code);
}

/**
 * Keep a household's account book: understand its readings, measure the energy of every period, settle
 * units, bill them and say what solar saved.
 *
 * @param input    account, tariff and readings
 * @param options  the last day a reading can have
 * @returns        the periods up to the first that cannot be billed, and every finding about all of them
 */
export function keepBook(input: BookInput, options: ReadReadingsOptions = {}): Outcome<Book> {
  const { account } = input;
  const prepared = 'prepared' in input.tariff ? input.tariff : prepareTariff(input.tariff);
  const read = readReadings(input.readings, account, options);
  const findings: Finding[] = [...read.findings];
  const months: BookMonth[] = [];
  let carried: Carried = { opening: openingFigure(account), payment: null };
  for (const pair of read.value) {
    const month = bookMonth({ prepared, account, pair, carried });
    findings.push(...month.findings.filter((finding) => !isSaidOfAll(finding, findings)));
    if (month.value === null) break;
    months.push(month.value);
    carried = carriedFrom(month.value);
  }
  return { value: { account, tariff: prepared.tariff, months, paymentDue: carried.payment }, findings };
}
