import { isSameQuotient, type Quotient } from '../quantity/index.ts';
import { STAGES, stageAt, type Cause, type CauseContext, type Sign, type Variant } from './cause.ts';
import { unitLedgers } from './charge-basis.ts';
import type { BillFacts } from './facts.ts';
import { FIGURE, groupOf } from './figure-names.ts';
import { agrees, computedOf, toleranceOf, type Figures, type Tolerance } from './figures.ts';

/** A cause in one of its variants. */
export interface Step {
  readonly cause: Cause;
  readonly variant: Variant;
}

/** What one or more causes together make of a bill. */
export interface Attempt {
  /** In the order in which they were applied; none: the right bill. */
  readonly steps: readonly Step[];
  readonly facts: BillFacts;
  readonly figures: Figures;
  /** Printed figures that it reproduces without having been fitted to them: how many; and those it does not. */
  readonly reproduced: number;
  readonly missed: readonly string[];
  /** Printed figures that the right bill misses and that it reproduces without having been fitted to them. */
  readonly telling: readonly string[];
  readonly signs: readonly Sign[];
}

/** How a bill is made of facts; null: these facts cannot be billed. */
export type RunFacts = (facts: BillFacts) => Figures | null;

/** What facts come to without making their bill; null: only their bill says. */
export type QuickPayableOf = (facts: BillFacts) => Quotient | null;

/** What causes are searched with. */
export interface SearchTerms {
  readonly facts: BillFacts;
  readonly context: CauseContext;
  readonly causes: readonly Cause[];
  readonly run: RunFacts;
  /** Spares the bills that cannot be what is printed, as long as others explain it; left out: every bill is made. */
  readonly quick?: QuickPayableOf;
  readonly tolerance: Tolerance;
  /** The most bills that are made: pairs and threes end there. */
  readonly most: number;
}

/** What a search came to. */
export interface SearchResult {
  readonly right: Attempt;
  /** Those that reproduce every printed figure, with the fewest causes. */
  readonly explanations: readonly Attempt[];
  /** Where nothing explains the bill: what comes nearest. */
  readonly nearest: readonly Attempt[];
  /** Bills that were made. */
  readonly made: number;
  /** Whether all singles and pairs were tried. */
  readonly isExhausted: boolean;
}

/** Stages from this one on change no readings, units or credit. */
const MONEY_ONLY = STAGES.indexOf('slabs');
/**
 * Figures that no charge changes: readings, units, and credit in units. Units billed are what the energy charge is taken
 * on, and credit in money is what charges leave of it.
 */
function measuredBy(facts: BillFacts): (name: string) => boolean {
  const credit = new Set(unitLedgers(facts).flatMap((id) => [FIGURE.opening(id), FIGURE.closing(id)]));
  return (name) =>
    name !== FIGURE.units('billed') && (['reading', 'units'].includes(groupOf(name)) || credit.has(name));
}

/** What is to be paid: the last figure of a bill, which nearly every mistake changes. */
const FIGURE_PAYABLE = 'payable';

/** How many are told of what comes nearest, and taken on to threes. */
const NEAREST = 3;
const TAKEN_ON = 12;

/** An attempt in the order in which they were made. */
interface Placed {
  readonly place: number;
  readonly attempt: Attempt;
}

/** A bill that is not made yet: it does not come to what is printed. */
interface Waiting {
  readonly place: number;
  readonly before: Attempt;
  readonly step: Step;
}

/** Everything printed, worked through once and again. */
class Search {
  made = 0;
  readonly right: Attempt;
  readonly complete: Attempt[] = [];
  private readonly incomplete: Placed[] = [];
  private waiting: Waiting[] = [];
  private readonly payable: Quotient | null;
  /** Printed figures that the right bill misses. */
  private readonly wrong: ReadonlySet<string>;
  private readonly terms: SearchTerms;
  private readonly isMeasured: (name: string) => boolean;
  private readonly printed: readonly (readonly [string, NonNullable<ReturnType<Figures['get']>>])[];

  constructor(terms: SearchTerms, rightFigures: Figures) {
    this.terms = terms;
    // A figure that no right bill has, such as one of a register that nobody reads, tells nothing.
    this.printed = [...terms.context.printed].filter(([name]) => computedOf(rightFigures, name) !== null);
    const { facts } = terms;
    this.isMeasured = measuredBy(facts);
    this.payable = this.printed.find(([name]) => name === FIGURE_PAYABLE)?.[1] ?? null;
    this.right = this.attempt({ steps: [], facts, figures: rightFigures, wrong: null });
    this.wrong = new Set(this.right.missed);
  }

  /** Whether anything but totals is printed: of a total alone two causes together make anything. */
  get hasDetail(): boolean {
    return this.printed.some(([name]) => ['units', 'credit', 'line', 'account'].includes(groupOf(name)));
  }

  /** Set what some causes make beside what is printed. */
  private attempt({
    steps,
    facts,
    figures,
    wrong,
  }: Pick<Attempt, 'steps' | 'facts' | 'figures'> & { readonly wrong: ReadonlySet<string> | null }): Attempt {
    const missed: string[] = [];
    const telling: string[] = [];
    const fitted = steps.flatMap(({ variant }) => variant.fitted ?? []);
    for (const [name, value] of this.printed) {
      if (!agrees(value, computedOf(figures, name), toleranceOf(name, this.terms.tolerance)))
        missed.push(name);
      else if (wrong?.has(name) === true && !fitted.includes(name)) telling.push(name);
    }
    const signs = steps.flatMap(({ variant }) => variant.signs ?? []);
    const reproduced = this.printed.length - missed.length - fitted.length;
    return { steps, facts, figures, reproduced, missed, telling, signs };
  }

  /** Whether an attempt misses what the right bill has: another cause would have to undo what this one does. */
  private breaks({ steps, missed }: Attempt): boolean {
    if (steps.length === 0) return false;
    return missed.some((name) => !this.wrong.has(name) && groupOf(name) !== 'total');
  }

  /** Every variant of the causes that can still come after an attempt. */
  next(before: Attempt, causes: readonly Cause[]): void {
    if (this.breaks(before)) return;
    const last = before.steps.at(-1)?.cause;
    const from = last === undefined ? 0 : causes.indexOf(last) + 1;
    // What later stages cannot set right any more is not tried.
    const isUnitsWrong = before.missed.some(this.isMeasured);
    for (const cause of causes.slice(from)) {
      if (isUnitsWrong && stageAt(cause) >= MONEY_ONLY && before.steps.length > 0) continue;
      for (const variant of cause.variants(before.facts, this.terms.context)) {
        if (this.made >= this.terms.most) return;
        this.try(before, { cause, variant });
      }
    }
  }

  private try(before: Attempt, step: Step): void {
    this.made += 1;
    const own = { place: this.made, before, step };
    if (this.isOff(step.variant.facts)) this.waiting.push(own);
    else this.make(own);
  }

  /** Whether it is certain, without their bill, that facts do not come to what is printed. */
  private isOff(facts: BillFacts): boolean {
    const { quick, tolerance } = this.terms;
    const payable = this.payable === null ? null : (quick?.(facts) ?? null);
    return (
      payable !== null && !agrees(this.payable as Quotient, payable, toleranceOf(FIGURE_PAYABLE, tolerance))
    );
  }

  /** All that was tried and that does not explain the bill, in the order in which it was tried. */
  partial(): Attempt[] {
    for (const one of this.waiting) this.make(one);
    this.waiting = [];
    return this.incomplete.sort((one, other) => one.place - other.place).map(({ attempt }) => attempt);
  }

  private make({ place, before, step }: Waiting): void {
    const figures = this.terms.run(step.variant.facts);
    if (figures === null || isSame(figures, before.figures)) return;
    const steps = [...before.steps, step];
    const own = this.attempt({ steps, facts: step.variant.facts, figures, wrong: this.wrong });
    if (own.missed.length === 0) this.complete.push(own);
    else this.incomplete.push({ place, attempt: own });
  }
}

/** Whether two bills show the same. */
function isSame(one: Figures, other: Figures): boolean {
  if (one.size !== other.size) return false;
  for (const [name, value] of one) {
    const own = other.get(name);
    if (own === undefined || !isSameQuotient(value, own)) return false;
  }
  return true;
}

const byRank = (one: Attempt, other: Attempt): number =>
  other.reproduced - one.reproduced ||
  other.telling.length - one.telling.length ||
  one.steps.length - other.steps.length;

/** Explanations for which more speaks go first; nothing is left out. */
const weight = ({ signs, telling }: Attempt): number =>
  signs.reduce((sum, { speaks }) => sum + (speaks === 'for' ? 100 : -100), 0) + telling.length;

const ranked = (attempts: readonly Attempt[]): readonly Attempt[] =>
  [...attempts].sort((one, other) => weight(other) - weight(one));

/**
 * Try every cause alone, in ordered pairs where none alone explains the bill, and in threes of what comes nearest
 * where no pair does. A cause is applied to what those before it have made of the bill.
 *
 * @returns null where the right bill cannot be made
 */
export function searchCauses(terms: SearchTerms): SearchResult | null {
  const figures = terms.run(terms.facts);
  if (figures === null) return null;
  const search = new Search(terms, figures);
  const { right, complete } = search;
  if (right.missed.length === 0)
    return { right, explanations: [], nearest: [], made: search.made, isExhausted: true };
  search.next(right, terms.causes);
  const hasMore = complete.length === 0 && search.hasDetail;
  if (hasMore) {
    const singles = search.partial().sort(byRank);
    for (const one of singles) search.next(one, terms.causes);
  }
  const isExhausted = search.made < terms.most;
  if (hasMore && complete.length === 0) {
    const pairs = search
      .partial()
      .filter(({ steps }) => steps.length === 2)
      .sort(byRank);
    for (const one of pairs.slice(0, TAKEN_ON)) search.next(one, terms.causes);
  }
  const nearest = complete.length > 0 ? [] : search.partial().sort(byRank).slice(0, NEAREST);
  return { right, explanations: ranked(complete), nearest, made: search.made, isExhausted };
}
