import {
  dayText,
  energyRatios,
  keepIntervals,
  parseDay,
  wholeToDecimal,
  type Account,
  type Book,
  type BookMonth,
  type DayNumber,
  type Finding,
  type Period,
  type SurplusPayment,
  type Tariff,
  type UnitsAccount,
  type UnitsMonth,
} from '@unitbook/engine';
import { localColumns, monthsBetween, type CollectedFile, type LocalIntervals } from '@unitbook/meter-files';
import { commandFinding } from './findings.ts';
import { asBookMonth } from './render/case-month.ts';

/** What a book is kept of: interval data in place of readings. */
export interface IntervalBookInput {
  readonly tariff: Tariff;
  readonly account: Account;
  readonly file: CollectedFile;
  readonly zone: string | null;
  /** The day of the month on which periods begin, 1 to 28. */
  readonly cycleDay: number;
}

/** A book kept from intervals. */
export interface IntervalBook {
  readonly book: Book;
  /** How many billing periods the data has. */
  readonly periods: number;
  /** What is missing in a period, in words, by its first day. */
  readonly doubts: ReadonlyMap<DayNumber, string>;
  /** How many intervals there are, and how long each is. */
  readonly count: number;
  readonly minutes: number;
  readonly findings: readonly Finding[];
}

/** Outcome of keeping a book from intervals. */
export interface KeptIntervals {
  readonly value: IntervalBook | null;
  readonly findings: readonly Finding[];
}

/** An account as interval data is billed by it. */
function unitsAccount({ document, sanctionedLoad, plantCapacity, openingCredit }: Account): UnitsAccount {
  const { since, settlementDay } = document;
  return {
    ...(since === undefined ? {} : { since }),
    ...(settlementDay === undefined ? {} : { settlementDay }),
    quantities: {
      'sanctioned-load': wholeToDecimal(sanctionedLoad, 3),
      'plant-capacity': wholeToDecimal(plantCapacity, 3),
    },
    ...(openingCredit === 0 ? {} : { opening: { credit: wholeToDecimal(openingCredit, 3) } }),
  };
}

function leftOver(side: 'before' | 'after', period: Period | null): readonly Finding[] {
  if (period === null) return [];
  const { from, to } = period;
  const values = { side, days: String(to - from), from: dayText(from), to: dayText(to) };
  return [commandFinding('command/days-left-over', { path: ['intervals'] }, values)];
}

function noPeriod({ from, to }: Period, cycleDay: number): Finding {
  const values = { from: dayText(from), to: dayText(to), day: String(cycleDay) };
  return commandFinding('command/no-whole-period', { path: ['intervals'] }, values);
}

/** A month in the form of one billed from readings, with what can be said of the plant. */
function bookMonth(month: UnitsMonth, account: Account): BookMonth {
  const own = asBookMonth(month);
  return { ...own, ratios: energyRatios(own.energy, account) };
}

/** Surplus that the next bill pays, where the passbook says so. */
function paymentsDue(last: UnitsMonth | undefined): readonly SurplusPayment[] {
  const payment = last?.passbook?.payment;
  return payment?.inBill === 'next' ? [payment] : [];
}

/** What the page says of periods of which intervals are missing. */
function doubtsOf(findings: readonly Finding[]): ReadonlyMap<DayNumber, string> {
  const missing = findings.filter(({ code }) => code === 'energy/interval-missing');
  return new Map(
    missing.flatMap(({ values }) => {
      const day = parseDay(values['from'] ?? '');
      const count = values['count'] ?? '';
      const text = `MISSING: ${count} ${count === '1' ? 'interval' : 'intervals'} of these days. What they held is not billed.`;
      return day === null ? [] : [[day, text] as const];
    }),
  );
}

/** That the tariff counts coarser units than the sums of these months. */
function asMetered({ document }: Tariff, months: readonly BookMonth[]): readonly Finding[] {
  const { decimals } = document.units;
  const step = 10 ** (3 - Number.parseInt(decimals, 10));
  const isFiner = ({ energy }: BookMonth): boolean =>
    [energy.import, energy.export].some(({ numerator }) => (numerator as number) % step !== 0);
  if (!months.some(isFiner)) return [];
  return [commandFinding('command/units-as-metered', { path: ['intervals'] }, { decimals })];
}

function keep(
  { tariff, account }: IntervalBookInput,
  local: LocalIntervals,
  periods: readonly Period[],
): IntervalBook {
  const { columns, clockChanges } = local;
  const kept = keepIntervals({ account: unitsAccount(account), tariff, columns, periods, clockChanges });
  const months = kept.value.map((month) => bookMonth(month, account));
  return {
    book: { account, tariff, months, paymentsDue: paymentsDue(kept.value.at(-1)) },
    periods: periods.length,
    doubts: doubtsOf(kept.findings),
    count: columns.starts.length,
    minutes: columns.minutes,
    findings: [...asMetered(tariff, months), ...kept.findings],
  };
}

/**
 * Keep a book from interval data: whole billing periods only, each channel as it was metered.
 *
 * @returns  null where the data cannot be counted, or has no whole period
 */
export function keepIntervalBook(input: IntervalBookInput): KeptIntervals {
  const { file, zone, cycleDay } = input;
  const local = localColumns(file, { zone });
  if (local.value === null) return { value: null, findings: local.findings };
  const { span } = local.value;
  const { periods, before, after } = monthsBetween(span, cycleDay);
  if (periods.length === 0) return { value: null, findings: [...local.findings, noPeriod(span, cycleDay)] };
  const value = keep(input, local.value, periods);
  const ends = [...leftOver('before', before), ...leftOver('after', after)];
  return { value, findings: [...local.findings, ...ends, ...value.findings] };
}
