import {
  dayText,
  givenFigure,
  isSameQuotient,
  type DayNumber,
  type Period,
  type Quotient,
} from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import { FIGURE, type BillFacts, type CauseContext, type Figures, type PrintedBill } from './audit/index.ts';
import { alternativesOf } from './check-alternatives.ts';
import { printedUnits, TENS, type BatchNames, type BatchRows } from './check-batch-columns.ts';
import { checkBill, type BillTerms, type CheckedBill, type CheckOptions } from './check-bill.ts';
import type { FactSource } from './check-facts.ts';
import { runBill, type BillRun, type RunBasis } from './check-run.ts';
import { beginWith, type Carried } from './month.ts';

/** What tables of bills are checked with. */
export interface BatchTerms {
  readonly tariff: Tariff;
  /** Tariffs of other categories of the same place, for bills by the wrong one. */
  readonly otherTariffs?: readonly Tariff[];
  readonly names: BatchNames;
  /** What all accounts have in common. */
  readonly account?: RunBasis['account'];
  readonly options?: CheckOptions;
}

const opened = (numerator: number): Carried =>
  beginWith(
    givenFigure({
      id: 'opening',
      label: 'Credit brought forward',
      unit: 'kWh',
      clause: 'table',
      numerator,
      denominator: 1000,
    }),
  );

/** Balances that a bill hands on, by ledger. */
function balancesOf({ credit, chains }: Carried, { settlements }: TariffDocument): Record<string, number> {
  const balances: Record<string, number> = {};
  if (settlements.some(({ scheme }) => scheme === 'unit-netting'))
    balances['credit'] = credit.numerator as number;
  for (const [id, { lots }] of Object.entries(chains.actual.ledgers))
    balances[id] = lots.reduce((sum, { amount }) => sum + amount, 0);
  return balances;
}

/** A bill of an account, right and as it was printed. */
interface BillBefore {
  readonly facts: BillFacts;
  readonly printed: Figures;
}

const POWERS: readonly string[] = ['sanctioned-load', 'plant-capacity'];
const NO_SERIALS: CauseContext['serials'] = {};

/** Makes the printed bills of rows, and goes through those of one account in order of time. */
export class FullCheck {
  private readonly terms: BatchTerms;
  private readonly others: readonly TariffDocument[];
  private carried: Carried = opened(0);
  private before: BillBefore | null = null;
  private isOpeningKnown = false;
  private openedWith: Readonly<Record<string, number>> = {};

  constructor(terms: BatchTerms) {
    this.terms = terms;
    this.others = (terms.otherTariffs ?? []).map(({ document }) => document);
  }

  /**
   * Check the marked rows of an account; the others, which are right, only hand on what they leave.
   *
   * @param from, to  the rows of the account, the last one not among them
   * @param take      takes what was found of each
   */
  run(
    rows: BatchRows,
    { from, to }: { readonly from: number; readonly to: number },
    marks: Uint8Array,
    take: (row: number, checked: CheckedBill) => void,
  ): void {
    this.before = null;
    for (let row = from; row < to; row += 1) {
      const isBegun = row === from || rows.from[row] !== rows.to[row - 1];
      if (isBegun) this.begin(rows, row);
      const printed = this.printedOf(rows, row);
      const { facts, sources } = this.factsOf(rows, row, printed);
      const basis = { account: this.terms.account ?? {}, carried: this.carried };
      if (marks[row] === 1) {
        const checked = checkBill(this.termsOf({ printed, facts, sources, basis }), this.terms.options);
        take(row, checked);
        this.handOn(facts, checked.right, printed);
      } else this.handOn(facts, runBill(facts, basis), printed);
    }
  }

  private begin({ opening }: BatchRows, row: number): void {
    const told = this.terms.names.opening.map(
      (name, column) => [name, opening[column]?.[row] ?? NaN] as const,
    );
    const given = Object.fromEntries(told.filter(([, value]) => !Number.isNaN(value)));
    this.isOpeningKnown = Object.keys(given).length > 0;
    this.carried = opened(given['credit'] ?? 0);
    this.openedWith = given;
  }

  private printedOf({ from, to, printed }: BatchRows, row: number): PrintedBill {
    const figures = new Map<string, Quotient>();
    this.terms.names.printed.forEach((name, column) => {
      const numerator = printed[column]?.mantissas[row] ?? NaN;
      if (Number.isNaN(numerator)) return;
      figures.set(name, { numerator, denominator: TENS[printed[column]?.places[row] ?? 0] ?? 1 });
    });
    const period: Period = { from: from[row] as DayNumber, to: to[row] as DayNumber };
    const document = { from: dayText(period.from), to: dayText(period.to) };
    return { document, period, figures, status: null, paid: null, path: [] };
  }

  private factsOf(
    { known }: BatchRows,
    row: number,
    { figures, period }: PrintedBill,
  ): { readonly facts: BillFacts; readonly sources: Record<string, FactSource> } {
    const { document } = this.terms.tariff;
    const units: Record<string, number> = {};
    const powers: Record<string, number> = {};
    const sources: Record<string, FactSource> = {};
    this.terms.names.known.forEach((name, column) => {
      const value = known[column]?.[row] ?? NaN;
      if (Number.isNaN(value)) return;
      if (POWERS.includes(name)) powers[name] = value;
      else [units[name], sources[name]] = [value, 'own'];
    });
    for (const name of ['import', 'export', 'generation']) {
      const printed = units[name] === undefined ? thousandthsOf(figures.get(printedUnits(name))) : null;
      if (printed !== null) [units[name], sources[name]] = [printed, 'printed'];
    }
    const opening = { ...balancesOf(this.carried, document), ...this.openedWith };
    const surplus = { kind: 'as-due' } as const;
    const rest = { registers: {}, accountLines: [], shown: {}, surplus };
    return { facts: { tariff: document, period, units, powers, opening, ...rest }, sources };
  }

  private termsOf(own: Pick<BillTerms, 'printed' | 'facts' | 'sources' | 'basis'>): BillTerms {
    const { printed, facts, basis } = own;
    const printedBefore = this.before?.printed ?? null;
    const context: CauseContext = {
      printed: printed.figures,
      status: null,
      before: this.before?.facts ?? null,
      printedBefore,
      closingBefore: this.before === null ? null : balancesOf(this.carried, facts.tariff),
      otherTariffs: this.others,
      connected: null,
      paidBefore: undefined,
      serials: NO_SERIALS,
    };
    return {
      ...own,
      context,
      asCarried: carriedFacts(facts, printedBefore),
      alternatives: this.isOpeningKnown ? [] : alternativesOf(facts, basis, [printed.figures, printedBefore]),
    };
  }

  private handOn(facts: BillFacts, run: BillRun | null, { figures }: PrintedBill): void {
    this.before = { facts, printed: figures };
    this.openedWith = {};
    if (run === null) return;
    this.carried = run.carried;
    if (run.month.passbook?.isClosed === true) this.isOpeningKnown = true;
  }
}

/** Whole thousandths of a printed figure; null where it is not printed, or is finer. */
function thousandthsOf(value: Quotient | undefined): number | null {
  if (value === undefined || typeof value.numerator === 'bigint') return null;
  const whole = (value.numerator * 1000) / value.denominator;
  return Number.isInteger(whole) ? whole : null;
}

/** The facts as the bill before printed what it hands on; null where that is what is handed on anyway. */
function carriedFacts(facts: BillFacts, printedBefore: Figures | null): BillFacts | null {
  if (printedBefore === null) return null;
  const opening = { ...facts.opening };
  for (const id of Object.keys(opening)) {
    const printed = thousandthsOf(printedBefore.get(FIGURE.closing(id)));
    if (printed !== null) opening[id] = printed;
  }
  const isSame = Object.entries(opening).every(([id, units]) =>
    isSameQuotient(
      { numerator: units, denominator: 1 },
      { numerator: facts.opening[id] ?? 0, denominator: 1 },
    ),
  );
  return isSame ? null : { ...facts, opening };
}
