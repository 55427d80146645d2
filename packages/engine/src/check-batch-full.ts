import { dayText, type DayNumber, type Period, type Quotient } from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import {
  thousandthsOf,
  type BillFacts,
  type CauseContext,
  type Figures,
  type PrintedBill,
} from './audit/index.ts';
import { alternativesOf } from './check-alternatives.ts';
import { printedUnits, TENS, type BatchNames, type BatchRows } from './check-batch-columns.ts';
import { checkBill, type BillTerms, type CheckedBill, type CheckOptions } from './check-bill.ts';
import { carriedFacts } from './check-carried.ts';
import type { FactSource } from './check-facts.ts';
import { balancesOf, givenCredit, ledgersOf } from './check-opening.ts';
import { QuickPayable } from './check-quick-payable.ts';
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

const opened = (numerator: number): Carried => beginWith(givenCredit(numerator, 'table'));

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
  /** Ledgers of which nobody knows what they hold. */
  private unknown: readonly string[] = [];
  private openedWith: Readonly<Record<string, number>> = {};
  private readonly quick: QuickPayable;

  constructor(terms: BatchTerms) {
    this.terms = terms;
    this.quick = new QuickPayable(terms.account ?? {});
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
    this.unknown = ledgersOf(this.terms.tariff.document).filter((id) => given[id] === undefined);
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
      quick: (one) => this.quick.of(one, basis.carried),
      alternatives: alternativesOf(facts, basis, {
        unknown: this.unknown,
        known: [printed.figures, printedBefore],
      }),
    };
  }

  private handOn(facts: BillFacts, run: BillRun | null, { figures }: PrintedBill): void {
    this.before = { facts, printed: figures };
    this.openedWith = {};
    if (run === null) return;
    this.carried = run.carried;
    if (run.month.passbook?.isClosed === true) this.unknown = this.unknown.filter((id) => id !== 'credit');
  }
}
