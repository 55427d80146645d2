import { givenFigure, type DayNumber, type Finding, type Period } from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import { readReadings, type Account, type ReadingPair, type ReadingRow } from './readings/index.ts';
import type { BillFacts, CauseContext, PrintedBill } from './audit/index.ts';
import type { AppUnits, KnownBill } from './audit/index.ts';
import { alternativesOf } from './check-alternatives.ts';
import { checkBill, type BillTerms, type CheckedBill, type CheckOptions } from './check-bill.ts';
import { carriedFacts } from './check-carried.ts';
import { factsOfBill, factsOfPair, type KnownFacts, type ReadingsByDay } from './check-facts.ts';
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

function openingCredit({ openingCredit: numerator }: Account): Carried {
  const words = { id: 'opening', label: 'Credit brought forward', unit: 'kWh', clause: 'account' } as const;
  return beginWith(givenFigure({ ...words, numerator, denominator: 1000 }));
}

/** Balances that a bill hands on, by ledger, in thousandths or parts of money. */
function balancesOf({ credit, chains }: Carried, { settlements }: TariffDocument): Record<string, number> {
  const balances: Record<string, number> = {};
  if (settlements.some(({ scheme }) => scheme === 'unit-netting'))
    balances['credit'] = credit.numerator as number;
  for (const [id, { lots }] of Object.entries(chains.actual.ledgers)) {
    balances[id] = lots.reduce((sum, { amount }) => sum + amount, 0);
  }
  return balances;
}

/** A bill, right and as it was printed. */
interface BillBefore {
  readonly facts: BillFacts;
  readonly run: BillRun | null;
  readonly printed: PrintedBill | null;
  /** undefined: not known. */
  readonly isPaid: boolean | undefined;
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
    this.carried = openingCredit(input.account);
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
    // A bill on which nothing is said of a payment may have been paid, or not.
    const isPaid = printed === null || printed.paid === null ? undefined : true;
    this.before = { facts, run, printed, isPaid };
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
    const facts = this.complete(known);
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
      alternatives: this.isOpeningKnown ? [] : alternativesOf(facts, basis, [printed.figures, printedBefore]),
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
      paidBefore: before?.isPaid,
      serials: serialsOf(input.account, printed),
    };
  }
}

function serialsOf({ document }: Account, { document: printed }: PrintedBill): CauseContext['serials'] {
  const { grid, generation } = document.meters;
  return {
    grid: { own: grid.serial, printed: printed.serials?.grid ?? null },
    generation: { own: generation?.serial ?? null, printed: printed.serials?.generation ?? null },
  };
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
  const own = new Map(pairs.flatMap(({ from, to }) => [[from.day, from] as const, [to.day, to] as const]));
  const chain = new Chain(input, own);
  const bills: CheckedBill[] = [];
  let passed = 0;
  for (const printed of input.bills) {
    for (
      ;
      passed < pairs.length && (pairs[passed] as ReadingPair).period.to <= printed.period.from;
      passed += 1
    )
      if (!input.bills.some((bill) => samePeriod(pairs[passed] as ReadingPair, bill)))
        chain.pass(pairs[passed] as ReadingPair);
    bills.push(
      chain.check(
        printed,
        pairs.find((pair) => samePeriod(pair, printed)),
        options,
      ),
    );
  }
  return { bills, findings };
}
