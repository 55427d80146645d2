import {
  addDays,
  CAUSES,
  type Cause,
  type CauseContext,
  type CheckedBill,
  type DayNumber,
  type PrintedBillDocument,
} from '@unitbook/engine';
import type { Random } from '../../support/random.ts';
import { checkBills, printedRight, readBills, rightBills, type BenchAccount } from './accounts.ts';
import { HABITS, printBill } from './paper.ts';
import { figuresWith, isSame, type Ground } from './plant.ts';

/** What came of planted mistakes. */
export interface Score {
  n: number;
  /** Found and ranked first. */
  first: number;
  /** Found among those that tie. */
  tied: number;
  missed: number;
}

/** A mistake that was not found, with what was. */
export interface Miss {
  readonly account: string;
  readonly planted: string;
  readonly verdict: string;
  readonly found: string;
}

export const emptyScore = (): Score => ({ n: 0, first: 0, tied: 0, missed: 0 });

const named = (causes: readonly Cause[]): string => [...causes.map(({ id }) => id)].sort().join(' + ');

/** Everything that mistakes are planted into: a bill of an account, and those before it. */
export interface Field {
  readonly one: BenchAccount;
  readonly at: number;
  readonly bills: readonly CheckedBill[];
  readonly printed: readonly PrintedBillDocument[];
  readonly ground: Ground;
}

/** The bill of an account at a place, ready to be made wrong by some causes; null: it cannot be. */
export function fieldOf(one: BenchAccount, at: number, causes: readonly Cause[]): Field | null {
  const has = (id: string): boolean => causes.some((cause) => cause.id === id);
  const bills = rightBills(one);
  const printed = printedRight(bills);
  const [before, own] = [bills[at - 1], bills[at]];
  if (before?.right == null || own?.right == null) return null;
  const printedBefore = readBills([printed[at - 1] ?? { from: '', to: '' }])[0]?.figures ?? null;
  const context: CauseContext = {
    printed: own.right.figures,
    status: has('estimated-reading') ? 'estimated' : null,
    before: before.facts,
    printedBefore,
    closingBefore: own.facts.opening,
    otherTariffs: one.others.map(({ document }) => document),
    connected: has('export-counted-late') ? addDays(own.facts.period.from, 9) : null,
    paidBefore: true,
    serials: {},
  };
  const basis = { account: { since: '2021-04-01', settlementDay: '09-30' }, carried: before.right.carried };
  return {
    one,
    at,
    bills,
    printed,
    ground: { facts: own.facts, basis, figures: own.right.figures, context },
  };
}

/** Plant mistakes, print the bill as a utility would, and count whether they are found. @returns false: none was planted */
export function plantAndFind(
  causes: readonly Cause[],
  field: Field,
  { score, misses, random }: { readonly score: Score; readonly misses: Miss[]; readonly random: Random },
): boolean {
  const { one, at, printed, ground } = field;
  const wrong = figuresWith(causes, ground, random);
  if (wrong === null || isSame(wrong.figures, ground.figures)) return false;
  const habit = HABITS[0];
  if (habit === undefined) return false;
  const status = causes.some(({ id }) => id === 'estimated-reading') ? ('estimated' as const) : undefined;
  const due = printed[at - 1]?.payable ?? '0';
  // A bill in favour of the household is paid with nothing.
  const paid = { on: one.days[at] ?? '', amount: due.startsWith('-') ? '0' : due };
  const documents = [
    ...printed.slice(0, at - 1),
    { ...(printed[at - 1] ?? { from: '', to: '' }), paid },
    { ...printBill(ground.facts, wrong.figures, habit), status },
  ];
  const checked = checkBills(one, documents, ground.context.connected as DayNumber | null).at(-1);
  if (checked === undefined) return false;
  // What cannot be seen on paper is no mistake of the paper.
  if (checked.compared.every(({ agrees }) => agrees)) return false;
  // A second mistake that leaves no trace on paper is not there to be found.
  const ids = causes.map(({ id }) => id);
  const isPart = checked.explanations.some(
    ({ attempt: { steps } }) =>
      steps.length < causes.length && steps.every(({ cause }) => ids.includes(cause.id)),
  );
  if (isPart) return false;
  const found = checked.explanations.map(({ attempt }) => named(attempt.steps.map(({ cause }) => cause)));
  const planted = named(causes);
  score.n += 1;
  if (found[0] === planted) score.first += 1;
  else if (found.includes(planted)) score.tied += 1;
  else {
    score.missed += 1;
    misses.push({ account: one.name, planted, verdict: checked.verdict, found: found.join(' | ') });
  }
  return true;
}

/** Two causes in the order of the stages. */
export function randomPair(random: Random): readonly Cause[] {
  const [one, other] = [random.pick(CAUSES), random.pick(CAUSES)];
  if (one === other) return randomPair(random);
  return CAUSES.indexOf(one) < CAUSES.indexOf(other) ? [one, other] : [other, one];
}

/** How many right bills of an account are called wrong, printed by each habit. */
export function accused(
  one: BenchAccount,
  most: number,
): { readonly n: number; readonly wrong: readonly string[] } {
  const bills = rightBills(one);
  const wrong: string[] = [];
  let n = 0;
  for (const habit of HABITS) {
    if (n >= most) break;
    const checked = checkBills(one, printedRight(bills, habit));
    n += checked.length;
    for (const { verdict, compared } of checked)
      if (verdict !== 'right' && verdict !== 'right-but-surprising')
        wrong.push(
          `${one.name}, ${habit.name}: ${verdict}, ${compared
            .filter(({ agrees }) => !agrees)
            .map(({ name }) => name)
            .join(' ')}`,
        );
  }
  return { n, wrong };
}
