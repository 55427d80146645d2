import { dayText, parseDay, type Finding, type Outcome, type Path, type Period } from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import { prepareTariff, type PreparedTariff, type QuantityChange } from './bill/index.ts';
import { openLedgers } from './open-ledgers.ts';
import { beginWith, type Carried, type SettledMonth } from './month.ts';
import { periodFinding, type PeriodFindingCode } from './period-findings.ts';
import type { UnitsAccount, UnitsPeriod } from './periods-document.ts';
import { readChanges } from './read-changes.ts';
import { readPeriod } from './read-period.ts';
import { readQuantities, type Given, type NameReading } from './read-units.ts';
import { settleUnits, type Keeping, type UnitsStep } from './settle-units.ts';
import { spreadUnits, trueUpBill } from './true-up.ts';

type TrueUpRule = NonNullable<TariffDocument['trueUp']>;

const UNCOUNTED: readonly string[] = ['kW', 'kVA', 'class'];

/** One billing period, billed from its units. */
export interface UnitsMonth extends SettledMonth {
  readonly period: Period;
}

/** A period that was kept, with what it began from: a later one can replace it. */
interface KeptPeriod {
  readonly period: Period;
  readonly carried: Carried;
  readonly month: UnitsMonth;
  readonly isProvisional: boolean;
  /** What it was billed from. */
  readonly given: Given;
  readonly changes: readonly QuantityChange[];
}

/** Keeps the periods of an account, one after the other. */
export class Keeper {
  readonly kept: KeptPeriod[] = [];

  private readonly keeping: Keeping;
  private carried: Carried;

  constructor(keeping: Keeping, carried: Carried) {
    this.keeping = keeping;
    this.carried = carried;
  }

  /** Keep one period; the findings say whether it could be billed. */
  keep(one: UnitsPeriod, path: Path): readonly Finding[] {
    const { reading } = this.keeping;
    const replaced = replacedPeriods(one, this.kept, { keeping: this.keeping, path });
    if (replaced.findings.length > 0) return replaced.findings;
    const before = replaced.value[0]?.period.from ?? this.kept.at(-1)?.period.to ?? null;
    const period = readPeriod(one, before, path);
    const read = readQuantities(one.quantities, reading, [...path, 'quantities']);
    const changed = readChanges(one, period.value, reading, path);
    const findings = [...period.findings, ...read.findings, ...changed.findings];
    if (period.value === null || findings.length > 0) return findings;
    const step = { period: period.value, given: read.given, changes: changed.value, path };
    return replaced.value.length > 0
      ? this.replace(step, replaced.value)
      : this.settle(step, one.provisional === true);
  }

  /** Keep a period whose units are figures already; `more` are quantities as texts. */
  keepGiven(
    period: Period,
    given: Given,
    more: Readonly<Record<string, string>>,
    path: Path,
  ): readonly Finding[] {
    const read = readQuantities(more, this.keeping.reading, [...path, 'quantities']);
    if (read.findings.length > 0) return read.findings;
    return this.settle({ period, given: { ...given, ...read.given }, changes: [], path }, false);
  }

  private settle(step: Omit<UnitsStep, 'carried'>, isProvisional: boolean): readonly Finding[] {
    const { carried } = this;
    const settled = settleUnits(this.keeping, { ...step, carried });
    if (settled.value === null) return settled.findings;
    const month: UnitsMonth = { period: step.period, ...settled.value.month };
    const { period, given, changes } = step;
    this.kept.push({ period, carried, month, isProvisional, given, changes });
    this.carried = settled.value.carried;
    return settled.findings;
  }

  /** Settle the days of provisional periods again with the units read at last, and bill the difference. */
  private replace(step: Omit<UnitsStep, 'carried'>, replaced: readonly KeptPeriod[]): readonly Finding[] {
    const { prepared } = this.keeping;
    const rule = prepared.tariff.document.trueUp as TrueUpRule;
    const first = replaced[0] as KeptPeriod;
    const periods = partsOf(step.period, replaced);
    const shares = spreadUnits(step.given, periods, rule);
    let { carried } = first;
    const right: SettledMonth[] = [];
    for (const [index, period] of periods.entries()) {
      const before = replaced[index];
      const given = { ...shares[index], ...uncounted(before?.given ?? {}) };
      const changes = before?.changes ?? [];
      const settled = settleUnits(this.keeping, { ...step, period, given, changes, carried });
      if (settled.value === null) return settled.findings;
      right.push(settled.value.month);
      ({ carried } = settled.value);
    }
    const bills = { right: right.map(({ bill }) => bill), billed: replaced.map(({ month }) => month.bill) };
    const trueUp = trueUpBill(prepared, { ...bills, period: step.period, path: step.path });
    if (trueUp.value === null) return trueUp.findings;
    const last = right.at(-1) as SettledMonth;
    const month = { ...last, period: step.period, bill: trueUp.value, withoutSolar: null, savings: null };
    const { given, changes } = step;
    this.kept.push({
      period: step.period,
      carried: first.carried,
      month,
      isProvisional: false,
      given,
      changes,
    });
    this.carried = carried;
    return trueUp.findings;
  }
}

/** Powers and classes of a period: what no reading at last sets right. */
function uncounted(given: Given): Given {
  return Object.fromEntries(Object.entries(given).filter(([, { unit }]) => UNCOUNTED.includes(unit)));
}

/** The days that a true-up bills: those of the periods it replaces, and those after them. */
function partsOf(whole: Period, replaced: readonly KeptPeriod[]): readonly Period[] {
  const periods = replaced.map(({ period }) => period);
  const end = periods.at(-1)?.to ?? whole.from;
  return end < whole.to ? [...periods, { from: end, to: whole.to }] : periods;
}

/** The provisional periods that one replaces; none where it replaces none. */
function replacedPeriods(
  { from, to, replaces, changes = [] }: UnitsPeriod,
  kept: readonly KeptPeriod[],
  { keeping, path }: { readonly keeping: Keeping; readonly path: Path },
): { readonly value: readonly KeptPeriod[]; readonly findings: readonly Finding[] } {
  if (replaces === undefined) return { value: [], findings: [] };
  const count = Number.parseInt(replaces, 10);
  const value = kept.slice(-count);
  const [at, days] = [[...path, 'replaces'], { from, to }];
  const end = parseDay(to) ?? 0;
  const refuse = (code: PeriodFindingCode, values: Record<string, string>) => ({
    value: [],
    findings: [periodFinding(code, { path: at }, values)],
  });
  if (keeping.prepared.tariff.document.trueUp === undefined) return refuse('period/no-true-up-rule', {});
  const isSound = value.length === count && value.every(({ isProvisional }) => isProvisional);
  if (!isSound) return refuse('period/not-provisional', { count: replaces });
  if (
    value[0]?.period.from !== parseDay(from) ||
    end < (value.at(-1)?.period.to ?? 0) ||
    changes.length > 0
  ) {
    return refuse('period/not-the-same-days', {
      ...days,
      first: dayText((value[0] as KeptPeriod).period.from),
    });
  }
  return { value, findings: [] };
}

/** Findings about the account itself. */
function accountFindings(account: UnitsAccount, known: NameReading['known']): readonly Finding[] {
  const { since, settlementDay, registers = {} } = account;
  const bad = [
    ...(since !== undefined && parseDay(since) === null ? [['since', since] as const] : []),
    ...(settlementDay !== undefined && parseDay(`2000-${settlementDay}`) === null
      ? [['settlementDay', settlementDay] as const]
      : []),
  ];
  const names = [...known.keys()].map((name) => `"${name}"`).join(', ');
  const registered = Object.entries(registers).flatMap(([register, name]) => {
    const path = ['account', 'registers', register];
    return known.has(name)
      ? []
      : [periodFinding('period/bad-register', { path }, { register, name, known: names })];
  });
  const days = bad.map(([key, value]) =>
    periodFinding('period/no-such-day', { path: ['account', key] }, { value }),
  );
  return [...days, ...registered];
}

/** What an account is kept by, besides its periods. */
export interface KeepingInput {
  readonly account: UnitsAccount;
  readonly tariff: Tariff | PreparedTariff;
  readonly withSavings: boolean;
  /** First day of the first period, as text. */
  readonly first: string | undefined;
}

/** Begin to keep an account: its quantities and what it brings forward; null where they cannot be used. */
export function startKeeping({ account, tariff, withSavings, first }: KeepingInput): Outcome<Keeper | null> {
  const prepared = 'prepared' in tariff ? tariff : prepareTariff(tariff);
  const reading: NameReading = { known: prepared.quantities, registers: account.registers ?? {} };
  const facts = readQuantities(account.quantities ?? {}, reading, ['account', 'quantities']);
  const opened = openLedgers(account.opening ?? {}, prepared.tariff, first);
  const findings = [...accountFindings(account, reading.known), ...facts.findings, ...opened.findings];
  if (findings.length > 0) return { value: null, findings };
  const blocks = (prepared.tariff.document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const keeping: Keeping = { prepared, account, reading, facts: facts.given, blocks, withSavings };
  const start = beginWith(opened.value.credit);
  const actual = { ...start.chains.actual, ledgers: opened.value.ledgers };
  const carried: Carried = { ...start, chains: { ...start.chains, actual } };
  return { value: new Keeper(keeping, carried), findings };
}
