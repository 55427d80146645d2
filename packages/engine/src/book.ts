import { givenFigure, type Figure, type Finding, type Outcome } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import {
  readReadings,
  type Account,
  type ReadingPair,
  type ReadingRow,
  type ReadReadingsOptions,
} from './readings/index.ts';
import {
  countBlocks,
  energyRatios,
  measureEnergy,
  type EnergyPeriod,
  type EnergyRatios,
} from './energy/index.ts';
import type { SurplusPayment } from './settlement/index.ts';
import { prepareTariff, type PreparedTariff } from './bill/index.ts';
import { beginWith, settleMonth, type Carried, type SettledMonth } from './month.ts';

/** One billing period of a household, from readings to bill. */
export interface BookMonth extends SettledMonth {
  readonly energy: EnergyPeriod;
  readonly ratios: EnergyRatios;
}

/** A household's account book: its billing periods in order of time. */
export interface Book {
  readonly account: Account;
  readonly tariff: Tariff;
  readonly months: readonly BookMonth[];
  /** Surplus that the next bill will pay, after the last period. */
  readonly paymentsDue: readonly SurplusPayment[];
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

interface PairStep {
  readonly prepared: PreparedTariff;
  readonly account: Account;
  readonly pair: ReadingPair;
  readonly carried: Carried;
}

/** Readings → energy → settlement → bill → savings, for one period. */
function bookMonth({ prepared, account, pair, carried }: PairStep) {
  const { path } = pair.to;
  const { units: rule, timeBlocks } = prepared.tariff.document;
  const blocks = (timeBlocks?.blocks ?? []).map(({ id }) => id);
  const inBlocks = countBlocks(pair, rule, blocks);
  if (inBlocks.value === null) return { value: null, findings: inBlocks.findings };
  const measured = measureEnergy(pair, account, rule, blocks.length > 0);
  const energy = measured.value;
  const settled = settleMonth({ prepared, account, energy, more: inBlocks.value, carried, path });
  const findings = [...measured.findings, ...settled.findings];
  if (settled.value === null) return { value: null, findings };
  const month: BookMonth = { energy, ratios: energyRatios(energy, account), ...settled.value.month };
  return { value: { month, carried: settled.value.carried }, findings };
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
  let carried = beginWith(openingFigure(account));
  for (const pair of read.value) {
    const step = bookMonth({ prepared, account, pair, carried });
    findings.push(...step.findings.filter((finding) => !isSaidOfAll(finding, findings)));
    if (step.value === null) break;
    months.push(step.value.month);
    ({ carried } = step.value);
  }
  const own = carried.payment === null ? [] : [carried.payment];
  const paymentsDue = [...own, ...carried.chains.actual.payments];
  return {
    value: { account, tariff: prepared.tariff, months, paymentsDue },
    findings,
  };
}
