import { periodDays, subtractQuotients, type Quotient } from '../../quantity/index.ts';
import type { BillFacts } from '../facts.ts';
import { withUnits } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { figuresAt, isAbove, timesWhole, type KnownBill, type SurpriseTerms } from './surprise.ts';

const NAMES = { use: FIGURE.units('total-use'), generation: FIGURE.units('generation'), payable: 'payable' };

/** Two months a year apart, of which the later costs more. */
export interface YearApart {
  readonly now: Readonly<Record<keyof typeof NAMES, Quotient>>;
  readonly then: Readonly<Record<keyof typeof NAMES, Quotient>>;
  readonly earlier: KnownBill;
}

/** Both months where both are known and more is to be paid now; else null. */
export function dearerThan({ right, yearBefore }: SurpriseTerms): YearApart | null {
  if (yearBefore === null) return null;
  const now = figuresAt(right, NAMES);
  const then = figuresAt(yearBefore.figures, NAMES);
  if (now === null || then === null || !isAbove(now.payable, then.payable)) return null;
  return { now, then, earlier: yearBefore };
}

/** Whether a value for each day is above another, of periods that may not be as long. */
export function isAboveByDay(
  one: { readonly value: Quotient; readonly facts: BillFacts },
  other: { readonly value: Quotient; readonly facts: BillFacts },
): boolean {
  return isAbove(
    timesWhole(one.value, periodDays(other.facts.period)),
    timesWhole(other.value, periodDays(one.facts.period)),
  );
}

/** What a bill comes to in three steps: the units of then, with the use of now, and as it is. */
export interface Steps {
  readonly then: Quotient;
  readonly withUse: Quotient;
  readonly now: Quotient;
}

const WHOLE_NETTING: readonly string[] = ['import', 'export', 'generation'];

/**
 * The sum of the bill with the units of a year before, then with the use of now on top, all of it from the grid, then
 * as it is. null where units are counted by blocks: nobody knows in which the use grew.
 */
export function stepsOf(
  { facts, right, run }: SurpriseTerms,
  { now, then, earlier }: YearApart,
): Steps | null {
  if (Object.keys(facts.units).some((name) => !WHOLE_NETTING.includes(name))) return null;
  const grown = subtractQuotients(now.use, then.use);
  const growth = (Number.parseInt(grown.numerator.toString(), 10) * 1000) / grown.denominator;
  const units = earlier.facts.units;
  const sumWith = (more: number): Quotient | undefined =>
    run(withUnits(facts, { ...units, import: (units['import'] ?? 0) + more }))?.get('sum');
  const [first, second, third] = [sumWith(0), sumWith(growth), right.get('sum')];
  return first === undefined || second === undefined || third === undefined
    ? null
    : { then: first, withUse: second, now: third };
}
