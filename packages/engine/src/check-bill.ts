import { exactText, NumberTooLarge, type Finding, type Quotient } from './quantity/index.ts';
import {
  attribute,
  CAUSES,
  checkFinding,
  compareFigures,
  differenceIn,
  EXACT,
  FIGURE,
  searchCauses,
  type Attempt,
  type Attribution,
  type BillFacts,
  type Cause,
  type CauseContext,
  type ComparedFigure,
  type Figures,
  type PrintedBill,
  type Surprise,
} from './audit/index.ts';
import type { Alternative } from './check-alternatives.ts';
import type { FactSource } from './check-facts.ts';
import { runBill, whyNotBilled, type BillRun, type RunBasis } from './check-run.ts';
import {
  isIncomparable,
  printedFindings,
  surprisesOfBill,
  unanswered,
  type BillSurroundings,
} from './check-surroundings.ts';

/** How a printed bill is checked. */
export interface CheckOptions {
  /** How far an amount of money may be off and still agree; 0 unless said. */
  readonly tolerance?: Quotient;
  /** The mistakes that are tried; left out: all that are known. */
  readonly causes?: readonly Cause[];
  /** The most bills that are made to find an explanation. */
  readonly most?: number;
}

/** What a check says of a bill. */
export type Verdict = 'right' | 'right-but-surprising' | 'follows' | 'wrong' | 'cannot-tell';

/** How sure an explanation is. */
export type Confidence = 'proven' | 'likely' | 'possible';

/** Causes that reproduce every printed figure. */
export interface BillExplanation {
  readonly attempt: Attempt;
  readonly confidence: Confidence;
  /** What is to be paid, put down to the causes; null where the bill does not print it. */
  readonly attribution: Attribution | null;
}

/** Figures that explanations which tie would show, and that the bill does not print: any of them would decide. */
export interface Decider {
  readonly figure: string;
  /** What each explanation shows, in their order; null: no such figure. */
  readonly values: readonly (Quotient | null)[];
}

/** A printed bill set beside the right one. */
export interface CheckedBill {
  readonly printed: PrintedBill;
  readonly verdict: Verdict;
  readonly facts: BillFacts;
  readonly sources: Readonly<Record<string, FactSource>>;
  /** The right bill; null where it cannot be made. */
  readonly right: BillRun | null;
  /** Every printed figure beside the right one, in the order of paper. */
  readonly compared: readonly ComparedFigure[];
  /** Printed less right of what is to be paid, 0 where they agree; null where one is not known. */
  readonly difference: Quotient | null;
  readonly explanations: readonly BillExplanation[];
  readonly deciders: readonly Decider[];
  /** Where nothing explains the bill: what comes nearest. */
  readonly nearest: readonly Attempt[];
  /** Whether every cause and every pair was tried that could make the bill. */
  readonly isExhausted: boolean;
  /** What is to be paid for each balance that may have been brought forward; empty where it is known. */
  readonly alternatives: readonly Alternative[];
  /**
   * The bill as the books of the utility hand it on, where it follows from the bills before or is explained from
   * there: a mistake of its own is what it prints less this. null: it goes by the right chain.
   */
  readonly carried: BillRun | null;
  /** What surprises on the right bill; empty where nothing does, or nothing is known around it. */
  readonly surprises: readonly Surprise[];
  /** What the printed bill says that cannot all be true, first of all; then why no right bill can be made. */
  readonly findings: readonly Finding[];
}

/** What one bill is checked with. */
export interface BillTerms {
  readonly printed: PrintedBill;
  readonly facts: BillFacts;
  readonly sources: Readonly<Record<string, FactSource>>;
  readonly basis: RunBasis;
  readonly context: CauseContext;
  /** The facts as the books of the utility hand them on, where they differ: credit and readings as printed before. */
  readonly asCarried: BillFacts | null;
  /** Where nobody knows what was brought forward: what the bill comes to for each balance. */
  readonly alternatives: readonly Alternative[];
  /** What facts come to without making their bill, where many bills are checked; left out: every bill is made. */
  readonly quick?: (facts: BillFacts) => Quotient | null;
  /** What is known around the bill; left out: nothing is found about it, and nothing surprises. */
  readonly surroundings?: BillSurroundings;
}

/** Room for all singles and pairs of a home; a bill takes about a hundredth of a millisecond. */
const MOST_BILLS = 6000;

const TOTALS: readonly string[] = ['sum', 'rounding', 'payable'];

/** A total alone proves nothing: another mistake can come to the same sum. */
function confidenceOf({ telling, signs }: Attempt, ties: number): Confidence {
  if (telling.every((name) => TOTALS.includes(name))) return 'possible';
  if (signs.some(({ speaks }) => speaks === 'against')) return 'possible';
  return ties === 1 ? 'proven' : 'likely';
}

/** Figures that tell explanations apart and that are not printed. */
function decidersOf(attempts: readonly Attempt[], printed: Figures): readonly Decider[] {
  if (attempts.length < 2) return [];
  const names = new Set(attempts.flatMap(({ figures }) => [...figures.keys()]));
  return [...names]
    .filter((name) => !printed.has(name))
    .map((figure) => ({ figure, values: attempts.map(({ figures }) => figures.get(figure) ?? null) }))
    .filter(({ values }) => {
      const texts = values.map((value) =>
        value === null ? '' : exactText(value.numerator, value.denominator),
      );
      return new Set(texts).size > 1;
    });
}

function explained(
  { printed }: BillTerms,
  attempts: readonly Attempt[],
  terms: { readonly right: Figures; readonly run: (facts: BillFacts) => Figures | null },
): readonly BillExplanation[] {
  const payable = printed.figures.get('payable');
  return attempts.map((attempt) => ({
    attempt,
    confidence: confidenceOf(attempt, attempts.length),
    attribution: payable === undefined ? null : attribute(attempt, payable, terms),
  }));
}

const agreesWith = (compared: readonly ComparedFigure[]): boolean => compared.every(({ agrees }) => agrees);

/** Whether a bill prints anything that could be wrong: more than its own days and readings. */
const printsResults = ({ figures }: PrintedBill): boolean =>
  [...figures.keys()].some(
    (name) => name.startsWith('line.') || name === FIGURE.units('billed') || TOTALS.includes(name),
  );

/** What a bill is told of before it is set beside the right one. */
function found({ printed, facts, surroundings }: BillTerms): readonly Finding[] {
  return surroundings === undefined ? [] : printedFindings(printed, { facts }, surroundings);
}

function surprising(terms: BillTerms, right: BillRun): readonly Surprise[] {
  const { printed, facts, basis, surroundings } = terms;
  return surroundings === undefined ? [] : surprisesOfBill({ printed, facts, basis }, right, surroundings);
}

type Explained = Pick<CheckedBill, 'explanations' | 'deciders' | 'nearest' | 'isExhausted' | 'carried'>;

/** How many causes an explanation takes; more than any where there is none. */
const fewestCauses = ({ explanations }: Pick<CheckedBill, 'explanations'>): number =>
  explanations[0]?.attempt.steps.length ?? Infinity;

/**
 * What causes make of the right bill, or of the bill as the books hand it on where that takes fewer of them: what the
 * bills before did wrong is not put down to this one again.
 */
function explainBill(
  terms: BillTerms,
  options: CheckOptions,
  runs: readonly [BillRun, BillRun | null],
): Explained {
  const { printed, facts, basis, context, asCarried, quick } = terms;
  const { tolerance = EXACT, causes = CAUSES, most = MOST_BILLS } = options;
  const run = (own: BillFacts): Figures | null => runBill(own, basis)?.figures ?? null;
  const [right, carried] = runs;
  const search = (from: BillFacts, base: BillRun): Omit<Explained, 'carried'> => {
    const result = searchCauses({
      facts: from,
      context,
      causes,
      run,
      tolerance,
      most,
      ...(quick && { quick }),
    });
    const attempts = result?.explanations ?? [];
    return {
      explanations: explained(terms, attempts, { right: base.figures, run }),
      deciders: decidersOf(attempts, printed.figures),
      nearest: result?.nearest ?? [],
      isExhausted: result?.isExhausted ?? true,
    };
  };
  const ofRight = { ...search(facts, right), carried: null };
  if (asCarried === null || carried === null || fewestCauses(ofRight) === 1) return ofRight;
  const ofCarried = search(asCarried, carried);
  return fewestCauses(ofCarried) < fewestCauses(ofRight) ? { ...ofCarried, carried } : ofRight;
}

const NOTHING = {
  explanations: [],
  deciders: [],
  nearest: [],
  isExhausted: true,
  carried: null,
  surprises: [],
};

function verdictOfRight(printed: PrintedBill, surprises: readonly Surprise[]): Verdict {
  if (!printsResults(printed)) return 'cannot-tell';
  return surprises.length > 0 ? 'right-but-surprising' : 'right';
}

/** A bill with numbers that cannot be compared exactly. */
function tooLarge(terms: BillTerms): CheckedBill {
  const { printed, facts, sources, alternatives } = terms;
  const findings = [...found(terms), checkFinding('check/too-large', { path: printed.path })];
  const nothing = { right: null, compared: [], difference: null, alternatives, ...NOTHING };
  return { printed, facts, sources, ...nothing, findings, verdict: 'cannot-tell' };
}

/**
 * Set one printed bill beside the right one, and find what explains the difference. What the bill says that cannot all
 * be true is found whether a right one can be made or not.
 */
export function checkBill(terms: BillTerms, options: CheckOptions = {}): CheckedBill {
  try {
    return compared(terms, options);
  } catch (error) {
    if (!(error instanceof NumberTooLarge)) throw error;
    return tooLarge(terms);
  }
}

function compared(terms: BillTerms, options: CheckOptions): CheckedBill {
  const { printed, facts, sources, basis, asCarried, alternatives } = terms;
  const { tolerance = EXACT } = options;
  const right = runBill(facts, basis);
  const told = found(terms);
  const plain = { printed, facts, sources, right, alternatives, ...NOTHING };
  if (right === null) {
    const findings = [...told, ...whyNotBilled(facts, basis)];
    return { ...plain, findings, verdict: 'cannot-tell', compared: [], difference: null };
  }
  const findings = unanswered(told, right);
  if (isIncomparable(findings))
    return { ...plain, findings, verdict: 'cannot-tell', compared: [], difference: null };
  const figures = compareFigures(printed.figures, right.figures, tolerance);
  const set = { ...plain, findings, compared: figures, difference: differenceIn(figures, 'payable') };
  // What is not known may make any of several bills right.
  if (alternatives.length > 1) return { ...set, verdict: 'cannot-tell' };
  const surprises = surprising(terms, right);
  if (agreesWith(figures)) return { ...set, surprises, verdict: verdictOfRight(printed, surprises) };
  const carried = asCarried === null ? null : runBill(asCarried, basis);
  if (carried !== null && agreesWith(compareFigures(printed.figures, carried.figures, tolerance)))
    return { ...set, surprises, carried, verdict: 'follows' };
  return { ...set, surprises, verdict: 'wrong', ...explainBill(terms, options, [right, carried]) };
}
