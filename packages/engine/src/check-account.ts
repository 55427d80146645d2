import {
  signOf,
  subtractQuotients,
  ZERO,
  type DayNumber,
  type Finding,
  type Period,
  type Quotient,
} from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import { readReadings, type Account, type ReadingPair, type ReadingRow } from './readings/index.ts';
import {
  ownSerials,
  serialOf,
  type AppUnits,
  type BillFacts,
  type CauseContext,
  type KnownBill,
  type KnownSerials,
  type PrintedBill,
} from './audit/index.ts';
import { alternativesOf } from './check-alternatives.ts';
import { checkBill, type BillTerms, type CheckedBill, type CheckOptions } from './check-bill.ts';
import { carriedFacts } from './check-carried.ts';
import { factsOfBill, factsOfPair, type KnownFacts, type ReadingsByDay } from './check-facts.ts';
import { balancesOf, givenCredit } from './check-opening.ts';
import { runBill, type BillRun, type RunBasis } from './check-run.ts';
import { beginWith, type Carried } from './month.ts';

/** What the bills of an account are checked with. */
export interface CheckInput {
  readonly account: Account;
  readonly tariff: Tariff;
  /** Tariffs of other categories of the same place, for a bill by the wrong one. */
  readonly otherTariffs?: readonly Tariff[];
  /** Own readings; none: those of the bills are taken. */
  readonly readings: readonly ReadingRow[];
  /** Printed bills in order of time. */
  readonly bills: readonly PrintedBill[];
  /** The day on which the plant was connected for net metering; left out: not known. */
  readonly connected?: DayNumber | null;
  /** false: nobody knows what was brought forward into the first period. */
  readonly isOpeningKnown?: boolean;
  /** What an app or an inverter says was made, for surprises; left out: none. */
  readonly app?: readonly AppUnits[];
}

/** The bills of an account, checked one after the other. */
export interface CheckedAccount {
  readonly bills: readonly CheckedBill[];
  readonly findings: readonly Finding[];
}

/** A bill, right and as it was printed. */
interface BillBefore {
  readonly facts: BillFacts;
  readonly run: BillRun | null;
  readonly printed: PrintedBill | null;
  /** What is left to be paid of the right bill; null: nobody says what was paid. */
  readonly unpaid: Quotient | null;
}

/** A bill on which nothing is said of a payment may have been paid, or not. */
function unpaidOf(run: BillRun | null, printed: PrintedBill | null): Quotient | null {
  const due = run?.figures.get('payable');
  if (due === undefined || printed === null || printed.paid === null) return null;
  const left = subtractQuotients(due, printed.paid.amount);
  return signOf(left) > 0 ? left : ZERO;
}

/** What a bill may ask for once more: as much as the bill before left unpaid, where it asks for anything. */
function lawfulArrears({ figures }: PrintedBill, before: BillBefore | null): BillFacts['accountLines'] {
  const unpaid = before?.unpaid ?? null;
  if (unpaid === null || signOf(unpaid) === 0 || !figures.has('arrears')) return [];
  return [{ id: 'arrears', label: 'Arrears', amount: unpaid }];
}

/** Goes through the periods of an account in order of time, with the right chain and with that of the bills. */
class Chain {
  carried: Carried;
  /** The bill before, right and as printed. */
  before: BillBefore | null = null;
  /** Whether what is brought forward is known: from the start, or since a settlement closed the bank. */
  private isOpeningKnown: boolean;
  /** Right bills so far, in order of time. */
  private readonly past: KnownBill[] = [];
  private readonly input: CheckInput;
  private readonly own: ReadingsByDay;

  constructor(input: CheckInput, own: ReadingsByDay) {
    this.input = input;
    this.own = own;
    this.carried = beginWith(givenCredit(input.account.openingCredit, 'account'));
    this.isOpeningKnown = input.isOpeningKnown ?? true;
  }

  private get basis(): RunBasis {
    const { document } = this.input.account;
    const { since, settlementDay } = document;
    const account = {
      ...(since === undefined ? {} : { since }),
      ...(settlementDay === undefined ? {} : { settlementDay }),
    };
    return { account, carried: this.carried };
  }

  private complete({ facts }: KnownFacts): BillFacts {
    return { ...facts, opening: balancesOf(this.carried, this.input.tariff.document) };
  }

  /** A period that no bill was printed for: it only hands on. */
  pass(pair: ReadingPair): void {
    const facts = this.complete(factsOfPair(pair, this.input.account, this.input.tariff.document));
    this.handOn(facts, runBill(facts, this.basis), null);
  }

  private handOn(facts: BillFacts, run: BillRun | null, printed: PrintedBill | null): void {
    this.before = { facts, run, printed, unpaid: unpaidOf(run, printed) };
    if (run === null) return;
    this.past.push({ facts, figures: run.figures });
    this.carried = run.carried;
    if (run.month.passbook?.isClosed === true) this.isOpeningKnown = true;
  }

  check(printed: PrintedBill, pair: ReadingPair | undefined, options: CheckOptions): CheckedBill {
    const { account, tariff } = this.input;
    const terms = { account, tariff: tariff.document, own: this.own };
    const known =
      pair === undefined ? factsOfBill(printed, terms) : factsOfPair(pair, account, tariff.document);
    const facts = { ...this.complete(known), accountLines: lawfulArrears(printed, this.before) };
    const checked = checkBill(this.termsOf(printed, facts, known), options);
    this.handOn(facts, checked.right, printed);
    return checked;
  }

  private termsOf(printed: PrintedBill, facts: BillFacts, { sources }: KnownFacts): BillTerms {
    const { before, basis } = this;
    const printedBefore = before?.printed?.figures ?? null;
    return {
      printed,
      facts,
      sources,
      basis,
      context: this.contextOf(printed),
      asCarried: carriedFacts(facts, printedBefore),
      alternatives: alternativesOf(facts, basis, {
        unknown: this.isOpeningKnown ? [] : Object.keys(facts.opening),
        known: [printed.figures, printedBefore],
      }),
      surroundings: {
        account: this.input.account,
        printedBefore: before?.printed ?? null,
        before: knownOf(before),
        yearBefore: this.past.find(({ facts: { period } }) => isYearBefore(period, facts.period)) ?? null,
        app: appUnitsOf(this.input.app ?? [], facts.period),
        connected: this.input.connected ?? null,
      },
    };
  }

  private contextOf(printed: PrintedBill): CauseContext {
    const { before, carried, input } = this;
    const { otherTariffs = [], tariff } = input;
    return {
      printed: printed.figures,
      status: printed.status,
      before: before?.facts ?? null,
      printedBefore: before?.printed?.figures ?? null,
      closingBefore: before === null ? null : balancesOf(carried, tariff.document),
      otherTariffs: otherTariffs.map(({ document }) => document),
      connected: input.connected ?? null,
      paidBefore: before?.unpaid == null ? undefined : signOf(before.unpaid) === 0,
      serials: serialsOf(input.account, printed),
    };
  }
}

function serialsOf(account: Account, printed: PrintedBill): CauseContext['serials'] {
  const known = (['grid', 'generation'] as const).map((meter): readonly [string, KnownSerials] => [
    meter,
    { own: ownSerials(account, meter), printed: serialOf(printed, meter) ?? null },
  ]);
  return Object.fromEntries(known);
}

const knownOf = (before: BillBefore | null): KnownBill | null =>
  before === null || before.run === null ? null : { facts: before.facts, figures: before.run.figures };

/** Days of a year, and how far the beginnings of two months a year apart may be off. */
const YEAR = 365;
const DAYS_OFF = 15;

function isYearBefore(earlier: Period, now: Period): boolean {
  const off = now.from - earlier.from - YEAR;
  return off >= -DAYS_OFF && off <= DAYS_OFF;
}

/** What an app says of a period: of the same days where it does, else of days that are partly the same. */
function appUnitsOf(app: readonly AppUnits[], { from, to }: Period): AppUnits | null {
  const same = app.find(({ period }) => period.from === from && period.to === to);
  return same ?? app.find(({ period }) => period.from < to && period.to > from) ?? null;
}

const samePeriod = (pair: ReadingPair, { period }: PrintedBill): boolean =>
  pair.period.from === period.from && pair.period.to === period.to;

/** Whether a printed bill counts days of a period of own readings: these are not handed on a second time. */
const isBilled = ({ period: { from, to } }: ReadingPair, bills: readonly PrintedBill[]): boolean =>
  bills.some(({ period }) => period.from < to && period.to > from);

/** Own readings; without any, bills are checked by the readings and units that they print. */
const ownReadings = ({ readings, account }: CheckInput): ReturnType<typeof readReadings> =>
  readings.length === 0 ? { value: [], findings: [] } : readReadings(readings, account);

/**
 * Check the printed bills of an account one after the other: each is set beside the right bill, made of own readings
 * where there are some, with the credit of the right chain; what differs is explained.
 *
 * @param input  bills in order of time; own readings may reach back before them
 */
export function checkAccountBills(input: CheckInput, options: CheckOptions = {}): CheckedAccount {
  const { value: pairs, findings } = ownReadings(input);
  const byDay = new Map(pairs.flatMap(({ from, to }) => [[from.day, from] as const, [to.day, to] as const]));
  const chain = new Chain(input, byDay);
  const bills: CheckedBill[] = [];
  let passed = 0;
  for (const printed of input.bills) {
    for (let pair = pairs[passed]; pair !== undefined; pair = pairs[passed]) {
      if (pair.period.to > printed.period.from) break;
      if (!isBilled(pair, input.bills)) chain.pass(pair);
      passed += 1;
    }
    const own = pairs.find((pair) => samePeriod(pair, printed));
    bills.push(chain.check(printed, own, options));
  }
  return { bills, findings };
}
